/** client/ride/speeds.tsx - how fast it is ridden, gait by gait with what that rests on; and whose speeds those are: the
 *  published ones, those of a kit of the work, or what somebody measured today. Chosen for this window only. */
import { horseGaits, speedOf } from "../../shared/ground/gaits.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { kitHorse, kitNow, measuredKits } from "./riding.ts";
import { chosenKit, HORSE_GAITS, thisHorse } from "./wish.ts";

/** Metres a second that a horse can be thought to go at all: above the fastest race. */
const FASTEST = 20;

export function Speeds({ ride }: { ride: Ridden }) {
  return (
    <section class="speeds-ridden" aria-label="How fast it is ridden">
      <h2>How fast it is ridden</h2>
      {ride.way === "mounted" && <WhoseSpeeds />}
      <ul>
        {speedsOf(ride).map(({ gait, speed, basis }) => (
          <li key={gait}>
            {gait}: <b>{speed.toFixed(2)} m/s</b>. <span class="meta">{basis}</span>
          </li>
        ))}
      </ul>
      {ride.way === "mounted" && <ThisHorse />}
    </section>
  );
}

/** Nothing to choose where no kit of the work has a speed. */
function WhoseSpeeds() {
  const kits = measuredKits.value;
  if (kits.length === 0) return null;
  return (
    <label>
      <span class="label">Speeds</span>{" "}
      <select
        value={kitNow.value?.id ?? ""}
        onChange={(event) => (chosenKit.value = event.currentTarget.value || null)}
      >
        <option value="">as usual, published</option>
        {kits.map(({ id, name }) => (
          <option key={id} value={id}>
            of the kit: {name}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Each gait and pace of the ride once, in the order it comes. */
function speedsOf(ride: Ridden): { gait: string; speed: number; basis: string }[] {
  const horse = [...horseGaits(thisHorse.value), ...kitHorse.value];
  const found = new Map<string, { gait: string; speed: number; basis: string }>();
  for (const { gait, pace, speed, gaitSupplied } of ride.pieces) {
    if (speed === 0) continue;
    const name = [pace, gait].filter((part) => part !== null).join(" ");
    const key = `${name}${gaitSupplied ? ", supplied" : ""}`;
    if (found.has(key)) continue;
    const own = speedOf(gait, pace, horse);
    const basis =
      ride.way === "on foot"
        ? "A person walking; common practice, no source."
        : sentence(own.basis, own.assumed && pace !== null);
    found.set(key, { gait: ride.way === "on foot" ? "walking, on foot" : key, speed, basis });
  }
  return [...found.values()];
}

function sentence(basis: string, assumed: boolean): string {
  const words = `${basis.charAt(0).toUpperCase()}${basis.slice(1)}.`;
  return assumed ? `${words} No speed is published for this pace.` : words;
}

function ThisHorse() {
  const measured = thisHorse.value;
  return (
    <fieldset class="this-horse">
      <legend class="label">This horse, as you measured it, in m/s</legend>
      <div class="row">
        {HORSE_GAITS.map((gait) => (
          <label key={gait}>
            {gait}{" "}
            <input
              type="number"
              min="0"
              max={FASTEST}
              step="0.1"
              placeholder={speedOf(gait, null, kitHorse.value).speed.toFixed(1)}
              value={measured[gait] ?? ""}
              onChange={(event) => {
                const { [gait]: _before, ...rest } = thisHorse.value;
                const speed = event.currentTarget.valueAsNumber;
                thisHorse.value = speed > 0 && speed <= FASTEST ? { ...rest, [gait]: speed } : rest;
              }}
            />
          </label>
        ))}
      </div>
      <p class="meta">
        Your own measure, kept in this window: it goes before the kit’s and the published, and the other paces of the
        gait go in proportion. Ride a measured length and note the seconds. Strides are then not counted.
      </p>
    </fieldset>
  );
}
