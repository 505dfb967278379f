/** tests/ride-puzzle/laws.test.ts - laws of exercises as puzzles, over exercises drawn at random; the seed is printed by a failure. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyExercise, exerciseFrom } from "./any-exercise.ts";
import { expectAsRidden } from "./whole-rides.ts";

const runs = { numRuns: 250, seed: -674163584 };

describe("every exercise as a puzzle", () => {
  test("[P1] is counted as the whole ride has it, reading by reading", { timeout: 120_000 }, () => {
    const seen = { assignments: 0, holding: 0, surely: 0 };
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const { rows, exercise } = exerciseFrom(drawn);
        const { assignments, holding, surely } = expectAsRidden(rows, [exercise]);
        seen.assignments += assignments;
        seen.holding += holding;
        seen.surely += surely;
      }),
      runs,
    );
    // That both happen often, so that neither is compared with nothing.
    expect(seen.assignments).toBeGreaterThan(500);
    expect(seen.holding).toBeGreaterThan(50);
    expect(seen.assignments - seen.holding).toBeGreaterThan(50);
    console.log(seen);
  });
});
