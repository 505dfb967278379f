/** client/ride/riders-list.tsx - other riders on the ground: adding them, setting them off, and where two come near. */
import { useSignal } from "@preact/signals";
import { clockTime } from "../../shared/ride/clock-time.ts";
import { metres } from "./moment.ts";
import { PartSelect } from "./part-select.tsx";
import {
  addRider,
  CARED_FOR,
  changeRider,
  goToNearest,
  letterOf,
  MOST_OTHERS,
  nearPairs,
  placed,
  removeRider,
} from "./riders.ts";
import { ownRole, roles, wishes } from "./riding.ts";
import { OFFSETS, type RiderWish } from "./wish.ts";

const SHOWN = 6;

export function RidersList() {
  const others = wishes.value;
  return (
    <section class="riders-list" aria-label="Riders">
      <h2>Riders</h2>
      <p>
        <b class="ref">A</b> rides {ownRole.value === null ? "it" : <b>{ownRole.value}</b>} as it is shown.
      </p>
      {others.map((wish, index) => (
        <OneRider key={wish.id} wish={wish} letter={letterOf(index + 1)} />
      ))}
      <button type="button" disabled={others.length >= MOST_OTHERS} onClick={addRider}>
        Add a rider
      </button>
      {others.length >= MOST_OTHERS && <span class="meta"> Eight are as many as are reckoned with on one ground.</span>}
      <NearPairs />
    </section>
  );
}

function OneRider({ wish, letter }: { wish: RiderWish; letter: string }) {
  return (
    <div class="row rider-wish">
      <b class="ref">{letter}</b>
      {roles.value.length > 0 && (
        <PartSelect letter={letter} role={wish.role} choose={(role) => changeRider(wish.id, { role })} />
      )}
      <select
        aria-label={`How rider ${letter} rides it`}
        value={wish.mirrored ? "mirrored" : "same"}
        onChange={(event) => changeRider(wish.id, { mirrored: event.currentTarget.value === "mirrored" })}
      >
        <option value="same">as it is shown</option>
        <option value="mirrored">mirrored</option>
      </select>
      <input
        type="number"
        step="0.5"
        aria-label={`How far rider ${letter} is set off`}
        value={wish.amount}
        onInput={(event) => {
          const amount = event.currentTarget.valueAsNumber;
          if (Number.isFinite(amount) && Math.abs(amount) <= 1000) changeRider(wish.id, { amount });
        }}
      />
      <select
        aria-label={`In what rider ${letter} is set off`}
        value={wish.by}
        onChange={(event) => {
          const by = OFFSETS.find((option) => option === event.currentTarget.value);
          if (by) changeRider(wish.id, { by });
        }}
      >
        {OFFSETS.map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
      <button type="button" class="quiet" onClick={() => removeRider(wish.id)}>
        take {letter} away
      </button>
      {placed.value?.id === wish.id && (
        <p class="meta placed" role="status">
          {placed.value.clear
            ? `Set off so, since ${letter} then keeps a horse’s length from the others: the nearest of those tried that does.`
            : `None of the ways tried to set ${letter} off keeps a horse’s length from the others; this keeps the most.`}
        </p>
      )}
    </div>
  );
}

function NearPairs() {
  const allShown = useSignal(false);
  const pairs = nearPairs.value;
  if (wishes.value.length === 0) return null;
  if (pairs.length === 0) return <p class="meta">No two of them come nearer than {CARED_FOR} m.</p>;
  const shown = allShown.value ? pairs : pairs.slice(0, SHOWN);
  return (
    <>
      <p class="label">How near they come</p>
      <ul class="near-pairs">
        {shown.map((near) => {
          const touch = near.nearest.metres < 0.01;
          return (
            <li key={`${near.a} ${near.b} ${near.point}`} class={touch ? "touch" : ""}>
              {near.point === null ? `${near.a} and ${near.b}` : `The ${near.point} of ${near.a} to ${near.b}`}:{" "}
              <b>{touch ? "they touch" : `${metres(near.nearest.metres)} m`}</b> at {clockTime(near.nearest.seconds)},{" "}
              {near.place}.{" "}
              <button type="button" class="quiet" onClick={() => goToNearest(near)}>
                go there
              </button>
            </li>
          );
        })}
      </ul>
      {pairs.length > shown.length && (
        <button type="button" class="quiet" onClick={() => (allShown.value = true)}>
          show all {pairs.length}
        </button>
      )}
      <p class="meta">
        Between the outsides of the horses, each taken 2.4 m long and 0.8 m broad; points where the text lets them be
        known. A length and a breadth of horses on the day may differ.
      </p>
    </>
  );
}
