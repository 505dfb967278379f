/** shared/decide/what-next.ts - which question is worth settling next.
 *  May import: siblings in shared/decide. Keeps rules N14-N15 (shared/decide/RULES.md). Gains are in bits and are plain
 *  numbers; what they rest on is counted exactly. */
import { type IndexedPuzzle, indexed } from "./indexed.ts";
import { allowingOnly } from "./narrowed.ts";
import type { Pick, Puzzle, PuzzleCrux, ReadIn } from "./puzzle.ts";
import { type Limits, type Tally, tallyOf, USUAL_LIMITS } from "./tally.ts";

/** Something that can be settled: a crux, or a question with its possible answers. */
export interface Candidate {
  id: string;
  /** What each answer leaves of the readings; cruxes it does not name stay open. */
  answers: readonly { label: string; allows: readonly ReadIn[] }[];
  /** What it takes to settle, from 1. */
  effort: number;
}

export interface RankedAnswer {
  label: string;
  /** Assignments that hold under it. */
  holding: bigint;
  /** Cruxes that were open and that no answer of the candidate names: those left with one reading, and it. */
  decides: Pick[];
  /** Likewise those that no longer arise. */
  lapses: string[];
}

export interface Ranked {
  id: string;
  /** By how many bits the answer narrows what holds, on average. */
  gain: number;
  /** How many other open cruxes it decides, on average. */
  settles: number;
  perEffort: number;
  answers: RankedAnswer[];
  /** False where not everything could be counted within the limits: then all numbers are of what was counted. */
  exact: boolean;
}

/** Each reading that is not ruled out is an answer. */
export function cruxCandidate({ id, readings, ruledOut }: PuzzleCrux, effort: number): Candidate {
  const open = readings.filter((reading) => !ruledOut.includes(reading));
  return { id, answers: open.map((one) => ({ label: one, allows: [{ crux: id, readings: [one] }] })), effort };
}

/** The most gain per effort first; then what settles more, then by id. Throws RangeError for a broken puzzle, a crux that is
 *  not in it, or an effort below 1. */
export function whatNext(
  puzzle: Puzzle,
  candidates: readonly Candidate[],
  { limits = USUAL_LIMITS }: { limits?: Limits } = {},
): Ranked[] {
  const index = indexed(puzzle);
  const before = tallyOf(index, limits);
  const ranked = candidates.map((candidate) => {
    if (!(candidate.effort >= 1)) {
      throw new RangeError(`The effort of ${candidate.id} is ${candidate.effort}; an effort is 1 or more.`);
    }
    return rank(index, before, candidate, limits);
  });
  return ranked.sort((a, b) => b.perEffort - a.perEffort || b.settles - a.settles || (a.id < b.id ? -1 : 1));
}

function rank(puzzle: IndexedPuzzle, before: Tally, { id, answers, effort }: Candidate, limits: Limits): Ranked {
  const named = new Set(answers.flatMap(({ allows }) => allows.map(({ crux }) => crux)));
  const { cruxes } = puzzle.puzzle;
  const others = cruxes.filter((crux) => !named.has(crux.id) && possible(puzzle, before, crux).length > 1);
  let exact = before.uncounted.length === 0;
  const told = answers.map(({ label, allows }): RankedAnswer => {
    const after = answered(puzzle, before, allows, limits);
    exact &&= after.exact;
    const left = others.map((crux) => ({ crux: crux.id, readings: after.possible(crux) }));
    if (after.holding === 0n) return { label, holding: 0n, decides: [], lapses: [] };
    return {
      label,
      holding: after.holding,
      decides: left.flatMap(({ crux, readings: [one, ...more] }) =>
        one !== undefined && more.length === 0 ? [{ crux, reading: one }] : [],
      ),
      lapses: left.flatMap(({ crux, readings }) => (readings.length === 0 ? [crux] : [])),
    };
  });
  const { gain, settles } = averages(before.holding, told);
  return { id, gain, settles, perEffort: gain / effort, answers: told, exact };
}

interface Answered {
  holding: bigint;
  /** Readings that still occur. */
  possible: (crux: PuzzleCrux) => string[];
  exact: boolean;
}

/** An answer about one crux can be read off what was counted; one about several is counted anew. */
function answered(puzzle: IndexedPuzzle, before: Tally, allows: readonly ReadIn[], limits: Limits): Answered {
  const names = new Set(allows.map(({ crux }) => crux));
  const narrow = allowingOnly(puzzle.puzzle, allows);
  if (names.size === 1) {
    const [name = ""] = names;
    const crux = puzzle.indexOf.get(name) as number;
    const { readings, ruledOut } = narrow.cruxes[crux] as PuzzleCrux;
    const values = (puzzle.values[crux] ?? []).filter((value) => !ruledOut.includes(readings[value] ?? ""));
    const shares = before.shares[crux]?.holding ?? [];
    return {
      holding: values.reduce((sum, value) => sum + (shares[value] ?? 0n), 0n),
      possible: (other) => {
        const index = puzzle.indexOf.get(other.id) as number;
        const occurs = (reading: number) =>
          values.some((value) =>
            before.together.has(before.together.bit(crux, value), before.together.bit(index, reading)),
          );
        return other.readings.filter((_, reading) => occurs(reading));
      },
      exact: true,
    };
  }
  const after = names.size === 0 ? before : tallyOf(indexed(narrow), limits);
  return {
    holding: after.holding,
    possible: (other) => possible(puzzle, after, other),
    exact: after.uncounted.length === 0,
  };
}

function possible({ indexOf }: IndexedPuzzle, tally: Tally, { id, readings }: PuzzleCrux): string[] {
  const { holding } = tally.shares[indexOf.get(id) as number] ?? { holding: [] };
  return readings.filter((_, value) => (holding[value] ?? 0n) > 0n);
}

/** An answer is as likely as it has assignments that hold. Answers that share some count them each. */
function averages(holding: bigint, answers: readonly RankedAnswer[]): { gain: number; settles: number } {
  const sum = answers.reduce((total, answer) => total + answer.holding, 0n);
  let [gain, settles] = [0, 0];
  for (const answer of answers) {
    if (answer.holding === 0n) continue;
    const likely = 2 ** (log2(answer.holding) - log2(sum));
    gain += likely * (log2(holding) - log2(answer.holding));
    settles += likely * (answer.decides.length + answer.lapses.length);
  }
  return { gain, settles };
}

/** Of a number above 0, as near as a double comes. */
function log2(number: bigint): number {
  const bits = number.toString(2).length;
  const shift = Math.max(0, bits - 53);
  return Math.log2(Number(number >> BigInt(shift))) + shift;
}
