/** tests/client/lane-and-slider-words.test.ts - what of a lane's words fits, and which numbers of steps stand on an axis. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fittedWords } from "../../client/ride/fitted-words.ts";
import { stepMarks } from "../../client/ride/step-marks.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";

const letters = (words: string): number => words.length;

describe("words in a lane", () => {
  test.each<[string, number, string]>([
    ["reins", 5, "reins"],
    ["reins", 4, ""],
    ["spear at the balance", 20, "spear at the balance"],
    ["spear at the balance", 19, "spear …"],
    ["spear at the balance", 6, ""],
    ["circle left, of about 12.8 m, once", 31, "circle left, of about 12.8 m …"],
    ["circle left, of about 12.8 m, once", 13, "circle left …"],
    ["circle left, of about 12.8 m, once", 12, ""],
    ["point forward right (1 o’clock); low", 22, "point forward right …"],
    ["point forward right (1 o’clock); low", 20, "point forward …"],
    ["along the wall, on the right rein", 12, ""],
    ["half volte left, in a small half circle", 15, "half volte …"],
    ["half volte left, in a small half circle", 11, ""],
  ])("of “%s” in %i letters: “%s”", (words, width, shown) => {
    expect(fittedWords(words, width, letters)).toBe(shown);
  });

  test("whatever the width, it fits, and is the words or a beginning of them that ends with a word", () => {
    const words = fc.array(fc.constantFrom("spear", "at", "the", "balance,", "point", "forward;", "low", "(1"), {
      minLength: 1,
    });
    fc.assert(
      fc.property(words, fc.nat(80), (list, width) => {
        const all = list.join(" ");
        const shown = fittedWords(all, width, letters);
        if (shown === "") return;
        expect(letters(shown)).toBeLessThanOrEqual(width);
        if (shown === all) return;
        const start = shown.slice(0, -" …".length);
        expect(all.startsWith(start)).toBe(true);
        expect(all.slice(start.length)).toMatch(/^[;,]? /);
      }),
    );
  });
});

/** A ride whose steps begin at these seconds of a hundred. */
function ride(begins: readonly number[]): Pick<Ridden, "stages" | "timed"> {
  const stages = begins.map((from, index) => ({ from, to: begins[index + 1] ?? 100, number: index + 1 }));
  return { stages, timed: { duration: 100 } } as unknown as Pick<Ridden, "stages" | "timed">;
}
const toldNumbers = (begins: readonly number[], apart: number, now: number): number[] =>
  stepMarks(ride(begins), apart, now).flatMap(({ told, number }) => (told ? [number] : []));

describe("numbers of steps on an axis", () => {
  test.each<[string, number[], number, number, number[]]>([
    ["room for all", [0, 20, 40, 60], 0.1, 0, [1, 2, 3, 4]],
    ["every other, since each does not fit", [0, 8, 16, 24, 32, 40], 0.1, 0, [1, 3, 5]],
    ["the one that is ridden in the place of those beside it", [0, 8, 16, 24, 32, 40], 0.1, 1, [2, 4, 6]],
    ["steps that begin together: the one that is ridden", [0, 0, 50], 0.1, 1, [2, 3]],
  ])("%s", (_, begins, apart, now, numbers) => {
    expect(toldNumbers(begins, apart, now)).toEqual(numbers);
  });

  test("the one that is ridden is always told, and no two are nearer than a number is wide", () => {
    const begins = fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(begins, fc.nat(39), fc.double({ min: 0, max: 0.3, noNaN: true }), (list, at, apart) => {
        const sorted = list.sort((a, b) => a - b);
        const now = at % sorted.length;
        const marks = stepMarks(ride(sorted), apart, now);
        expect(marks.find(({ isNow }) => isNow)).toMatchObject({ number: now + 1, told: true });
        const told = marks.filter((mark) => mark.told).map((mark) => mark.at);
        for (const [index, one] of told.slice(1).entries())
          expect(one - (told[index] ?? 0)).toBeGreaterThanOrEqual(apart);
      }),
    );
  });
});
