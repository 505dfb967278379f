/** tests/decide/count.test.ts - the count over blocks against brute force. Rules N1-N10 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Count,
  type Counted,
  count,
  countByBruteForce,
  type Limits,
  type Puzzle,
  walk,
} from "../../shared/decide/index.ts";
import { anyPuzzle, anyRichPuzzle, queens } from "./puzzles.ts";

/** What both must agree on, in one order. */
const plain = ({ holding, surelyHolding, all, shares, excludedPairs, broken }: Count) => ({
  holding,
  surelyHolding,
  all,
  shares,
  excludedPairs,
  broken: broken.map((one) => JSON.stringify([one.stage, one.rule, String(one.assignments)])).sort(),
});

function exactly(counted: Counted): Count {
  if (!counted.exact) throw new Error(counted.why);
  return counted;
}

function agrees(puzzle: Puzzle): void {
  const counted = exactly(count(puzzle, { witnesses: 3 }));
  const oracle = countByBruteForce(puzzle, { witnesses: 3 });
  expect(plain(counted)).toEqual(plain(oracle));
  expect(counted.witnesses.length).toBe(oracle.witnesses.length);
  const different = new Set(counted.witnesses.map(({ assignment }) => JSON.stringify([...assignment].sort())));
  expect(different.size).toBe(counted.witnesses.length);
  for (const { assignment, steps } of counted.witnesses) {
    expect(walk(puzzle, assignment).witness).toEqual(steps);
    expect(steps.length).toBe(puzzle.stages.length);
  }
}

describe("equal to brute force", () => {
  test("on small puzzles", () => {
    fc.assert(fc.property(anyPuzzle, agrees), { numRuns: 1200 });
  });
  test("on puzzles with everything", () => {
    fc.assert(fc.property(anyRichPuzzle({ cruxes: 6, stages: 7 }), agrees), { numRuns: 1200 });
  });
  test("on longer ones", () => {
    fc.assert(fc.property(anyRichPuzzle({ cruxes: 7, stages: 16 }), agrees), { numRuns: 150 });
  });
});

describe("[N10] past a limit", () => {
  const tight = (puzzle: Puzzle, limits: Limits): Counted => count(puzzle, { limits, witnesses: 2 });

  test("held outside, cruxes give the same count", () => {
    fc.assert(
      fc.property(anyRichPuzzle({ cruxes: 6, stages: 6 }), fc.integer({ min: 2, max: 12 }), (puzzle, cells) => {
        const counted = tight(puzzle, { cells, work: 1e9 });
        fc.pre(counted.exact);
        const oracle = countByBruteForce(puzzle);
        expect(plain(exactly(counted))).toEqual(plain(oracle));
      }),
      { numRuns: 500 },
    );
  });

  test("bounds hold, and what they prove is so", () => {
    let bounded = 0;
    let loosened = 0;
    fc.assert(
      fc.property(
        anyRichPuzzle({ cruxes: 6, stages: 8 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 100 }),
        (puzzle, cells, work) => {
          const counted = tight(puzzle, { cells, work });
          if (counted.exact) return;
          bounded += 1;
          const oracle = countByBruteForce(puzzle);
          for (const kind of ["holding", "surelyHolding", "all"] as const) {
            expect(counted[kind].lower <= oracle[kind] && oracle[kind] <= counted[kind].upper).toBe(true);
          }
          if (counted.holding.upper < counted.all.upper) loosened += 1;
          for (const [index, share] of counted.shares.entries()) {
            const known = oracle.shares[index];
            expect(share.holding <= (known?.holding ?? 0n)).toBe(true);
            if (share.verdict !== "possible") expect(share.verdict).toBe(known?.verdict);
          }
          for (const pair of counted.excludedPairs) expect(oracle.excludedPairs).toContainEqual(pair);
          for (const { assignment } of counted.witnesses) expect(walk(puzzle, assignment).holds).toBe(true);
        },
      ),
      { numRuns: 600 },
    );
    expect(bounded).toBeGreaterThan(100);
    expect(loosened).toBeGreaterThan(20);
  });

  test("it says why, in words", () => {
    const counted = tight(queens(6), { cells: 50, work: 200 });
    expect(counted.exact ? "" : counted.why).toBe(
      "An exact count would go past the limit: up to 1 crux is in play at once. 5 parts are not counted, so the lower bound is what was counted and the upper bound takes the rest as open.",
    );
  });
});
