/** server/publish/papers/paper-part.ts - one exercise as it stands on a paper: compiled, and cut from one step to another.
 *  May import: schema types, shared/drill, siblings. */
import type { Drill, DrillElement } from "../../../schema/drill.ts";
import type { PaperAsk, PaperPart } from "../../../schema/paper.ts";
import type { CompiledExercise } from "../../../shared/drill/compile.ts";
import type { ExerciseRows, WorkRows } from "../../../shared/drill/exercise-rows.ts";
import type { LaidRows, ReadExercise } from "./laid-rows.ts";
import { numbersWords } from "./numbers-words.ts";

export interface BuiltPart {
  part: PaperPart;
  rows: ExerciseRows;
  /** What stands on the paper: of a part that is cut, only the elements within the cut. */
  drill: Drill;
  whole: Drill;
  /** What it was compiled with, and what its elements do as acts. */
  base: CompiledExercise["base"];
  followed: CompiledExercise["followed"];
  rides: ReadExercise["rides"];
  /** "steps 3–5 of 7"; null where the whole exercise is asked for. */
  cut: string | null;
  /** All that the cut leaves: "steps 3–5 and a piece of advice". */
  left: string;
  /** Elements of the whole that the cut leaves out, before and after it. */
  before: DrillElement[];
  after: DrillElement[];
}

/** A version of the day brings its own way; without one it is the way that was asked for. Throws RangeError when the
 *  exercise, the version or a chosen reading is not among the rows: `problemWithAsk` is asked first. */
export function buildPart(
  laid: LaidRows,
  book: WorkRows,
  part: PaperPart,
  { choice, way }: Pick<PaperAsk, "choice" | "way">,
): BuiltPart {
  const { rows, compiled, rides } = laid.read(book, part.exercise, { choice, way, variant: part.variant });
  const { drill: whole, base, followed } = compiled;
  const order = new Map(rows.elements.map(({ id }, index) => [id, index]));
  // An end that no printed element has still tells where to cut.
  const first = part.from === null ? 0 : (order.get(part.from) ?? 0);
  const last = part.to === null ? rows.elements.length : (order.get(part.to) ?? rows.elements.length);
  const at = ({ id }: DrillElement): number => order.get(id) ?? 0;
  // Advice goes with the steps it is about, wherever the text has it.
  const about = ({ id }: DrillElement): boolean => {
    const row = rows.find("elements", id);
    if (row?.is !== "advice") return false;
    const from = row.from === null ? 0 : (order.get(row.from) ?? 0);
    const to = row.to === null ? rows.elements.length : (order.get(row.to) ?? rows.elements.length);
    return from <= last && to >= first;
  };
  const isKept = (element: DrillElement): boolean => (at(element) >= first && at(element) <= last) || about(element);
  const kept = whole.elements.filter(isKept);
  const before = whole.elements.filter((element) => at(element) < first && !isKept(element));
  const after = whole.elements.filter((element) => at(element) > last && !isKept(element));
  const isCut = before.length > 0 || after.length > 0;
  return {
    part,
    rows,
    whole,
    base,
    followed,
    rides,
    drill: isCut ? { ...whole, elements: kept } : whole,
    cut: isCut ? cutWords(kept, whole.elements) : null,
    left: numbersWords(kept) || "nothing",
    before,
    after,
  };
}

/** "steps 3–5 of 7"; what has no step among what is left, by that. */
function cutWords(kept: readonly DrillElement[], all: readonly DrillElement[]): string {
  const numbered = kept.filter(({ number }) => number !== null);
  const of = all.filter(({ number }) => number !== null).length;
  return numbered.length === 0 ? numbersWords(kept) || "no step" : `${numbersWords(numbered)} of ${of}`;
}
