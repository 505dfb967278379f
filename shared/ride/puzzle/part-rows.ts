/** shared/ride/puzzle/part-rows.ts - the rows one exercise is laid out from, as a text: equal texts, equal puzzles.
 *  May import: schema types, siblings. Keeps rule P5 (shared/ride/puzzle/RULES.md). Words of the passages, and what a person
 *  decided of a reading that is not ruled out, make no difference to the ride and are left out. */
import type { Again } from "../../../schema/exercise.ts";
import type { Kind, RecordOf, Rows } from "../../../schema/record.ts";
import { rangeOf } from "./element-plans.ts";

/** Kinds of which every row may bear on any exercise. */
const SHARED: readonly Kind[] = [
  "objects",
  "holds",
  "movements",
  "grounds",
  "stations",
  "threats",
  "rules",
  "standings",
  "variants",
];

/** By exercise. What is shared is written out once for all of them. */
export function partRows(rows: Rows, exercises: readonly string[]): ReadonlyMap<string, string> {
  const values = <K extends Kind>(kind: K): RecordOf<K>[] =>
    ((rows[kind] ?? []) as { value: RecordOf<K> }[]).map(({ value }) => value);
  const actions = values("actions");
  const shared = JSON.stringify([
    ...SHARED.flatMap((kind) => values(kind)),
    ...actions.filter(({ ownerKind }) => ownerKind !== "elements"),
    ...values("cruxes").map(({ id, arisesWhen, exceptions }) => ({ id, arisesWhen, exceptions })),
    ...values("readings").map(({ id, crux, rank, values: given, status }) => ({
      id,
      crux,
      rank,
      given,
      ruledOut: status.is === "ruled out",
    })),
  ]);
  return new Map(
    exercises.map((exercise) => {
      const home = doneWithin(rows, exercise);
      const elements = values("elements").filter((element) => home.has(element.exercise));
      const owners = new Set(elements.map(({ id }) => id));
      const own = JSON.stringify([
        ...values("exercises")
          .filter(({ id }) => home.has(id))
          .map(({ id, ground }) => ({ id, ground })),
        ...elements,
        ...actions.filter(({ owner }) => owners.has(owner)),
        ...values("waivers").filter(({ element }) => owners.has(element)),
      ]);
      return [exercise, `${shared}${own}`];
    }),
  );
}

/** The exercise, and those that something in it does again. */
function doneWithin(rows: Rows, exercise: string): ReadonlySet<string> {
  const agains = (rows.elements ?? []).flatMap(({ value }): Again[] => (value.is === "again" ? [value] : []));
  const found = new Set([exercise]);
  for (let size = 0; size !== found.size; ) {
    size = found.size;
    for (const again of agains) {
      if (!found.has(again.exercise)) continue;
      if (again.of.is === "exercise") found.add(again.of.exercise);
      for (const element of rangeOf(rows, again)) found.add(element.exercise);
    }
  }
  return found;
}
