/** shared/ride/puzzle/within-reach.ts - every crux that could bear on an element, told by its rows alone.
 *  May import: schema types, shared/drill, siblings. Keeps rule P2 (shared/ride/puzzle/RULES.md). More than do bear: used only
 *  where there are too many combinations to try. */
import type { Element } from "../../../schema/exercise.ts";
import type { Kind, Rows } from "../../../schema/record.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import { rangeOf } from "./element-plans.ts";

/** Kinds of rows that an element can come to hang on by naming them. */
const NAMED: readonly Kind[] = ["holds", "movements", "threats", "objects", "stations", "grounds"];

/** `element`: null for what stands throughout, alone. */
export function withinReach(rows: Rows, laid: ExerciseRows, element: Element | null): string[] {
  const seen = new Set<string>();
  const cruxes = new Set<string>();
  const todo: unknown[] = [element, laid.exercise.ground, ...always(laid)];
  const ids: string[] = [];
  for (let some = todo.pop(); some !== undefined; some = todo.pop()) {
    collectWords(some, ids);
    for (let id = ids.pop(); id !== undefined; id = ids.pop()) {
      if (seen.has(id)) continue;
      seen.add(id);
      todo.push(...rowsBehind(rows, laid, id));
      if (laid.cruxes.has(id)) cruxes.add(id);
    }
  }
  return [...cruxes];
}

/** What stands throughout, and where it is ridden. */
function always(laid: ExerciseRows): unknown[] {
  const stations = laid.all("stations").filter(({ ground }) => ground === laid.exercise.ground);
  return [...laid.standings, ...laid.standings.flatMap(({ id }) => laid.actionsOf(id)), ...stations];
}

/** What a named thing is made of. Of a crux: its conditions, and what its readings give; not where they give it. */
function rowsBehind(rows: Rows, laid: ExerciseRows, id: string): unknown[] {
  const crux = laid.cruxes.get(id);
  if (crux) {
    const given = laid.readingsOf(id).flatMap(({ values }) => values.map(({ value }) => value));
    return [crux.arisesWhen.map((condition) => condition.crux), ...given];
  }
  const element = laid.find("elements", id);
  if (element) {
    const again = element.is === "again" ? rangeOf(rows, element) : [];
    return [element, ...laid.actionsOf(id), ...again];
  }
  const named = NAMED.map((kind): unknown => laid.find(kind, id)).filter((row) => row !== undefined);
  return [...named, ...laid.actionsOf(id)];
}

function collectWords(value: unknown, words: string[]): void {
  if (typeof value === "string") words.push(value);
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) collectWords(part, words);
}
