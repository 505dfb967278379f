/** shared/drill/compile-again.ts - an exercise compiled under another choice, where that makes another drill at all.
 *  May import: siblings in shared/drill. Pure. */

import type { Way } from "../../schema/guard.ts";
import type { Rows } from "../../schema/record.ts";
import { type CompiledExercise, compileExercise } from "./compile.ts";
import { type Choice, settle, type Taken } from "./settle.ts";

/** What was compiled before, where every crux that it asked for is read as it was then; else compiled anew. `before`: of
 *  the same rows, way and variant. Throws as `compileExercise`. */
export function compileAgain(
  before: CompiledExercise,
  allRows: Rows,
  options: { choice: Choice; way: Way; variant: string | null },
): CompiledExercise {
  const { rows, settlement: then } = before.base;
  const now = settle(rows, options.choice, options.way, options.variant);
  const same = [...then.asked].every((crux) => isSame(then.taken(crux, null), now.taken(crux, null)));
  return same
    ? { ...before, base: { ...before.base, settlement: now } }
    : compileExercise(allRows, rows.exercise.id, options, rows);
}

function isSame(one: Taken | null, other: Taken | null): boolean {
  return one?.reading.id === other?.reading.id && one?.because === other?.because;
}
