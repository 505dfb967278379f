/** tests/ride-puzzle/demo.test.ts - the invented book's exercises as puzzles: every way of reading as the whole ride has it. */
import { describe, expect, test } from "vitest";
import { demoRows } from "../ride/rides.ts";
import { expectAsRidden } from "./whole-rides.ts";

const { rows, exercises } = demoRows();

describe("the exercises of the invented book", () => {
  for (const [name, exercise] of Object.entries(exercises))
    test(`[P1] every reading of “${name}” is counted as the whole ride has it`, () => {
      expect(expectAsRidden(rows, [exercise]).assignments).toBeGreaterThan(0);
    });
});
