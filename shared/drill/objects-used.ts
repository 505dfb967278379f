/** shared/drill/objects-used.ts - the things carried that an exercise speaks of.
 *  May import: schema types, shared/hands, siblings in shared/drill. */
import type { Drill } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Measure } from "../../schema/values.ts";
import type { Carried } from "../hands/state.ts";
import { compareRanked } from "../rank.ts";
import type { CompiledElement } from "./compile-element.ts";
import type { ExerciseRows } from "./exercise-rows.ts";

/** By rank. An object is used when an action of the drill names it, under any reading, or a movement that is performed. */
export function objectsUsed(rows: ExerciseRows, elements: readonly CompiledElement[]): RecordOf<"objects">[] {
  const acts = elements.flatMap(({ actions }) => actions.map(({ known }) => known));
  const done = [JSON.stringify(acts), JSON.stringify(elements.map(({ drill }) => drill.actions))].join("");
  const moved = rows.all("movements").filter(({ id }) => done.includes(`"${id}"`));
  const told = done + JSON.stringify(moved.flatMap(({ id }) => rows.actionsOf(id).map(({ act }) => act)));
  return rows
    .all("objects")
    .filter((object) => object.work === rows.work.id && told.includes(`"${object.id}"`))
    .sort(compareRanked);
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
