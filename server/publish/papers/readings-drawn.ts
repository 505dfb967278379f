/** server/publish/papers/readings-drawn.ts - which readings are drawn of cruxes nobody settled where the first cannot be ridden: the
 *  nearest that can, as the Ride room shows it.
 *  May import: schema types, shared/drill, shared/ride. To count is dear, so it is done only where something bars the ride. */
import type { Rows } from "../../../schema/record.ts";
import type { CompiledExercise } from "../../../shared/drill/compile.ts";
import { exercisePuzzle, nearestToFirst } from "../../../shared/ride/puzzle/index.ts";
import type { RideOptions } from "../../../shared/ride/ride-context.ts";
import type { RideWithContext } from "../../../shared/ride/ride-exercise.ts";
import { ruleTable, verdictsOf } from "../../../shared/ride/rules/index.ts";

/** By crux; empty where the first readings can be ridden, or where nothing can. `first`: the rides under the first readings. */
export function readingsInstead(
  rows: Rows,
  { drill, base }: CompiledExercise,
  { variant = null }: RideOptions,
  first: readonly RideWithContext[],
): ReadonlyMap<string, string> {
  const cruxes = [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes];
  const taken = cruxes.flatMap(({ crux, taken: settled }) => (settled ? [{ crux, reading: settled.reading }] : []));
  const open = [...new Set(cruxes.map(({ crux }) => crux))].filter((id) => taken.every(({ crux }) => crux !== id));
  if (open.length === 0 || !isBarred(base.rows.all("rules"), first)) return new Map();
  const weighed = exercisePuzzle(rows, [drill.exercise.id], { way: drill.way, variant });
  const instead = nearestToFirst(weighed, { taken, open }) ?? [];
  return new Map(instead.map(({ crux, reading }) => [crux, reading]));
}

function isBarred(rules: Parameters<typeof ruleTable>[0], rides: readonly RideWithContext[]): boolean {
  const barring = new Set(ruleTable(rules).flatMap(({ code, severity }) => (severity === "bars" ? [code] : [])));
  return rides.some(({ ridden, context }) =>
    verdictsOf(ridden, context).some(({ rule, verdict }) => verdict === "broken" && barring.has(rule)),
  );
}
