/** shared/ride/puzzle/treated-words.ts - which part of the exercises a count is of, in words.
 *  May import: shared/drill, types of siblings. */
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import { treatedPart } from "../../drill/treated-part.ts";
import type { ExercisePart } from "./exercise-part.ts";

/** "" where all of them are treated wholly; else what the drill says of each that is not. */
export function treatedWords(parts: readonly { laid: ExerciseRows; present: ExercisePart["present"] }[]): string {
  const sentences = parts.flatMap(({ laid, present }) => {
    const { sentence } = treatedPart(
      laid,
      present.map((drill) => ({ drill })),
    );
    if (sentence.startsWith("The whole")) return [];
    return [parts.length === 1 ? sentence : `${laid.exercise.title}: ${sentence}`];
  });
  return sentences.join(" ");
}
