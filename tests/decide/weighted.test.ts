/** tests/decide/weighted.test.ts - confidences: an example from the TEI Guidelines, refusals, and every assignment one by
 *  one. Rules N16, N17 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  assignments,
  type Confidence,
  countByBruteForce,
  type Puzzle,
  type WeightedCount,
  walk,
  weightedCount,
} from "../../shared/decide/index.ts";
import { anyRichPuzzle, plainCrux, puzzleOf } from "./puzzles.ts";

function weighed(puzzle: Puzzle, confidences: readonly Confidence[]): WeightedCount {
  const counted = weightedCount(puzzle, confidences);
  if (!counted.ok) throw new Error(counted.sentence);
  return counted;
}

// TEI P5 Guidelines, chapter 22 (17 before), “Certainty, Precision, and Responsibility”, 22.1.2 under “Contingent
// Conditions”: whether a word is a personal name (0.6) or a place name (0.4), and whether the name begins there or one word
// before, given the one (0.9, 0.1) or the other (0.5, 0.5). “0.6 * 0.9, or 0.54”; “0.4 * 0.5, or 0.20”, twice; and “a 6
// percent chance (0.1 × 0.6) that none of the alternatives given is correct”.
describe("[N16] the conditional certainty of the TEI Guidelines, 22.1.2", () => {
  const name = plainCrux("name", ["personal", "place"]);
  const start = plainCrux("start", ["here", "a word before"]);
  const given = (reading: string) => ({ crux: "name", reading });
  const confidences: Confidence[] = [
    { crux: "name", reading: "personal", degree: "0.6" },
    { crux: "name", reading: "place", degree: "0.4" },
    { crux: "start", reading: "here", degree: "0.9", given: given("personal") },
    { crux: "start", reading: "a word before", degree: "0.1", given: given("personal") },
    { crux: "start", reading: "here", degree: "0.5", given: given("place") },
    { crux: "start", reading: "a word before", degree: "0.5", given: given("place") },
  ];
  const share = (counted: WeightedCount, crux: string, reading: string) =>
    Number(counted.shares.find((one) => one.crux === crux && one.reading === reading)?.holding) /
    Number(counted.denominator);
  const only = (first: string, second: string) =>
    weighed(
      puzzleOf(
        [
          { ...name, ruledOut: name.readings.filter((reading) => reading !== first) },
          { ...start, ruledOut: start.readings.filter((reading) => reading !== second) },
        ],
        [],
      ),
      confidences,
    );

  test.each([
    ["personal", "here", 54n],
    ["place", "here", 20n],
    ["place", "a word before", 20n],
    ["personal", "a word before", 6n],
  ])("%s, %s", (first, second, hundredths) => {
    const { holding, denominator } = only(first, second);
    expect(holding * 100n).toBe(hundredths * denominator);
  });

  test("the three ways to mark it come to 0.94 where the fourth is excluded", () => {
    const tie = { crux: "name", reading: "personal", of: { crux: "start", readings: ["a word before"] } };
    const counted = weighed(puzzleOf([name, start], [], { excludes: [tie] }), confidences);
    expect(counted.holding * 100n).toBe(94n * counted.denominator);
    expect(share(counted, "name", "place")).toBe(0.4);
    expect(share(counted, "start", "here")).toBe(0.74);
  });
});

describe("[N17] refusals", () => {
  const side = plainCrux("side", ["left", "right"]);
  const hand = plainCrux("hand", ["left", "right"]);
  const grip = plainCrux("grip", ["near", "far"]);
  const puzzle = puzzleOf([side, hand, grip], []);
  const at = (reading: string, degree: string, given?: Confidence["given"]): Confidence => ({
    crux: "side",
    reading,
    degree,
    ...(given ? { given } : {}),
  });
  const left = { crux: "hand", reading: "left" };
  test.each<[code: string, confidences: Confidence[], sentence: string]>([
    [
      "confidence_zero",
      [at("left", "0"), at("right", "1")],
      "The confidence in the reading left of side is 0. Rule the reading out instead.",
    ],
    [
      "confidence_zero",
      [at("left", "0.00")],
      "The confidence in the reading left of side is 0. Rule the reading out instead.",
    ],
    [
      "confidence_over_one",
      [at("left", "0.6"), at("right", "0.41")],
      "The confidences at side come to more than 1: 0.6 + 0.41. Lower one of them.",
    ],
    [
      "confidence_over_one",
      [at("left", "1.5"), at("right", "0.1")],
      "The confidences at side come to more than 1: 1.5 + 0.1. Lower one of them.",
    ],
    [
      "confidence_over_one",
      [at("left", "0.7", left), at("right", "0.7", left)],
      "The confidences at side, given left at hand come to more than 1: 0.7 + 0.7. Lower one of them.",
    ],
    [
      "confidence_not_decimal",
      [at("left", "60%")],
      "The confidence in the reading left of side is “60%”. Write a decimal such as 0.6.",
    ],
    [
      "confidence_not_decimal",
      [at("left", "-0.6")],
      "The confidence in the reading left of side is “-0.6”. Write a decimal such as 0.6.",
    ],
    [
      "confidence_twice",
      [at("left", "0.6"), at("left", "0.4")],
      "Two confidences are given for the reading left of side. Keep one.",
    ],
    [
      "confidence_missing",
      [at("left", "0.6")],
      "The reading right of side has no confidence, though others have. Give it one, or none to any.",
    ],
    [
      "confidence_missing",
      [at("left", "0.6", left), at("right", "0.4", left)],
      "The reading left of side has no confidence, given right at hand, though others have. Give it one, or none to any.",
    ],
    [
      "confidence_unknown",
      [at("up", "0.6")],
      "A confidence is given for the reading up of side, which is not there. Take it away.",
    ],
    [
      "confidence_unknown",
      [{ crux: "gait", reading: "walk", degree: "1" }],
      "A confidence is given for gait, which is no crux here. Take it away.",
    ],
    [
      "confidence_given_itself",
      [at("left", "0.6", { crux: "side", reading: "right" })],
      "A confidence at side depends on side itself. Name another crux, or none.",
    ],
    [
      "confidence_given_several",
      [at("left", "0.6", left), at("right", "0.4", { crux: "grip", reading: "far" })],
      "Confidences at side depend on hand and on grip. Let them depend on one crux.",
    ],
  ])("%s", (code, confidences, sentence) => {
    expect(weightedCount(puzzle, confidences)).toEqual({ ok: false, code, sentence, crux: confidences[0]?.crux });
  });
  test("under one is allowed: something else may be meant", () => {
    const counted = weighed(puzzle, [at("left", "0.5"), at("right", "0.3")]);
    expect([counted.holding, counted.denominator]).toEqual([32n, 10n]);
  });
  test("too much in play is said", () => {
    const tight = weightedCount(puzzle, [], { limits: { cells: 1, work: 0 } });
    expect(tight.ok ? "" : tight.code).toBe("too_much_in_play");
  });
});

describe("against every assignment", () => {
  const anyWeights = fc.array(fc.tuple(fc.integer({ min: 1, max: 25 }), fc.integer({ min: 1, max: 300_000_000 })), {
    minLength: 7,
    maxLength: 7,
  });
  test("[N16] weights multiply along each assignment", () => {
    fc.assert(
      fc.property(anyRichPuzzle({ cruxes: 6, stages: 5 }), anyWeights, (puzzle, draws) => {
        const confidences = puzzle.cruxes.flatMap(({ id, readings }, index): Confidence[] => {
          const [small = 1, fine = 1] = draws[index] ?? [];
          const before = puzzle.cruxes[index - 1];
          if (small % 4 === 0) return [];
          const degree = (at: number) =>
            small % 4 === 1 ? `0.${String(small + at).padStart(2, "0")}` : `0.${String(fine + at).padStart(9, "0")}`;
          const plain = readings.map((reading, at): Confidence => ({ crux: id, reading, degree: degree(at) }));
          if (!before || small % 4 === 3) return plain;
          const given = { crux: before.id, reading: before.readings[0] ?? "" };
          return [...plain, ...plain.map((line, at): Confidence => ({ ...line, degree: degree(at + 5), given }))];
        });
        const counted = weighed(puzzle, confidences);
        const scale = 10n ** 9n;
        const one = (assignment: ReadonlyMap<string, string>): bigint => {
          let product = 1n;
          for (const { id } of puzzle.cruxes) {
            const own = confidences.filter(({ crux, reading }) => crux === id && reading === assignment.get(id));
            const line = own.find(({ given }) => given && assignment.get(given.crux) === given.reading) ?? own[0];
            product *= line ? BigInt(line.degree.slice(2).padEnd(9, "0")) : scale;
          }
          return product;
        };
        const whole = scale ** BigInt(puzzle.cruxes.length);
        const every = [...assignments(puzzle)];
        const holding = every.filter((assignment) => walk(puzzle, assignment).holds);
        const sum = (some: typeof every) => some.reduce((total, assignment) => total + one(assignment), 0n);
        expect(counted.all * whole).toBe(sum(every) * counted.denominator);
        expect(counted.holding * whole).toBe(sum(holding) * counted.denominator);
        for (const share of counted.shares) {
          const own = holding.filter((assignment) => assignment.get(share.crux) === share.reading);
          expect(share.holding * whole).toBe(sum(own) * counted.denominator);
        }
      }),
      { numRuns: 300 },
    );
  });
  test("[N16] without confidences it is the plain count", () => {
    fc.assert(
      fc.property(anyRichPuzzle({ cruxes: 5, stages: 4 }), (puzzle) => {
        const { holding, surelyHolding, all, denominator } = weighed(puzzle, []);
        const plain = countByBruteForce(puzzle);
        expect([holding, surelyHolding, all, denominator]).toEqual([plain.holding, plain.surelyHolding, plain.all, 1n]);
      }),
      { numRuns: 150 },
    );
  });
});
