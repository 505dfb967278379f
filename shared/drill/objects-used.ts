/** shared/drill/objects-used.ts - the things carried that an exercise speaks of.
 *  May import: schema types, siblings in shared/drill. */
import type { Drill } from "../../schema/drill.ts";
import { compareRanked } from "../rank.ts";
import type { CompiledElement } from "./compile-element.ts";
import type { ExerciseRows } from "./exercise-rows.ts";

/** By rank. An object counts as used when any value of any action names it, under any reading. */
export function objectsUsed(rows: ExerciseRows, elements: readonly CompiledElement[]): Drill["objects"] {
  const values = JSON.stringify(
    elements.map(({ drill }) => drill.actions.map((action) => action.values.map(({ value }) => value))),
  );
  return rows
    .all("objects")
    .filter((object) => object.work === rows.work.id && values.includes(`"${object.id}"`))
    .sort(compareRanked)
    .map(({ id, name, is }) => ({ id, name, is }));
}
