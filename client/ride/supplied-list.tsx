/** client/ride/supplied-list.tsx - what the text does not give and was supplied so that it can be ridden at all. */
import type { Ridden } from "../../shared/ride/ridden.ts";
import { metres } from "./moment.ts";

export function SuppliedList({ ride }: { ride: Ridden }) {
  return (
    <section class="supplied-list" aria-label="What was supplied">
      <h2>What was supplied</h2>
      {ride.supplied.length === 0 && <p class="empty">Nothing: the words give all that is ridden.</p>}
      <ul>
        {ride.supplied.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p class="meta">
        In all {metres(ride.metres)} m{ride.strides === null ? "" : `, about ${Math.round(ride.strides)} strides`}.
      </p>
    </section>
  );
}
