/** tests/decide/brute-force.test.ts - the count against tables worked by hand, against laws, and against puzzles from
 *  outside whose counts are published. Rules N1-N7 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assignments } from "../../shared/decide/assignments.ts";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import type { Puzzle, Stage } from "../../shared/decide/puzzle.ts";
import {
  anyPuzzle,
  barringStage,
  bars,
  colouring,
  goes,
  plainCrux,
  puzzleOf,
  queens,
  queensByTies,
  warns,
} from "./puzzles.ts";

const counts = (puzzle: Puzzle) => {
  const { holding, surelyHolding, all } = countByBruteForce(puzzle);
  return [all, holding, surelyHolding];
};

const left = plainCrux("side", ["left", "right"]);
const hand = plainCrux("hand", ["left", "right", "both"]);
const underBoth = plainCrux("grip", ["near", "far"], { arisesWhen: [{ crux: "hand", readings: ["both"] }] });

/** Silence: the stage may go either way, and one way breaks a rule. */
const silent: Stage = { id: "silent", touches: [], run: () => [goes("a"), goes("b", bars("b is barred"))] };
const warned: Stage = { id: "warned", touches: [], run: (state) => [goes(state, warns("careful"))] };
const never: Stage = { id: "never", touches: [], run: (state) => [goes(state, bars("never"))] };

describe("counts worked by hand", () => {
  const table: [why: string, puzzle: Puzzle, expected: [all: bigint, holding: bigint, surely: bigint]][] = [
    ["[N1] nothing to decide is one assignment", puzzleOf([], []), [1n, 1n, 1n]],
    ["[N1] independent cruxes multiply", puzzleOf([left, hand], []), [6n, 6n, 6n]],
    ["[N1] a crux that does not arise counts once: 1 + 1 + 2", puzzleOf([hand, underBoth], []), [4n, 4n, 4n]],
    ["[N1] in whatever order they stand", puzzleOf([underBoth, hand], []), [4n, 4n, 4n]],
    ["[N2] ruled out readings are not counted", puzzleOf([{ ...hand, ruledOut: ["both"] }], []), [2n, 2n, 2n]],
    ["[N2] all ruled out leaves nothing", puzzleOf([{ ...left, ruledOut: ["left", "right"] }], []), [0n, 0n, 0n]],
    [
      "[N3] require: left needs both, right is free: 1 + 3",
      puzzleOf([left, hand], [], {
        requires: [{ crux: "side", reading: "left", of: { crux: "hand", readings: ["both"] } }],
      }),
      [4n, 4n, 4n],
    ],
    [
      "[N3] exclude: left with both goes: 6 - 1",
      puzzleOf([left, hand], [], {
        excludes: [{ crux: "side", reading: "left", of: { crux: "hand", readings: ["both"] } }],
      }),
      [5n, 5n, 5n],
    ],
    [
      "[N3] to require what does not arise fails: far grip under both only",
      puzzleOf([left, hand, underBoth], [], {
        requires: [{ crux: "side", reading: "left", of: { crux: "grip", readings: ["far"] } }],
      }),
      // right: 4; left: only both with far.
      [5n, 5n, 5n],
    ],
    [
      "[N4] a barring stage: left and left",
      puzzleOf(
        [left, hand],
        [barringStage("same", ["side", "hand"], (reading) => reading("side") === "left" && reading("hand") === "left")],
      ),
      [6n, 5n, 5n],
    ],
    ["[N4] silence: one way is enough to hold, not to hold surely", puzzleOf([left], [silent]), [2n, 2n, 0n]],
    [
      "[N5] completions are not counted: three silent stages change nothing",
      puzzleOf([left], [silent, silent, silent]),
      [2n, 2n, 0n],
    ],
    ["[N4] warnings decide nothing", puzzleOf([left], [warned]), [2n, 2n, 2n]],
    ["[N6] none holds is a result", puzzleOf([left, hand], [silent, never]), [6n, 0n, 0n]],
    [
      "[N4] the beginning may be unknown too",
      puzzleOf(
        [],
        [{ id: "only a", touches: [], run: (state) => [goes(state, ...(state === "a" ? [] : [bars("a")]))] }],
        { start: ["a", "b"] },
      ),
      [1n, 1n, 0n],
    ],
  ];
  test.each(table)("%s", (_why, puzzle, expected) => {
    expect(counts(puzzle)).toEqual(expected);
  });

  test("[N6] says what broke where nothing holds, and nothing where something does", () => {
    expect(countByBruteForce(puzzleOf([left], [silent, never])).broken).toEqual([
      { stage: "never", rule: "never", assignments: 2n },
    ]);
    expect(countByBruteForce(puzzleOf([left], [silent])).broken).toEqual([]);
  });

  test("[N7] shares, forced, dead and excluded pairs", () => {
    const far = plainCrux("place", ["here", "there"]);
    const puzzle = puzzleOf(
      [left, { ...hand, ruledOut: ["both"] }, far],
      [
        barringStage("no right", ["side"], (reading) => reading("side") === "right"),
        barringStage("not both", ["hand", "place"], (r) => r("hand") === "left" && r("place") === "there"),
      ],
    );
    const count = countByBruteForce(puzzle);
    expect(count.shares.map((share) => [share.reading, share.holding, share.all, share.verdict])).toEqual([
      ["left", 3n, 4n, "forced"],
      ["right", 0n, 4n, "dead"],
      ["left", 1n, 4n, "possible"],
      ["right", 2n, 4n, "possible"],
      ["both", 0n, 0n, "ruled out"],
      ["here", 2n, 4n, "possible"],
      ["there", 1n, 4n, "possible"],
    ]);
    expect(count.excludedPairs).toEqual([
      { first: { crux: "hand", reading: "left" }, second: { crux: "place", reading: "there" } },
    ]);
  });

  test("[N4] a witness is a completion that breaks nothing", () => {
    const [witness] = countByBruteForce(puzzleOf([left], [silent, warned])).witnesses;
    expect([...(witness?.assignment ?? [])]).toEqual([["side", "left"]]);
    expect(witness?.steps.map(({ stage, state }) => [stage, state])).toEqual([
      ["silent", "a"],
      ["warned", "a"],
    ]);
  });
});

describe("puzzles from outside", () => {
  // Numbers of ways to place n queens: OEIS A000170.
  test.each([
    [4, 2n],
    [5, 10n],
    [6, 4n],
  ])("%i queens by stages", (size, ways) => {
    expect(countByBruteForce(queens(size)).holding).toBe(ways);
  });
  test.each([
    [3, 0n],
    [6, 4n],
    [8, 92n],
  ])("%i queens by ties between readings", (size, ways) => {
    expect(countByBruteForce(queensByTies(size)).holding).toBe(ways);
  });

  // The chromatic polynomial of a cycle of n is (k-1)^n + (-1)^n (k-1): R. C. Read, "An introduction to chromatic
  // polynomials", Journal of Combinatorial Theory 4 (1968).
  const cycle = (length: number) => Array.from({ length }, (_, at) => [at, (at + 1) % length] as const);
  test.each([
    [3, 3],
    [4, 3],
    [5, 3],
    [5, 4],
    [6, 2],
    [7, 2],
  ])("a cycle of %i in %i colours", (length, colours) => {
    const expected = BigInt((colours - 1) ** length + (-1) ** length * (colours - 1));
    expect(countByBruteForce(colouring(length, cycle(length), colours)).holding).toBe(expected);
  });

  // The complete graph of n vertices: k (k-1) ... (k-n+1), the same source.
  test("a complete graph of four in five colours: 5 · 4 · 3 · 2", () => {
    const edges = [0, 1, 2, 3].flatMap((from) =>
      [0, 1, 2, 3].filter((to) => to > from).map((to) => [from, to] as const),
    );
    expect(countByBruteForce(colouring(4, edges, 5)).holding).toBe(120n);
    expect(countByBruteForce(colouring(4, edges, 3)).holding).toBe(0n);
  });
});

describe("laws", () => {
  test("a new constraint never raises a count", () => {
    fc.assert(
      fc.property(anyPuzzle, fc.integer({ min: 0, max: 3 }), (puzzle, at) => {
        const crux = puzzle.cruxes[at % puzzle.cruxes.length]?.id ?? "";
        const barred = barringStage("new", [crux], (reading) => reading(crux) === "r0");
        const tied = { crux, reading: "r0", of: { crux: "k0", readings: puzzle.cruxes[0]?.readings.slice(1) ?? [] } };
        const more = [
          { ...puzzle, stages: [...puzzle.stages, barred] },
          { ...puzzle, requires: [...puzzle.requires, tied] },
          { ...puzzle, excludes: [...puzzle.excludes, tied] },
        ];
        const before = countByBruteForce(puzzle);
        for (const changed of more) {
          const after = countByBruteForce(changed);
          expect(after.holding <= before.holding).toBe(true);
          expect(after.surelyHolding <= before.surelyHolding).toBe(true);
        }
      }),
    );
  });

  test("independent parts multiply", () => {
    fc.assert(
      fc.property(anyPuzzle, anyPuzzle, (first, second) => {
        const [a, b] = [countByBruteForce(first), countByBruteForce(second)];
        const both = countByBruteForce(sideBySide(first, second));
        expect(both.all).toBe(a.all * b.all);
        expect(both.holding).toBe(a.holding * b.holding);
        expect(both.surelyHolding).toBe(a.surelyHolding * b.surelyHolding);
      }),
      { numRuns: 60 },
    );
  });

  test("the order of cruxes, readings and ties does not matter", () => {
    fc.assert(
      fc.property(anyPuzzle, (puzzle) => {
        const turned: Puzzle = {
          ...puzzle,
          cruxes: puzzle.cruxes.map((crux) => ({ ...crux, readings: crux.readings.toReversed() })).reverse(),
          excludes: puzzle.excludes.toReversed(),
        };
        const [a, b] = [countByBruteForce(puzzle), countByBruteForce(turned)];
        expect([b.all, b.holding, b.surelyHolding]).toEqual([a.all, a.holding, a.surelyHolding]);
        const shares = (count: typeof a) =>
          new Map(count.shares.map((share) => [`${share.crux} ${share.reading}`, share]));
        expect(shares(b)).toEqual(shares(a));
        expect(b.excludedPairs.length).toBe(a.excludedPairs.length);
      }),
    );
  });

  test("shares of a crux that always arises add up to what holds", () => {
    fc.assert(
      fc.property(anyPuzzle, (puzzle) => {
        const count = countByBruteForce(puzzle);
        const sum = count.shares
          .filter(({ crux }) => crux === "k0")
          .reduce((total, { holding }) => total + holding, 0n);
        expect(sum).toBe(count.holding);
        expect(count.surelyHolding <= count.holding && count.holding <= count.all).toBe(true);
      }),
    );
  });
});

/** Both puzzles one after the other, names kept apart; the second begins where the first ended. */
function sideBySide(first: Puzzle, second: Puzzle): Puzzle {
  const renamed = (crux: string) => `other ${crux}`;
  return {
    cruxes: [
      ...first.cruxes,
      ...second.cruxes.map((crux) => ({
        ...crux,
        id: renamed(crux.id),
        arisesWhen: crux.arisesWhen.map((condition) => ({ ...condition, crux: renamed(condition.crux) })),
      })),
    ],
    requires: [...first.requires],
    excludes: [
      ...first.excludes,
      ...second.excludes.map((tie) => ({
        ...tie,
        crux: renamed(tie.crux),
        of: { ...tie.of, crux: renamed(tie.of.crux) },
      })),
    ],
    start: first.start,
    stages: [
      ...first.stages,
      { id: "between", touches: [], run: () => second.start.map((state) => goes(state)) },
      ...second.stages.map((stage) => ({
        ...stage,
        touches: stage.touches.map(renamed),
        run: (state: string, reading: (crux: string) => string | null) =>
          stage.run(state, (crux) => reading(renamed(crux))),
      })),
    ],
  };
}

describe("a broken puzzle is the caller's mistake", () => {
  test("cruxes that arise in a circle", () => {
    const circle = [
      plainCrux("a", ["x"], { arisesWhen: [{ crux: "b", readings: ["x"] }] }),
      plainCrux("b", ["x"], { arisesWhen: [{ crux: "a", readings: ["x"] }] }),
    ];
    expect(() => [...assignments(puzzleOf(circle, []))]).toThrow("Cruxes arise in a circle: a, b, a.");
  });
  test("a stage that looks at what it does not touch", () => {
    expect(() => counts(puzzleOf([left], [{ ...barringStage("peeks", [], (r) => r("side") === "left") }]))).toThrow(
      "The stage peeks asked for the crux side, which is not among those it touches.",
    );
  });
  test("a state without a way on", () => {
    expect(() => counts(puzzleOf([], [{ id: "end", touches: [], run: () => [] }]))).toThrow(
      "The stage end gives no way on from the state start.",
    );
  });
});
