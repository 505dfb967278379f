/** client/decide/apparatus-list.tsx - what is not counted: cruxes without effect on the ride, and rows that are not as they should
 *  be, each with the way to it. */

import { MARKABLE, type Markable } from "../../schema/mark.ts";
import type { Problem } from "../../shared/ride/puzzle/index.ts";
import { one, ranked } from "../state/rows.ts";
import { answered, laid } from "./answers.ts";
import { openInRead, passageOf } from "./goto.ts";
import { Quoted } from "./quoted.tsx";
import { citationsFor } from "./words-of.ts";

export function Apparatus() {
  const list = answered.value?.apparatus ?? [];
  if (list.length === 0) return null;
  const severalRiders = laid.value?.stages.some(({ role }) => role !== null) ?? false;
  return (
    <section class="apparatus-list" aria-label="Without effect on the ride">
      <h2>Without effect on the ride</h2>
      <p class="meta">
        These stand in the apparatus; whatever is read there, the same is ridden{severalRiders && " by each rider"}, so
        they are not counted.
        {severalRiders && " How near riders come to each other is never part of a count, see Ride."}
      </p>
      <ul>
        {list.map(({ crux, why }) => (
          <li key={crux} id={`entry-${crux}`}>
            <span class="ref" aria-hidden="true">
              †
            </span>{" "}
            {one("cruxes", crux)?.title} <Quoted citations={citationsFor("cruxes", crux)} brief />
            <span class="meta">
              {ranked("readings")
                .filter((reading) => reading.crux === crux)
                .map(({ title }) => `“${title}”`)
                .join(" or ")}
              . {why} <ToRead kind="cruxes" id={crux} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Problems() {
  const list = answered.value?.problems ?? [];
  if (list.length === 0) return null;
  return (
    <section class="problems" aria-label="To put right">
      {list.map((problem) => (
        <p key={`${problem.code} ${problem.id}`} class="notice">
          {problem.sentence} <ToProblem problem={problem} />
        </p>
      ))}
    </section>
  );
}

/** A reading is put right on the desk of its crux. */
function ToProblem({ problem: { kind, id } }: { problem: Problem }) {
  const crux = kind === "readings" ? one("readings", id)?.crux : undefined;
  if (crux !== undefined) return <ToRead kind="cruxes" id={crux} />;
  return (MARKABLE as readonly string[]).includes(kind) ? <ToRead kind={kind as Markable} id={id} /> : null;
}

function ToRead({ kind, id }: { kind: Markable; id: string }) {
  const passage = passageOf({ kind, id });
  if (passage === null) return null;
  return (
    <button type="button" class="quiet" onClick={() => void openInRead({ kind, id }, passage, true)}>
      open in Read
    </button>
  );
}
