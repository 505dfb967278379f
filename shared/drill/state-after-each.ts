/** shared/drill/state-after-each.ts - where hands, reins and weapon are after each element, for the small plan.
 *  May import: schema types, shared/hands, siblings in shared/drill. */
import type { Drill } from "../../schema/drill.ts";
import type { Rows } from "../../schema/record.ts";
import { type HandsFigure, handsFigure } from "../hands/figure.ts";
import type { ControlState } from "../hands/state.ts";
import { type CompiledExercise, type CompileOptions, compileExercise } from "./compile.ts";

export interface StateAfter {
  element: string;
  state: ControlState;
  figure: HandsFigure;
}

/** One entry an element of the drill, in its order. `options` are those the drill was compiled with. */
export function stateAfterEach(rows: Rows, drill: Pick<Drill, "exercise">, options: CompileOptions = {}): StateAfter[] {
  return statesOf(compileExercise(rows, drill.exercise.id, options));
}

/** The same for an exercise that is compiled already. */
export function statesOf({ followed }: CompiledExercise): StateAfter[] {
  return followed.map(({ compiled, after }) => ({
    element: compiled.drill.id,
    state: after,
    figure: handsFigure(after, whenOf(compiled.drill)),
  }));
}

function whenOf({ number, is, title }: Drill["elements"][number]): string {
  if (number !== null) return `After step ${number}`;
  return is === "untreated" ? "After the part not yet treated" : `After ${title === "" ? "the advice" : `“${title}”`}`;
}
