/** shared/ride/puzzle/what-next.ts - what is worth asking next, and why, in plain words.
 *  May import: schema types, shared/decide, siblings. */
import type { Question } from "../../../schema/crux.ts";
import { countByBruteForce } from "../../decide/brute-force.ts";
import type { Pick, Puzzle, ReadIn } from "../../decide/puzzle.ts";
import { askedPuzzle, type DecideAsk } from "./answer.ts";
import type { WeighedExercise } from "./weighed.ts";

/** How hard each way of settling something is, from 1; the user sets it. */
export interface Efforts {
  ask: number;
  picture: number;
  foot: number;
  mounted: number;
}

export interface NextStep {
  /** Id of the question, or of the crux. */
  id: string;
  kind: "question" | "crux";
  crux: string | null;
  /** Bits: the entropy of the answer over what holds. */
  gain: number;
  /** How many other cruxes it would decide, on average. */
  settles: number;
  perEffort: number;
  sentence: string;
  answers: { label: string; holding: string; decides: Pick[] }[];
}

interface Candidate {
  id: string;
  kind: NextStep["kind"];
  crux: string | null;
  title: string;
  answers: { label: string; allows: readonly ReadIn[] }[];
  effort: number;
}

/** Open questions with answers, and open cruxes; the most gain for the effort first. */
export function whatNextOf(
  weighed: WeighedExercise,
  ask: DecideAsk,
  questions: readonly Question[],
  efforts: Efforts,
): NextStep[] {
  const puzzle = askedPuzzle(weighed, ask);
  const open = countByBruteForce(puzzle);
  const possible = new Set(open.shares.filter(({ verdict }) => verdict === "possible").map(({ crux }) => crux));
  const candidates: Candidate[] = [
    ...weighed.cruxes
      .filter(({ id }) => possible.has(id))
      .map(
        ({ id, title }): Candidate => ({
          id,
          kind: "crux",
          crux: id,
          title,
          answers: (weighed.classes.get(id) ?? []).map(({ reading }) => ({
            label: weighed.cruxes.find((one) => one.id === id)?.readings.find((one) => one.id === reading)?.title ?? "",
            allows: [{ crux: id, readings: [reading] }],
          })),
          effort: efforts.ask,
        }),
      ),
    ...questions
      .filter(({ state, answers }) => state.is === "open" && answers.length > 1)
      .map(
        ({ id, crux, text, answers, by }): Candidate => ({
          id,
          kind: "question",
          crux,
          title: text,
          answers: answers.map(({ label, allows }) => ({ label, allows })),
          effort: by === "trial" ? efforts.mounted : efforts.ask,
        }),
      ),
  ];
  return candidates
    .map((candidate) => stepOf(puzzle, open.holding, candidate))
    .filter(({ gain }) => gain > 0)
    .sort((a, b) => b.perEffort - a.perEffort || b.gain - a.gain || (a.id < b.id ? -1 : 1));
}

function stepOf(puzzle: Puzzle, holding: bigint, { id, kind, crux, title, answers, effort }: Candidate): NextStep {
  const counted = answers.map(({ label, allows }) => {
    const { holding: left, shares } = countByBruteForce(allowing(puzzle, allows));
    const forced = shares.filter(({ verdict }) => verdict === "forced");
    return { label, left, decides: forced.map((one) => ({ crux: one.crux, reading: one.reading })) };
  });
  const shares = counted.map(({ left }) => Number(left) / Math.max(1, Number(holding)));
  const gain = shares.reduce((sum, share) => (share > 0 ? sum - share * Math.log2(share) : sum), 0);
  const settles = counted.reduce(
    (sum, { decides }, at) => sum + (shares[at] ?? 0) * Math.max(0, decides.length - 1),
    0,
  );
  return {
    id,
    kind,
    crux,
    gain,
    settles,
    perEffort: gain / Math.max(1, effort),
    sentence: `Settle “${title}”.`,
    answers: counted.map(({ label, left, decides }) => ({ label, holding: String(left), decides })),
  };
}

function allowing(puzzle: Puzzle, allows: readonly ReadIn[]): Puzzle {
  return {
    ...puzzle,
    cruxes: puzzle.cruxes.map((crux) => {
      const only = allows.find((one) => one.crux === crux.id);
      return only === undefined
        ? crux
        : {
            ...crux,
            ruledOut: crux.readings.filter((id) => !only.readings.includes(id) || crux.ruledOut.includes(id)),
          };
    }),
  };
}
