/** server/publish/letter-count.ts - what an answer would leave of the ways to ride an exercise, as a letter says it.
 *  May import: schema types, shared/ride. */
import type { Question } from "../../schema/crux.ts";
import type { Rows } from "../../schema/record.ts";
import { answerDecide, exercisePuzzle, whatNextOf } from "../../shared/ride/puzzle/index.ts";

export interface LetterCount {
  /** A sentence; "" where the question has no effect on the count. */
  matters: (question: Question) => string;
}

const NOTHING_PICKED = { picks: [], asAdopted: false, without: [] };
/** The letter ranks nothing, so all ways of settling are the same. */
const EVEN = { ask: 1, picture: 1, foot: 1, mounted: 1 };

export function letterCount(rows: Rows, exercise: string, questions: readonly Question[]): LetterCount {
  const weighed = exercisePuzzle(rows, [exercise]);
  const { exact, holding, all, shares } = answerDecide(weighed, NOTHING_PICKED);
  const steps = new Map(whatNextOf(weighed, NOTHING_PICKED, questions, EVEN).map((step) => [step.id, step]));
  return {
    matters: ({ id, crux }) => {
      if (!exact) return "";
      const step = steps.get(id);
      if (step !== undefined && step.answers.length > 0) {
        const left = step.answers.map(({ label, holding: ways }) => `if “${label}”, ${ways === "0" ? "none" : ways}`);
        return `As it stands, ${waysOf(holding, all)} can be ridden. Of these are left: ${left.join("; ")}.`;
      }
      const forced = shares.find((share) => share.crux === crux && share.verdict === "forced");
      const title = weighed.cruxes
        .find((one) => one.id === crux)
        ?.readings.find((reading) => reading.id === forced?.reading)?.title;
      return title === undefined
        ? ""
        : `By the rules of riding only “${title}” can be ridden; if the text says otherwise, a rule or another reading is wrong.`;
    },
  };
}

const waysOf = (holding: string, all: string): string =>
  holding === "1"
    ? `one of the ${all} ways to read the exercise`
    : `${holding} of the ${all} ways to read the exercise`;
