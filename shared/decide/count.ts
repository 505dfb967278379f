/** shared/decide/count.ts - how many assignments hold, with shares, verdicts and pairs.
 *  May import: siblings in shared/decide. Keeps rules N1-N10 (shared/decide/RULES.md). */
import { parentsFirst } from "./assignments.ts";
import { type Bounded, bounded, sharesFrom } from "./bounded.ts";
import type { Count } from "./brute-force.ts";
import { indexed } from "./indexed.ts";
import type { Assignment, Puzzle } from "./puzzle.ts";
import { type Limits, type Peaks, type Tally, tallyOf, USUAL_LIMITS } from "./tally.ts";
import type { Trail } from "./trails.ts";
import { excludedPairs, sharesOf } from "./verdicts.ts";
import { walk } from "./walk.ts";

export type ExactCount = Count & { exact: true; peaks: Peaks };
export type BoundedCount = Bounded & { witnesses: Count["witnesses"]; peaks: Peaks };
export type Counted = ExactCount | BoundedCount;

export interface CountOptions {
  /** How many witnesses to keep, from 0; 1 when missing. */
  witnesses?: number;
  limits?: Limits;
}

/** Exact unless a limit is passed. Throws RangeError for a broken puzzle (see checked.ts and runs.ts). */
export function count(puzzle: Puzzle, { witnesses = 1, limits = USUAL_LIMITS }: CountOptions = {}): Counted {
  const every = tallyOf(indexed({ ...puzzle, stages: [] }), limits);
  const tally = tallyOf(indexed(puzzle), limits, witnesses);
  const told = { witnesses: witnessesOf(puzzle, tally), peaks: tally.peaks };
  if (every.uncounted.length + tally.uncounted.length > 0) return { ...told, ...bounded(puzzle, every, tally, limits) };
  const shares = sharesOf(puzzle, sharesFrom(every, tally));
  return {
    ...told,
    exact: true,
    holding: tally.holding,
    surelyHolding: tally.surelyHolding,
    all: every.holding,
    shares,
    excludedPairs: excludedPairs(puzzle, shares, (a, b) => tally.together.pair(a, b)),
    broken: tally.broken,
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
