/** tests/decide/asp.test.ts - the count against clingo's projected count of the same puzzles. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { count, type Puzzle } from "../../shared/decide/index.ts";
import { programsOf, projectedModels } from "./asp.ts";
import { anyRichPuzzle, colouring, queens, queensByTies } from "./puzzles.ts";

async function agrees(puzzle: Puzzle): Promise<void> {
  const programs = programsOf(puzzle);
  const [all, holding, broken] = [
    await projectedModels(programs.all),
    await projectedModels(programs.holding),
    await projectedModels(programs.broken),
  ];
  const counted = count(puzzle);
  expect([counted.all, counted.holding, counted.surelyHolding]).toEqual([all, holding, all - broken]);
}

describe("equal to the projected count of an answer-set solver", () => {
  test("on puzzles with everything", async () => {
    await fc.assert(fc.asyncProperty(anyRichPuzzle({ cruxes: 6, stages: 6 }), agrees), { numRuns: 150 });
  }, 60_000);

  test.each([
    ["five queens by stages", queens(5)],
    ["eight queens by ties", queensByTies(8)],
    [
      "a wheel of six in four colours",
      colouring(
        6,
        [0, 1, 2, 3, 4].flatMap((rim) => [[rim, (rim + 1) % 5] as const, [rim, 5] as const]),
        4,
      ),
    ],
  ])("on %s", async (_name, puzzle) => {
    await agrees(puzzle);
  });
});
