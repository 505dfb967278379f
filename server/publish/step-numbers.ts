/** server/publish/step-numbers.ts - printed numbers of an exercise as it is decided now, for whoever prints no drill.
 *  May import: shared/drill. Pure. */
import { presentElement } from "../../shared/drill/compile-element.ts";
import type { ExerciseRows } from "../../shared/drill/exercise-rows.ts";
import { settle } from "../../shared/drill/settle.ts";
import type { Names } from "../../shared/drill/words.ts";

/** By element; what is no part of the exercise as it is decided, or has no number, is not among them. */
export function stepNumbers(rows: ExerciseRows, names: Names): Map<string, number> {
  const base = { rows, names, settlement: settle(rows, [], "mounted", null), wordless: true };
  const numbered = rows.elements.filter(
    (one) => (one.is === "step" || one.is === "again") && presentElement(base, one) !== null,
  );
  return new Map(numbered.map(({ id }, index) => [id, index + 1]));
}
