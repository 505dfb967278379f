/** shared/drill/treated-part.ts - how much of an exercise the drill holds, said truthfully.
 *  May import: schema types, shared/cite, shared/text, siblings in shared/drill. Keeps rule D8 (shared/drill/RULES.md). */
import type { Drill } from "../../schema/drill.ts";
import type { Passage } from "../../schema/work.ts";
import { formatReference } from "../cite/format-reference.ts";
import type { ExerciseRows } from "./exercise-rows.ts";
import { unmarkedWords } from "./unmarked-words.ts";

/** The whole of it is treated only where there is a step, no part is noted as untreated, no passage is without marks, and no words are
 *  left that nothing is said of. */
export function treatedPart(
  rows: ExerciseRows,
  elements: readonly { drill: Pick<Drill["elements"][number], "number" | "is"> }[],
): Drill["treated"] {
  const steps = elements.filter(({ drill }) => drill.number !== null).length;
  const untreatedParts = elements.filter(({ drill }) => drill.is === "untreated").length;
  const untreated = passagesNotedUntreated(rows);
  const unmarkedPassages = passagesWithoutMarks(rows, untreated);
  const { words, left, stretches } = unmarkedWords(rows, untreated);

  const counted = steps === 1 ? "1 step" : `${steps} steps`;
  const whole = untreatedParts === 0 && unmarkedPassages.length === 0 && left === 0;
  const sentences = [
    steps === 0
      ? "No step of the exercise is treated yet."
      : whole
        ? `The whole exercise is treated: ${counted}.`
        : `Only part of the exercise is treated: ${counted} of the treated part.`,
    untreatedParts === 0
      ? ""
      : `${untreatedParts === 1 ? "1 part is" : `${untreatedParts} parts are`} noted as not yet treated.`,
    unmarkedPassages.length === 0 ? "" : `Nothing is marked yet in ${unmarkedPassages.map(cited).join(", ")}.`,
    left === 0 ? "" : `Nothing is said yet of ${left} of its ${words} words.`,
  ].filter((sentence) => sentence !== "");
  return { steps, untreatedParts, unmarked: stretches, sentence: sentences.join(" ") };
}

function passagesNotedUntreated(rows: ExerciseRows): Set<string> {
  const order = rows.passages.map(({ id }) => id);
  const noted = new Set<string>();
  for (const element of rows.elements) {
    if (element.is !== "untreated") continue;
    const [from, to] = [order.indexOf(element.fromPassage), order.indexOf(element.toPassage)];
    if (from !== -1) for (const id of order.slice(from, to + 1)) noted.add(id);
  }
  return noted;
}

/** Passages that no mark touches, in any layer, and no untreated part names. */
function passagesWithoutMarks(rows: ExerciseRows, untreated: ReadonlySet<string>): Passage[] {
  return rows.passages.filter(({ id }) => rows.anchorsIn(id).length === 0 && !untreated.has(id));
}

/** The passage as the work cites it. */
function cited({ references: [first] }: Passage): string {
  return first ? formatReference(first) : "a passage without reference";
}
