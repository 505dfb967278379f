/** client/ride/ride-options.tsx - which exercise, on which hand, mounted or on foot, and under which readings. */
import type { DrillCrux } from "../../schema/drill.ts";
import { listedWorks } from "../read/contents-order.ts";
import { go } from "../state/route.ts";
import { compared } from "./compared.ts";
import { cruxes, readingsOf, stepOf } from "./cruxes.ts";
import { PartSelect } from "./part-select.tsx";
import { ownRole, readNow, roles } from "./riding.ts";
import { instead, nothingHolds } from "./shown-readings.ts";
import { besideReading, choice, firstRole, REINS, read, rein, way } from "./wish.ts";

export function WhichExercise({ exercise }: { exercise: string }) {
  return (
    <label class="which">
      <span class="label">Exercise</span>{" "}
      <select value={exercise} onChange={(event) => go(`/ride/${event.currentTarget.value}`)}>
        {listedWorks.value.flatMap(({ work, groups }) =>
          groups
            .filter(({ isExercise }) => isExercise)
            .map((group) => (
              <option key={group.key} value={group.key}>
                {group.label && `${group.label}. `}
                {group.title}
                {listedWorks.value.length > 1 && ` (${work.title})`}
              </option>
            )),
        )}
      </select>
    </label>
  );
}

export function HowRidden() {
  return (
    <>
      {roles.value.length > 0 && (
        <span>
          <span class="label">Part</span>{" "}
          <PartSelect letter="A" role={ownRole.value} choose={(role) => (firstRole.value = role)} />
        </span>
      )}
      <label>
        <span class="label">Ride it</span>{" "}
        <select
          value={rein.value}
          onChange={(event) => {
            const chosen = REINS.find(({ value }) => value === event.currentTarget.value);
            if (chosen) rein.value = chosen.value;
          }}
        >
          {REINS.map(({ value, words }) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <fieldset class="ways">
        <legend class="spoken">Mounted or on foot</legend>
        {(["mounted", "on foot"] as const).map((option) => (
          <label key={option}>
            <input type="radio" name="ride-way" checked={way.value === option} onChange={() => (way.value = option)} />{" "}
            {option}
          </label>
        ))}
      </fieldset>
    </>
  );
}

/** Goes to the choice of readings, which may lie below what is seen. */
export function ToReadings() {
  const many = cruxes.value.length;
  if (many === 0) return null;
  const show = () => {
    const section = document.getElementById("readings-ridden");
    section?.scrollIntoView({ block: "start" });
    section?.querySelector("select")?.focus({ preventScroll: true });
  };
  return (
    <button type="button" class="quiet" onClick={show}>
      {many === 1 ? "one crux: choose its reading" : `${many} cruxes: choose readings`}
    </button>
  );
}

/** One choice a crux; what was decided is offered first. Then the reading that is ridden beside. */
export function Readings() {
  const list = cruxes.value;
  if (list.length === 0) return null;
  const other = besideReading.value;
  return (
    <section class="readings-ridden" id="readings-ridden" aria-label="Readings">
      <h2>Readings, for this ride only</h2>
      {list.map((crux) => (
        <label key={crux.crux} class="field">
          <span>
            <span class="dagger">†</span> {crux.title}
          </span>
          <select
            value={choice.value[crux.crux] ?? ""}
            onChange={(event) => read(crux.crux, event.currentTarget.value || null)}
          >
            <option value="">{decidedWords(crux)}</option>
            {readingsOf(crux).map(({ reading, words }) => (
              <option key={reading} value={reading}>
                {words}
              </option>
            ))}
          </select>
        </label>
      ))}
      <label class="field">
        <span>Beside it, in soft ink</span>
        <select
          value={other ? `${other.crux} ${other.reading}` : ""}
          onChange={(event) => {
            const [crux, reading] = event.currentTarget.value.split(" ");
            besideReading.value = crux && reading ? { crux, reading } : null;
          }}
        >
          <option value="">nothing</option>
          {list.map((crux) => (
            <optgroup key={crux.crux} label={`† ${crux.title}`}>
              {readingsOf(crux)
                .filter(({ reading }) => reading !== readNow.value.get(crux.crux))
                .map(({ reading, words }) => (
                  <option key={reading} value={`${crux.crux} ${reading}`}>
                    {words}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
    </section>
  );
}

/** Names the two readings that are shown together, and says what differs. */
export function TwoTogether() {
  const other = besideReading.value;
  const told = compared.value;
  const crux = cruxes.value.find((one) => one.crux === other?.crux);
  if (other === null || crux === undefined || told === null) return null;
  return (
    <div class="two" role="status">
      <p class="meta">
        <span class="dagger">†</span> {crux.title}: <span class="ink-line" />{" "}
        {titleOf(crux, readNow.value.get(crux.crux)) || "as it is not settled"}
        <span class={`ink-line ${told.sameLine ? "" : "soft"}`} /> {titleOf(crux, other.reading)}
      </p>
      <p>
        {told.sentence} {told.sameLine && <span class="meta">One line is drawn for both.</span>}
      </p>
    </div>
  );
}

/** What choosing nothing means. */
function decidedWords(crux: DrillCrux): string {
  if (crux.taken) return `${crux.taken.title} (${crux.taken.because})`;
  const shown = instead.value.get(crux.crux);
  if (shown === undefined) return "not settled: the first is shown";
  return `not settled: “${titleOf(crux, shown.reading)}” is shown, since the first cannot be ridden`;
}

const titleOf = (crux: DrillCrux, id: string | undefined): string =>
  readingsOf(crux).find(({ reading }) => reading === id)?.words ?? "";

/** Says where a reading is shown in the place of the first, and why; and where there is none better than the first. */
export function ShownInstead() {
  const shown = cruxes.value.flatMap((crux) => {
    const known = instead.value.get(crux.crux);
    return known === undefined || choice.value[crux.crux] !== undefined ? [] : [{ crux, known }];
  });
  const open = cruxes.value.some(({ crux, taken }) => taken === null && choice.value[crux] === undefined);
  return (
    <>
      {shown.map(({ crux, known }) => {
        const step = stepOf(crux.crux);
        return (
          <p key={crux.crux} class="meta shown-instead">
            <span class="dagger">†</span> {crux.title}: the first reading{step === null ? "" : ` of step ${step}`}{" "}
            cannot be ridden, so “{titleOf(crux, known.reading)}” is shown. Nobody has settled it.{" "}
            <button type="button" class="quiet" onClick={() => read(crux.crux, known.first)}>
              ride the first all the same
            </button>
          </p>
        );
      })}
      {open && nothingHolds.value && (
        <p class="meta shown-instead">
          Under what is adopted{Object.keys(choice.value).length > 0 ? " and chosen here" : ""} nothing can be ridden
          through; of what is not settled the first readings are shown.
        </p>
      )}
    </>
  );
}
