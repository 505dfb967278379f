/** shared/decide/brute-force.ts - the count by trying every assignment: slow, plain, and the oracle of every other.
 *  May import: siblings in shared/decide. Keeps rules N1-N7 (shared/decide/RULES.md). Exact: counts are big integers. */
import { assignments } from "./assignments.ts";
import { checkPuzzle } from "./checked.ts";
import type { Assignment, Pick, Puzzle } from "./puzzle.ts";
import { type ExcludedPair, excludedPairs, type ReadingShare, sharesOf } from "./verdicts.ts";
import { type WitnessStep, walk } from "./walk.ts";

export interface Count {
  /** Assignments in which some completion breaks no barring rule. */
  holding: bigint;
  surelyHolding: bigint;
  all: bigint;
  shares: ReadingShare[];
  excludedPairs: ExcludedPair[];
  /** The first assignments that hold, each with a completion; as many as were asked for. */
  witnesses: { assignment: Assignment; steps: WitnessStep[] }[];
  /** Where nothing holds, what broke, by stage and rule, with how many assignments broke there last. */
  broken: { stage: string; rule: string; assignments: bigint }[];
}

/** `witnesses` is how many to keep, from 0. Throws RangeError for a broken puzzle (see checked.ts and walk.ts). */
export function countByBruteForce(puzzle: Puzzle, options: { witnesses?: number } = {}): Count {
  checkPuzzle(puzzle);
  const wanted = options.witnesses ?? 1;
  const tally = new Map<string, { holding: bigint; surelyHolding: bigint; all: bigint }>();
  const together = new Set<string>();
  const broken = new Map<string, { stage: string; rule: string; assignments: bigint }>();
  const count: Count = {
    holding: 0n,
    surelyHolding: 0n,
    all: 0n,
    shares: [],
    excludedPairs: [],
    witnesses: [],
    broken: [],
  };

  for (const assignment of assignments(puzzle)) {
    const { holds, surelyHolds, witness, brokenAt } = walk(puzzle, assignment);
    count.all += 1n;
    if (holds) count.holding += 1n;
    if (surelyHolds) count.surelyHolding += 1n;
    for (const [crux, reading] of assignment) {
      const known = tally.get(key(crux, reading)) ?? { holding: 0n, surelyHolding: 0n, all: 0n };
      tally.set(key(crux, reading), {
        holding: known.holding + (holds ? 1n : 0n),
        surelyHolding: known.surelyHolding + (surelyHolds ? 1n : 0n),
        all: known.all + 1n,
      });
    }
    if (holds) for (const pair of pairsOf(assignment)) together.add(pair);
    if (witness && count.witnesses.length < wanted) count.witnesses.push({ assignment, steps: witness });
    for (const rule of brokenAt?.rules ?? []) {
      const place = { stage: brokenAt?.stage ?? "", rule };
      const known = broken.get(key(place.stage, rule))?.assignments ?? 0n;
      broken.set(key(place.stage, rule), { ...place, assignments: known + 1n });
    }
  }

  count.shares = sharesOf(puzzle, (crux, value) => {
    const { id = "", readings = [] } = puzzle.cruxes[crux] ?? {};
    return tally.get(key(id, readings[value] ?? "")) ?? { holding: 0n, surelyHolding: 0n, all: 0n };
  });
  count.excludedPairs = excludedPairs(puzzle, count.shares, (first, second) => together.has(pair(first, second)));
  if (count.holding === 0n) count.broken = [...broken.values()];
  return count;
}

function pairsOf(assignment: Assignment): string[] {
  const picks = [...assignment].map(([crux, reading]) => ({ crux, reading }));
  return picks.flatMap((first, index) => picks.slice(index + 1).map((second) => pair(first, second)));
}

/** Assignments list parents first, as `excludedPairs` does, so the order within a pair is one and the same. */
const pair = (first: Pick, second: Pick): string =>
  JSON.stringify([first.crux, first.reading, second.crux, second.reading]);
const key = (first: string, second: string): string => JSON.stringify([first, second]);
