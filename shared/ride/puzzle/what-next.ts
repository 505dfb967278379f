/** shared/ride/puzzle/what-next.ts - what is worth asking next, and why, in plain words.
 *  May import: schema types, shared/decide, siblings. Keeps rule P13 (shared/ride/puzzle/RULES.md). */
import type { Question } from "../../../schema/crux.ts";
import { count, type Pick, type Puzzle, type Ranked, whatNext } from "../../decide/index.ts";
import { exerciseRows } from "../../drill/exercise-rows.ts";
import { askedPuzzle, type DecideAsk } from "./answer.ts";
import { nextSentence } from "./next-words.ts";
import { type Efforts, type Means, type Open, openCrux, openQuestion } from "./open-questions.ts";
import type { WeighedExercise } from "./weighed.ts";

export type { Efforts, Means };

export interface NextStep {
  /** Id of the question, or of the crux. */
  id: string;
  kind: "question" | "crux";
  crux: string | null;
  means: Means;
  /** Bits: by how much the answer narrows what holds, on average. */
  gain: number;
  /** How many other cruxes it would decide, on average. */
  settles: number;
  perEffort: number;
  sentence: string;
  answers: { label: string; holding: string; decides: Pick[] }[];
}

/** The most gain for the effort first; what settles nothing is left out. A crux that an open question with answers is about
 *  is asked by that question. Throws RangeError when the exercises are no longer among the rows. */
export function whatNextOf(
  weighed: WeighedExercise,
  ask: DecideAsk,
  questions: readonly Question[],
  efforts: Efforts,
): NextStep[] {
  const rows = exerciseRows(weighed.rows, weighed.exercises[0] ?? "");
  const puzzle = askedPuzzle(weighed, ask);
  const asked = questions.flatMap((question) => openQuestion(weighed, puzzle, question, efforts) ?? []);
  const covered = new Set(asked.map(({ crux }) => crux));
  const cruxes = puzzle.cruxes
    .filter(({ id, readings, ruledOut }) => !covered.has(id) && readings.length - ruledOut.length > 1)
    .map(({ id }) => openCrux(weighed, rows, puzzle, id, efforts));
  const all = new Map([...asked, ...cruxes].map((open) => [open.candidate.id, open]));
  const { holding } = count(puzzle, { witnesses: 0 });
  const whole = typeof holding === "bigint" ? holding : holding.upper;
  return whatNext(
    puzzle,
    [...all.values()].map(({ candidate }) => candidate),
  ).flatMap((ranked) => {
    const open = all.get(ranked.id);
    return open === undefined || ranked.gain <= 0 ? [] : [nextStep(weighed, puzzle, open, ranked, whole)];
  });
}

function nextStep(weighed: WeighedExercise, puzzle: Puzzle, open: Open, ranked: Ranked, whole: bigint): NextStep {
  return {
    id: ranked.id,
    kind: open.kind,
    crux: open.crux,
    means: open.means,
    gain: ranked.gain,
    settles: ranked.settles,
    perEffort: ranked.perEffort,
    sentence: nextSentence(weighed, puzzle, open, ranked, whole),
    answers: ranked.answers.map(({ label, holding, decides }) => ({ label, holding: String(holding), decides })),
  };
}
