/** tests/decide/blocks.test.ts - the arithmetic of blocks against big integers; runs that are remembered; states that are one. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Block, emptyBlock, gathered, multiply, numberAt, spread } from "../../shared/decide/blocks.ts";
import { sumsOfProducts } from "../../shared/decide/dot.ts";
import { count, type Stage } from "../../shared/decide/index.ts";
import { bars, goes, plainCrux, puzzleOf } from "./puzzles.ts";

const BITS = 200;
const anyNumbers = fc.array(fc.bigInt({ min: 0n, max: 2n ** 150n }), { minLength: 1, maxLength: 12 });

function blockOf(numbers: readonly bigint[]): Block {
  const block = emptyBlock(numbers.length, BITS);
  for (const [cell, number] of numbers.entries()) {
    for (const [index, limb] of block.limbs.entries()) {
      limb[cell] = Number((number >> BigInt(48 * index)) & (2n ** 48n - 1n));
    }
  }
  return block;
}

const numbersIn = (block: Block): bigint[] => Array.from({ length: block.cells }, (_, cell) => numberAt(block, cell));

describe("numbers in limbs are the numbers", () => {
  test("added up where cells meet, 0 where none does", () => {
    fc.assert(
      fc.property(
        anyNumbers,
        fc.array(fc.integer({ min: -1, max: 4 }), { minLength: 12, maxLength: 12 }),
        (some, goals) => {
          const to = Int32Array.from(goals.slice(0, some.length));
          const expected = [0n, 0n, 0n, 0n, 0n];
          for (const [cell, goal] of to.entries())
            if (goal >= 0) expected[goal] = (expected[goal] ?? 0n) + (some[cell] ?? 0n);
          expect(numbersIn(gathered(blockOf(some), to, 5, BITS))).toEqual(expected);
        },
      ),
    );
  });
  test("copied to where they lead", () => {
    fc.assert(
      fc.property(anyNumbers, fc.array(fc.nat(), { maxLength: 20 }), (some, draws) => {
        const from = Int32Array.from(draws, (draw) => (draw % (some.length + 1)) - 1);
        expect(numbersIn(spread(blockOf(some), from, BITS))).toEqual([...from].map((cell) => some[cell] ?? 0n));
      }),
    );
  });
  test("multiplied with weights of any length", () => {
    fc.assert(
      fc.property(
        anyNumbers,
        fc.bigInt({ min: 1n, max: 2n ** 49n }),
        fc.bigInt({ min: 1n, max: 9n }),
        (some, large, small) => {
          const block = blockOf(some);
          const weight = (cell: number) => (cell % 2 === 0 ? large : small);
          multiply(block, weight);
          expect(numbersIn(block)).toEqual(some.map((number, cell) => number * weight(cell)));
        },
      ),
    );
  });
  test("multiplied with each other and summed by value", () => {
    fc.assert(
      fc.property(
        anyNumbers,
        anyNumbers,
        fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
        (leading, on, draws) => {
          const to = Int32Array.from(leading, (_, cell) => (draws[cell] ?? 0) % on.length);
          const value = Uint16Array.from(leading, (_, cell) => (draws[cell] ?? 0) % 3);
          const expected = [0n, 0n, 0n];
          for (const [cell, number] of leading.entries()) {
            const own = value[cell] ?? 0;
            expected[own] = (expected[own] ?? 0n) + number * (on[to[cell] ?? 0] ?? 0n);
          }
          expect(sumsOfProducts(blockOf(leading), blockOf(on), { to, value }, 3)).toEqual(expected);
        },
      ),
    );
  });
  test("a number that outgrows its block is an error, never a wrong count", () => {
    const block = emptyBlock(1, 20);
    block.limbs[0]?.fill(2 ** 40);
    expect(() => multiply(block, () => 2n ** 20n)).toThrow("A weighted count outgrew the block it is kept in.");
    const two = emptyBlock(2, 20);
    two.limbs[0]?.fill(2 ** 47);
    expect(() => gathered(two, Int32Array.of(0, 0), 1, 20)).toThrow("A count outgrew the block it is kept in.");
  });
});

describe("[N9] stages and states", () => {
  const cruxes = ["a", "b", "c", "d", "e", "f"].map((id) => plainCrux(id, ["0", "1", "2"]));
  const touches = cruxes.map(({ id }) => id);

  test("a stage is run once for each state and each set of answers it asked for", () => {
    const asked: string[] = [];
    const looks: Stage = {
      id: "looks",
      touches,
      run: (state, reading) => {
        const first = reading("a");
        asked.push(`${state} ${first} ${first === "0" ? reading("b") : ""}`);
        return [goes(state)];
      },
    };
    expect(count(puzzleOf(cruxes, [looks], { start: ["x", "y"] }), { witnesses: 0 }).holding).toBe(3n ** 6n);
    // Of 729 combinations: three where a is 0 and b is looked at, and two where it is not; from either beginning.
    expect(asked.sort()).toEqual(
      ["x", "y"].flatMap((state) => [`${state} 0 0`, `${state} 0 1`, `${state} 0 2`, `${state} 1 `, `${state} 2 `]),
    );
  });

  test("what nothing later reads is not kept apart", () => {
    const four = touches.slice(0, 4);
    const remembers: Stage = {
      id: "remembers",
      touches: four,
      run: (_, reading) => [goes(four.map(reading).join(""))],
    };
    const forgets: Stage = { id: "forgets", touches: [], run: (state) => [goes(state[0] === "0" ? "yes" : "no")] };
    const decides: Stage = {
      id: "decides",
      touches: [],
      run: (state) => [goes(state, ...(state === "yes" ? [bars("zero")] : []))],
    };
    const counted = count(puzzleOf(cruxes, [remembers, forgets, decides]));
    expect([counted.holding, counted.peaks.states]).toEqual([2n * 3n ** 5n, 1]);
  });

  test("a stage that answers otherwise the second time is the caller's mistake", () => {
    let turn = 0;
    const fickle: Stage = {
      id: "fickle",
      touches,
      run: (state, reading) => {
        turn += 1;
        reading(turn % 2 === 0 ? "a" : "b");
        return [goes(state)];
      },
    };
    expect(() => count(puzzleOf(cruxes, [fickle]))).toThrow("it is no function");
  });
});
