/** shared/drill/objects-used.ts - the things carried that an exercise speaks of.
 *  May import: schema types, shared/hands, siblings in shared/drill. */
import type { Drill } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Measure } from "../../schema/values.ts";
import type { Carried } from "../hands/state.ts";
import { compareRanked } from "../rank.ts";
import type { CompiledElement } from "./compile-element.ts";
import type { ExerciseRows } from "./exercise-rows.ts";

/** By rank. An object is used when an action of the drill names it, under any reading, or a movement that is performed.
 *  What an instruction begins with counts as an element of the drill. */
export function objectsUsed(
  rows: ExerciseRows,
  elements: readonly Pick<CompiledElement, "actions">[],
): RecordOf<"objects">[] {
  const named = new Set<string>();
  for (const { actions } of elements)
    for (const { known, drill } of actions) {
      collectWords(known.slots, named);
      for (const { value } of drill.values) collectWords(value, named);
    }
  for (const { id } of rows.all("movements"))
    if (named.has(id)) for (const { act } of rows.actionsOf(id)) collectWords(act.slots, named);
  return rows
    .all("objects")
    .filter((object) => object.work === rows.work.id && named.has(object.id))
    .sort(compareRanked);
}

/** Every word in a value, its ids among them, goes into `words`. */
function collectWords(value: unknown, words: Set<string>): void {
  if (typeof value === "string") words.add(value);
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) collectWords(part, words);
}

export function printedObjects(objects: readonly RecordOf<"objects">[]): Drill["objects"] {
  return objects.map(({ id, name, is }) => ({ id, name, is }));
}

/** As the control state needs them. */
export function carriedObjects(objects: readonly RecordOf<"objects">[]): Carried[] {
  return objects.map(({ id, name, is, slots }) => ({
    id,
    name,
    is,
    lengthMetres: slots.length?.is === "said" ? middle(slots.length.value) : null,
  }));
}

function middle(measure: Measure): number {
  return measure.is === "range" ? (measure.from + measure.to) / 2 : measure.of;
}
