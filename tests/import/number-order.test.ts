/** tests/import/number-order.test.ts - [I12] which numbers number the paragraphs: cases, and a brute-force oracle. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ascendingChain } from "../../server/import/number-order.ts";

const chain = (...numbers: number[]) => ascendingChain(numbers).map((index) => numbers[index]);

describe("[I12] the chain of numbers", () => {
  test.each<[string, number[], number[]]>([
    ["nothing", [], []],
    ["one", [782], [782]],
    ["in order", [1, 2, 3], [1, 2, 3]],
    ["a list inside", [7, 1, 2, 8, 9], [7, 8, 9]],
    ["a list inside, longer than the step around it", [47, 1, 2, 3, 48, 49, 50, 51], [47, 48, 49, 50, 51]],
    ["a gap", [1, 2, 4, 5], [1, 2, 4, 5]],
    ["a year", [1, 2, 1917, 3, 4], [1, 2, 3, 4]],
    ["a year at the end", [1, 2, 3, 1917], [1, 2, 3]],
    ["two parts far apart", [10, 11, 12, 782, 783, 784, 785], [10, 11, 12, 782, 783, 784, 785]],
  ])("%s", (_name, numbers, expected) => {
    expect(chain(...numbers)).toEqual(expected);
  });

  test("of a table of contents and the text, the text", () => {
    expect(ascendingChain([1, 2, 3, 1, 2, 3, 4])).toEqual([3, 4, 5, 6]);
  });

  // The same worth, computed over every ascending selection.
  const worthOf = (numbers: readonly number[]) =>
    numbers.slice(1).reduce((sum, number, at) => {
      const step = number - (numbers[at] ?? 0);
      return sum + (step > 10 ? -1.5 : step === 1 ? 1 : 1 - step / 5);
    }, 0);

  test("no other ascending selection is worth more", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 9 }), (numbers) => {
        const found = chain(...numbers) as number[];
        expect(found.every((number, at) => at === 0 || number > (found[at - 1] ?? 0))).toBe(true);
        for (let mask = 1; mask < 1 << numbers.length; mask += 1) {
          const other = numbers.filter((_, at) => (mask >> at) & 1);
          if (other.some((number, at) => at > 0 && number <= (other[at - 1] ?? 0))) continue;
          expect(worthOf(other)).toBeLessThanOrEqual(worthOf(found) + 1e-9);
        }
      }),
    );
  });
});
