/** tests/papers/numbers-words.test.ts - steps by their numbers, and what has none counted by its kind. */
import { expect, test } from "vitest";
import type { DrillElement } from "../../schema/drill.ts";
import { numbersWords } from "../../server/publish/papers/numbers-words.ts";

type Told = Pick<DrillElement, "number" | "is">;
const steps = (...numbers: number[]): Told[] => numbers.map((number) => ({ number, is: "step" }));
const bare = (...kinds: DrillElement["is"][]): Told[] => kinds.map((is) => ({ number: null, is }));

test.each<[string, Told[], string]>([
  ["nothing", [], ""],
  ["one step", steps(3), "step 3"],
  ["a range", steps(3, 4, 5), "steps 3–5"],
  ["ranges out of order, each once", steps(7, 1, 2, 2), "steps 1–2, 7"],
  ["a piece of advice", bare("advice"), "a piece of advice"],
  ["several of a kind are counted", [...steps(1), ...bare("advice", "advice")], "step 1 and 2 pieces of advice"],
  [
    "several kinds",
    [...steps(1, 2), ...bare("advice", "untreated")],
    "steps 1–2, a piece of advice and a part not yet treated",
  ],
])("%s", (_why, elements, said) => {
  expect(numbersWords(elements)).toBe(said);
});
