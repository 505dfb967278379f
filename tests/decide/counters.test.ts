/** tests/decide/counters.test.ts - what any counter must give: tables worked by hand, laws, and puzzles from outside whose
 *  counts are published. Both counters are held to it. Rules N1-N9 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Count, count, countByBruteForce, narrowed, type Puzzle, type Stage } from "../../shared/decide/index.ts";
import {
  anyPuzzle,
  anyRichPuzzle,
  barringStage,
  bars,
  colouring,
  goes,
  plainCrux,
  puzzleOf,
  queens,
  queensByTies,
  sideBySide,
  warns,
} from "./puzzles.ts";

type Counter = (puzzle: Puzzle) => Count;

const counters: [name: string, counter: Counter][] = [
  ["brute force", countByBruteForce],
  [
    "over blocks",
    (puzzle) => {
      const counted = count(puzzle);
      if (!counted.exact) throw new Error(counted.why);
      return counted;
    },
  ],
];

const left = plainCrux("side", ["left", "right"]);
const hand = plainCrux("hand", ["left", "right", "both"]);
const underBoth = plainCrux("grip", ["near", "far"], { arisesWhen: [{ crux: "hand", readings: ["both"] }] });

/** Silence: the stage may go either way, and one way breaks a rule. */
const silent: Stage = { id: "silent", touches: [], run: () => [goes("a"), goes("b", bars("b is barred"))] };
const warned: Stage = { id: "warned", touches: [], run: (state) => [goes(state, warns("careful"))] };
const never: Stage = { id: "never", touches: [], run: (state) => [goes(state, bars("never"))] };

describe.each(counters)("counts worked by hand, %s", (_name, counter) => {
  const counts = (puzzle: Puzzle) => {
    const { holding, surelyHolding, all } = counter(puzzle);
    return [all, holding, surelyHolding];
  };

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
    expect(counter(puzzleOf([left], [silent, never])).broken).toEqual([
      { stage: "never", rule: "never", assignments: 2n },
    ]);
    expect(counter(puzzleOf([left], [silent])).broken).toEqual([]);
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
    const counted = counter(puzzle);
    expect(counted.shares.map((share) => [share.reading, share.holding, share.all, share.verdict])).toEqual([
      ["left", 3n, 4n, "forced"],
      ["right", 0n, 4n, "dead"],
      ["left", 1n, 4n, "possible"],
      ["right", 2n, 4n, "possible"],
      ["both", 0n, 0n, "ruled out"],
      ["here", 2n, 4n, "possible"],
      ["there", 1n, 4n, "possible"],
    ]);
    expect(counted.excludedPairs).toEqual([
      { first: { crux: "hand", reading: "left" }, second: { crux: "place", reading: "there" } },
    ]);
  });

  test("[N4] a witness is a completion that breaks nothing", () => {
    const [witness] = counter(puzzleOf([left], [silent, warned])).witnesses;
    expect([...(witness?.assignment ?? [])]).toEqual([["side", "left"]]);
    expect(witness?.steps.map(({ stage, state }) => [stage, state])).toEqual([
      ["silent", "a"],
      ["warned", "a"],
    ]);
  });
});

describe.each(counters)("puzzles from outside, %s", (_name, counter) => {
  // Numbers of ways to place n queens: OEIS A000170.
  test.each([
    [4, 2n],
    [5, 10n],
    [6, 4n],
  ])("%i queens by stages", (size, ways) => {
    expect(counter(queens(size)).holding).toBe(ways);
  });
  test.each([
    [3, 0n],
    [6, 4n],
    [8, 92n],
  ])("%i queens by ties between readings", (size, ways) => {
    expect(counter(queensByTies(size)).holding).toBe(ways);
  });

  // The map of seven regions in which three colours are to differ along each border, of S. Russell and P. Norvig, Artificial
  // Intelligence: A Modern Approach, chapter 6. Its exercise 6.1 asks for the number of solutions with three, four and two
  // colours; by hand: three for the region that borders on five others, two for the next, and the rest follows, times
  // three for the island.
  test.each([
    [3, 18n],
    [4, 768n],
    [2, 0n],
  ])("the textbook map in %i colours", (colours, ways) => {
    const [wa, nt, sa, q, nsw, v, island] = [0, 1, 2, 3, 4, 5, 6];
    const borders = [
      [wa, nt],
      [wa, sa],
      [nt, sa],
      [nt, q],
      [sa, q],
      [sa, nsw],
      [sa, v],
      [q, nsw],
      [nsw, v],
    ] as [number, number][];
    expect(counter(colouring(island + 1, borders, colours)).holding).toBe(ways);
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
    expect(counter(colouring(length, cycle(length), colours)).holding).toBe(expected);
  });

  // The complete graph of n vertices: k (k-1) ... (k-n+1), the same source.
  test("a complete graph of four in five colours: 5 · 4 · 3 · 2", () => {
    const edges = [0, 1, 2, 3].flatMap((from) =>
      [0, 1, 2, 3].filter((to) => to > from).map((to) => [from, to] as const),
    );
    expect(counter(colouring(4, edges, 5)).holding).toBe(120n);
    expect(counter(colouring(4, edges, 3)).holding).toBe(0n);
  });
});

/** Too many for one by one. */
describe("puzzles from outside that need blocks", () => {
  const holding = (puzzle: Puzzle): bigint => {
    const counted = count(puzzle);
    if (!counted.exact) throw new Error(counted.why);
    return counted.holding;
  };

  // The chromatic polynomial of the Petersen graph, t(t-1)(t-2)(t^7 - 12t^6 + 67t^5 - 230t^4 + 529t^3 - 814t^2 + 775t - 352):
  // N. Biggs, Algebraic Graph Theory (2nd edition 1993), also Wikipedia, “Petersen graph”. At 3 it is 120.
  test.each([
    [3, 120n],
    [4, 12960n],
  ])("the Petersen graph in %i colours", (colours, ways) => {
    const t = BigInt(colours);
    const seventh = [1n, -12n, 67n, -230n, 529n, -814n, 775n, -352n].reduce((sum, term) => sum * t + term, 0n);
    expect(t * (t - 1n) * (t - 2n) * seventh).toBe(ways);
    const five = [0, 1, 2, 3, 4];
    const edges = five.flatMap(
      (at) =>
        [
          [at, (at + 1) % 5],
          [at, at + 5],
          [at + 5, ((at + 2) % 5) + 5],
        ] as [number, number][],
    );
    expect(holding(colouring(10, edges, colours))).toBe(ways);
  });

  // OEIS A000170.
  test.each([
    [8, 92n],
    [9, 352n],
  ])("%i queens by ties between readings", (size, ways) => {
    expect(holding(queensByTies(size))).toBe(ways);
  });

  // A tree of n in k colours, k (k-1)^(n-1), and a cycle, (k-1)^n + (-1)^n (k-1): Read 1968, as above.
  test("a path of two hundred in three colours, past what a double holds", () => {
    const path = Array.from({ length: 199 }, (_, at) => [at, at + 1] as const);
    expect(holding(colouring(200, path, 3))).toBe(3n * 2n ** 199n);
  });
  test("a cycle of a hundred and twenty in five colours", () => {
    const cycle = Array.from({ length: 120 }, (_, at) => [at, (at + 1) % 120] as const);
    expect(holding(colouring(120, cycle, 5))).toBe(4n ** 120n + 4n);
  });
  test("[N8] a path by ties alone, without a stage: cruxes leave as soon as they can", () => {
    const colours = ["0", "1", "2"];
    const cruxes = Array.from({ length: 80 }, (_, at) => plainCrux(`v${at}`, colours));
    const excludes = cruxes
      .slice(1)
      .flatMap((_, at) =>
        colours.map((reading) => ({ crux: `v${at}`, reading, of: { crux: `v${at + 1}`, readings: [reading] } })),
      );
    const counted = count(puzzleOf(cruxes, [], { excludes }));
    expect(counted.holding).toBe(3n * 2n ** 79n);
    expect(counted.peaks.inPlay).toBe(2);
  });
  test("[N8] nothing but readings: three to the sixtieth", () => {
    const cruxes = Array.from({ length: 60 }, (_, at) => plainCrux(`k${at}`, ["a", "b", "c"]));
    const counted = count(puzzleOf(cruxes, []));
    expect(counted.holding).toBe(3n ** 60n);
    expect(counted.shares.every((share) => share.holding === 3n ** 59n)).toBe(true);
  });
});

describe.each(counters)("laws, %s", (_name, counter) => {
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
        const before = counter(puzzle);
        for (const changed of more) {
          const after = counter(changed);
          expect(after.holding <= before.holding).toBe(true);
          expect(after.surelyHolding <= before.surelyHolding).toBe(true);
        }
      }),
    );
  });

  test("independent parts multiply", () => {
    fc.assert(
      fc.property(anyPuzzle, anyPuzzle, (first, second) => {
        const [a, b] = [counter(first), counter(second)];
        const both = counter(sideBySide(first, second));
        expect(both.all).toBe(a.all * b.all);
        expect(both.holding).toBe(a.holding * b.holding);
        expect(both.surelyHolding).toBe(a.surelyHolding * b.surelyHolding);
      }),
      { numRuns: 60 },
    );
  });

  test("the order of cruxes, readings and ties does not matter", () => {
    fc.assert(
      fc.property(anyRichPuzzle({ cruxes: 5, stages: 4 }), (puzzle) => {
        const turned: Puzzle = {
          ...puzzle,
          cruxes: puzzle.cruxes.map((crux) => ({ ...crux, readings: crux.readings.toReversed() })).reverse(),
          excludes: puzzle.excludes.toReversed(),
          requires: puzzle.requires.toReversed(),
          start: puzzle.start.toReversed(),
          stages: puzzle.stages.map((stage) => ({ ...stage, touches: stage.touches.toReversed() })),
        };
        const [a, b] = [counter(puzzle), counter(turned)];
        expect([b.all, b.holding, b.surelyHolding]).toEqual([a.all, a.holding, a.surelyHolding]);
        const shares = (one: typeof a) => new Map(one.shares.map((share) => [`${share.crux} ${share.reading}`, share]));
        expect(shares(b)).toEqual(shares(a));
        expect(b.excludedPairs.length).toBe(a.excludedPairs.length);
      }),
    );
  });

  test("[N7] shares of a crux add up to what holds and arises; forced is all of it, dead none", () => {
    fc.assert(
      fc.property(anyRichPuzzle({ cruxes: 5, stages: 5 }), (puzzle) => {
        const { shares } = counter(puzzle);
        for (const { id, readings, ruledOut } of puzzle.cruxes) {
          const own = shares.filter(({ crux }) => crux === id);
          const open = readings.filter((reading) => !ruledOut.includes(reading));
          const arises = counter(
            narrowed(
              puzzle,
              open.map((reading) => ({ crux: id, reading })),
            ),
          );
          const lapsed = arises.holding - own.reduce((sum, { holding }) => sum + holding, 0n);
          const none = counter({
            ...puzzle,
            cruxes: puzzle.cruxes.map((crux) => (crux.id === id ? { ...crux, ruledOut: readings } : crux)),
          });
          expect(lapsed).toBe(none.holding);
          for (const { holding, verdict } of own) {
            if (verdict === "forced") expect(holding).toBe(arises.holding - lapsed);
            if (verdict === "dead" || verdict === "ruled out") expect(holding).toBe(0n);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test("shares of a crux that always arises add up to what holds", () => {
    fc.assert(
      fc.property(anyPuzzle, (puzzle) => {
        const counted = counter(puzzle);
        const sum = counted.shares
          .filter(({ crux }) => crux === "k0")
          .reduce((total, { holding }) => total + holding, 0n);
        expect(sum).toBe(counted.holding);
        expect(counted.surelyHolding <= counted.holding && counted.holding <= counted.all).toBe(true);
      }),
    );
  });
});

describe.each(counters)("a broken puzzle is the caller's mistake, %s", (_name, counter) => {
  test("cruxes that arise in a circle", () => {
    const circle = [
      plainCrux("a", ["x"], { arisesWhen: [{ crux: "b", readings: ["x"] }] }),
      plainCrux("b", ["x"], { arisesWhen: [{ crux: "a", readings: ["x"] }] }),
    ];
    expect(() => counter(puzzleOf(circle, []))).toThrow("Cruxes arise in a circle: a, b, a.");
  });
  test("a stage that looks at what it does not touch", () => {
    expect(() => counter(puzzleOf([left], [{ ...barringStage("peeks", [], (r) => r("side") === "left") }]))).toThrow(
      "The stage peeks asked for the crux side, which is not among those it touches.",
    );
  });
  test("a state without a way on", () => {
    expect(() => counter(puzzleOf([], [{ id: "end", touches: [], run: () => [] }]))).toThrow(
      "The stage end gives no way on from the state start.",
    );
  });
});
