/** server/publish/papers/readings-drawn.ts - what counting tells a paper of readings nobody settled: which are drawn where the first
 *  cannot be ridden, the nearest that can, as the Ride room shows it; and which can be ridden with none of the others.
 *  May import: schema types, shared/drill, shared/ride. To count is dear, so it is done only where something bars the ride. */
import type { Drill } from "../../../schema/drill.ts";
import type { Rows } from "../../../schema/record.ts";
import type { CompiledExercise } from "../../../shared/drill/compile.ts";
import { answerDecide, exercisePuzzle, nearestToFirst, type Pick } from "../../../shared/ride/puzzle/index.ts";
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
  const { taken, open } = settledOf(drill);
  if (open.length === 0 || !isBarred(base.rows.all("rules"), first)) return new Map();
  const weighed = exercisePuzzle(rows, [drill.exercise.id], { way: drill.way, variant });
  const instead = nearestToFirst(weighed, { taken, open }) ?? [];
  return new Map(instead.map(({ crux, reading }) => [crux, reading]));
}

/** Readings of open cruxes that cannot be ridden under what is settled, however the others are read. Empty where nothing can be
 *  ridden at all, or where that cannot be counted: then none is worse than another. */
export function deadReadings(
  rows: Rows,
  { drill }: CompiledExercise,
  { variant = null }: RideOptions,
): ReadonlySet<string> {
  const { taken, open } = settledOf(drill);
  if (open.length === 0) return new Set();
  const weighed = exercisePuzzle(rows, [drill.exercise.id], { way: drill.way, variant });
  const { exact, holding, shares } = answerDecide(weighed, { picks: taken, asAdopted: false, without: [] });
  if (!exact || holding === "0") return new Set();
  return new Set(
    shares.flatMap(({ crux, reading, verdict }) => (verdict === "dead" && open.includes(crux) ? [reading] : [])),
  );
}

function settledOf(drill: Drill): { taken: Pick[]; open: string[] } {
  const cruxes = [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes];
  const taken = cruxes.flatMap(({ crux, taken: settled }) => (settled ? [{ crux, reading: settled.reading }] : []));
  const open = [...new Set(cruxes.map(({ crux }) => crux))].filter((id) => taken.every(({ crux }) => crux !== id));
  return { taken, open };
}

function isBarred(rules: Parameters<typeof ruleTable>[0], rides: readonly RideWithContext[]): boolean {
  const barring = new Set(ruleTable(rules).flatMap(({ code, severity }) => (severity === "bars" ? [code] : [])));
  return rides.some(({ ridden, context }) =>
    verdictsOf(ridden, context).some(({ rule, verdict }) => verdict === "broken" && barring.has(rule)),
  );
}
