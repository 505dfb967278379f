/** tests/ride-puzzle/demo.test.ts - the invented book's exercises as puzzles: every way of reading as the whole ride has it. */
import { describe, expect, test } from "vitest";
import { answerDecide, exercisePuzzle } from "../../shared/ride/puzzle/index.ts";
import { demoRows } from "../ride/rides.ts";
import { expectAsRidden } from "./whole-rides.ts";

const { rows, exercises } = demoRows();

describe("the exercises of the invented book", () => {
  for (const [name, exercise] of Object.entries(exercises))
    test(`[P1] every reading of “${name}” is counted as the whole ride has it`, () => {
      expect(expectAsRidden(rows, [exercise]).assignments).toBeGreaterThan(0);
    });

  // Readings that speak of reins alone do the same on foot, and are counted as one.
  const onFoot: Record<keyof typeof exercises, string> = {
    circle: "4 of 4",
    change: "2 of 4",
    turned: "1 of 1",
    spears: "6 of 60",
    boar: "6 of 16",
    knot: "4 of 6",
  };
  test.each(Object.entries(onFoot))("[P1] [R39] on foot, of the ways to read “%s” hold %s", (name, counted) => {
    const exercise = exercises[name as keyof typeof exercises];
    const weighed = exercisePuzzle(rows, [exercise], { way: "on foot" });
    const { holding, all } = answerDecide(weighed, { picks: [], asAdopted: false, without: [] });
    expect(`${holding} of ${all}`).toBe(counted);
    expectAsRidden(rows, [exercise], { way: "on foot" });
  });
});
