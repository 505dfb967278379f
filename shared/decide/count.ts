/** shared/decide/count.ts - how many assignments hold, with shares, verdicts and pairs.
 *  May import: siblings in shared/decide. Keeps rules N1-N7 (shared/decide/RULES.md). */
import { type Count, countByBruteForce, type ReadingShare } from "./brute-force.ts";
import type { Puzzle } from "./puzzle.ts";

/** How much may be spent before the count gives bounds instead. */
export interface Limits {
  /** Cells of one frontier: combinations of readings in play times sets of states. */
  cells: number;
  /** Cells visited in all. */
  work: number;
}

/** The most cruxes in play at once, and the most sets of states kept apart at once. */
export interface Peaks {
  inPlay: number;
  states: number;
}

/** Both inclusive. */
export interface Bounds {
  lower: bigint;
  upper: bigint;
}

export type ExactCount = Count & { exact: true; peaks: Peaks };

export interface BoundedCount extends Omit<Count, "holding" | "surelyHolding" | "all"> {
  exact: false;
  /** Why it is not exact, in words. */
  why: string;
  holding: Bounds;
  surelyHolding: Bounds;
  all: Bounds;
  /** Counts are of the part that was counted, and so lower bounds. Dead and forced are said only where proven. */
  shares: ReadingShare[];
  peaks: Peaks;
}

export type Counted = ExactCount | BoundedCount;

/** Exact unless a limit is passed. `witnesses` is how many to keep, from 0; 1 when missing. Throws RangeError for a
 *  broken puzzle (see assignments.ts and walk.ts). */
export function count(puzzle: Puzzle, options: { witnesses?: number; limits?: Limits } = {}): Counted {
  const counted = countByBruteForce(puzzle, options);
  return { ...counted, exact: true, peaks: { inPlay: puzzle.cruxes.length, states: 1 } };
}
