/** shared/decide/count.ts - how many assignments hold, with shares, verdicts and pairs.
 *  May import: siblings in shared/decide. Keeps rules N1-N10 (shared/decide/RULES.md). */
import { parentsFirst } from "./assignments.ts";
import type { Count } from "./brute-force.ts";
import { indexed } from "./indexed.ts";
import type { Assignment, Pick, Puzzle } from "./puzzle.ts";
import { type Limits, type Peaks, type Tally, tallyOf, USUAL_LIMITS } from "./tally.ts";
import type { Trail } from "./trails.ts";
import { excludedPairs, type ReadingShare, sharesOf } from "./verdicts.ts";
import { walk } from "./walk.ts";

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

export interface CountOptions {
  /** How many witnesses to keep, from 0; 1 when missing. */
  witnesses?: number;
  limits?: Limits;
}

/** Exact unless a limit is passed. Throws RangeError for a broken puzzle (see checked.ts and runs.ts). */
export function count(puzzle: Puzzle, { witnesses = 1, limits = USUAL_LIMITS }: CountOptions = {}): Counted {
  const index = indexed(puzzle);
  const every = tallyOf(indexed({ ...puzzle, stages: [] }), limits);
  const tally = tallyOf(index, limits, witnesses);
  const shares = sharesOf(puzzle, (crux, value) => ({
    holding: tally.shares[crux]?.holding[value] ?? 0n,
    surelyHolding: tally.shares[crux]?.surelyHolding[value] ?? 0n,
    all: every.shares[crux]?.holding[value] ?? 0n,
  }));
  const bit = ({ crux, reading }: Pick): number => {
    const own = index.indexOf.get(crux) as number;
    return tally.together.bit(own, puzzle.cruxes[own]?.readings.indexOf(reading) as number);
  };
  return {
    exact: true,
    holding: tally.holding,
    surelyHolding: tally.surelyHolding,
    all: every.holding,
    shares,
    excludedPairs: excludedPairs(puzzle, shares, (first, second) => tally.together.has(bit(first), bit(second))),
    witnesses: witnessesOf(puzzle, tally),
    broken: tally.broken,
    peaks: tally.peaks,
  };
}

function witnessesOf(puzzle: Puzzle, { trails }: Tally): Count["witnesses"] {
  return trails.map((trail) => {
    const assignment = assignmentOf(puzzle, trail);
    return { assignment, steps: walk(puzzle, assignment).witness ?? [] };
  });
}

/** Parents before what arises under them, as the other assignments are. */
function assignmentOf(puzzle: Puzzle, trail: Trail): Assignment {
  const index = new Map(puzzle.cruxes.map(({ id }, crux) => [id, crux]));
  return new Map(
    parentsFirst(puzzle.cruxes).flatMap(({ id, readings }) => {
      const reading = readings[trail.get(index.get(id) as number) as number];
      return reading === undefined ? [] : [[id, reading] as const];
    }),
  );
}
