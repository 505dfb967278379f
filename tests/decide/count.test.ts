/** tests/decide/count.test.ts - the count over blocks against brute force. Rules N1-N10 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Count, type Counted, count, countByBruteForce, type Puzzle, walk } from "../../shared/decide/index.ts";
import { anyPuzzle, anyRichPuzzle } from "./puzzles.ts";

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
    fc.assert(fc.property(anyPuzzle, agrees), { numRuns: 1500 });
  });
  test("on puzzles with everything", () => {
    fc.assert(fc.property(anyRichPuzzle({ cruxes: 6, stages: 7 }), agrees), { numRuns: 1500 });
  });
  test("on longer ones", () => {
    fc.assert(fc.property(anyRichPuzzle({ cruxes: 7, stages: 16 }), agrees), { numRuns: 150 });
  });
});
