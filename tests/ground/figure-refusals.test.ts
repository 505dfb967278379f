/** What figures refuse, with which words, and that no ask makes one throw. Rules G31-G36. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { domainOf } from "../../schema/values.ts";
import {
  type FigureAsk,
  type FigureCode,
  lengthOf,
  type Manege,
  type Pose,
  poseAt,
  rideFigure,
  schoolGround20x40,
  USUAL,
} from "../../shared/ground/index.ts";

const PI = Math.PI;
const school: Manege = { ground: schoolGround20x40(0), usual: USUAL };
const origin = poseAt(0, 0, 0);
/** Every figure a slot may hold: one without a door here would fall through and give no result. */
const FIGURES = domainOf("figure") as FigureAsk["figure"][];

describe("refusals", () => {
  const wall = poseAt(10, 0, 9_000);
  it.each([
    [
      "[G32] a circle of 0 m",
      wall,
      { figure: "circle", diameter: 0 },
      "not-a-size",
      "A size from 0.001 to 100000 m was expected for the diameter of the circle, but it is 0 m. Give it in metres, such as 10.",
    ],
    [
      "[G32] NaN",
      wall,
      { figure: "volte", diameter: Number.NaN },
      "not-a-size",
      "for the diameter of the volte, but it is not a number (NaN). Give it in metres",
    ],
    ["[G32] a negative length", wall, { figure: "rein back", length: -2 }, "not-a-size", "but it is -2 m."],
    ["[G32] endless", wall, { figure: "straight", length: Number.POSITIVE_INFINITY }, "not-a-size", "Infinity m"],
    [
      "[G33] negative laps",
      wall,
      { figure: "circle", laps: -1 },
      "not-a-count",
      "A number from 0.001 to 10000 was expected for the laps of the circle, but it is -1. Say how often, or leave it out.",
    ],
    [
      "[G33] half a figure of eight",
      wall,
      { figure: "figure of eight", laps: 0.5 },
      "not-a-count",
      "A whole number from 1 to 10000 was expected for the laps of the figure of eight, but it is 0.5.",
    ],
    ["[G33] no loops", wall, { figure: "serpentine", loops: 0 }, "not-a-count", "the loops of the serpentine"],
    ["[G33] a halt of NaN", wall, { figure: "halt", seconds: Number.NaN }, "not-a-count", "not a number (NaN)"],
    [
      "[G34] a station that is not there",
      wall,
      { figure: "straight", toward: "Q" },
      "unknown-station",
      "it has none called “Q”: it has A, K, E, H, C, M, B, F, D, X, G. Name one of these, or put “Q” on the ground.",
    ],
    [
      "[G36] a circle that does not fit",
      wall,
      { figure: "circle", diameter: 22, side: "left" },
      "does-not-fit",
      "It does not fit: the circle of 22 m to the left goes 2 m past the wall at x -12, y 0; the ground is 20 m by 40 m. Make it smaller, or begin it elsewhere.",
    ],
    [
      "[G31] begun outside",
      poseAt(12, 0, 0),
      { figure: "volte" },
      "outside",
      "x 12, y 0 is 2 m past the wall. Begin inside, or make the ground larger.",
    ],
    [
      "[G31] begun nowhere",
      { x: Number.NaN, y: 0, heading: 0 },
      { figure: "volte" },
      "not-a-pose",
      "but they are NaN, 0 and 0. Say where the figure begins.",
    ],
    [
      "[G35] a station, and a heading that does not go there",
      wall,
      { figure: "straight", toward: "M", heading: 0 },
      "contradiction",
      "to go to M and to head 0 degrees, but the way to M heads 90 degrees. Keep one of the two.",
    ],
    [
      "[G35] farther than the station",
      wall,
      { figure: "straight", toward: "M", length: 20 },
      "contradiction",
      "was to be 20 m long and to go to M, but M is only 14 m away. Keep one of the two.",
    ],
    [
      "[G35] laps and an amount",
      wall,
      { figure: "circle", laps: 2, amount: "half" },
      "contradiction",
      "both 2 laps and “half” are given. Keep one of the two.",
    ],
    [
      "[G35] a length and a station along the wall",
      wall,
      { figure: "along the wall", length: 10, toward: "H" },
      "contradiction",
      "Either 10 m along the wall or to H was expected, but both are given.",
    ],
    [
      "[G35] along the wall to the middle",
      wall,
      { figure: "along the wall", toward: "X" },
      "contradiction",
      "A station at the wall was expected, but X (x 0, y 0) is 10 m from the track.",
    ],
    [
      "[G35] a spiral inside out",
      wall,
      { figure: "spiral in", outer: 8, inner: 12 },
      "contradiction",
      "but it is 12 m and the outside 8 m. Exchange the two, or ride a circle.",
    ],
    [
      "[G35] a serpentine narrower than its loops",
      wall,
      { figure: "serpentine", diameter: 8, width: 5, loops: 2 },
      "contradiction",
      "it is 5 m wide and they are 8 m. Ride more loops, or make it wider.",
    ],
    [
      "[G35] a size for a turn on the spot",
      wall,
      { figure: "turn", manner: "on the forehand", diameter: 3 },
      "contradiction",
      "A turn on the forehand stays on the spot and has no size, but 3 m are given.",
    ],
    [
      "[G35] no room for the oblique line",
      wall,
      { figure: "half volte", diameter: 10, back: 4, side: "left" },
      "contradiction",
      "with 10 m across and 4 m along the wall its oblique line has no room.",
    ],
    [
      "[G35] straight to where one is",
      wall,
      { figure: "straight", toward: "B" },
      "nothing-to-ride",
      "the horse already stands there. Leave the step out, or say where to.",
    ],
    [
      "[G35] straight on into the wall",
      poseAt(10, 0, 0),
      { figure: "charge" },
      "nothing-to-ride",
      "already stands at the track and heads for the wall.",
    ],
  ] as [string, Pose, FigureAsk, FigureCode, string][])("%s", (_, start, ask, code, words) => {
    expect(rideFigure(school, start, ask)).toMatchObject({ ok: false, code, sentence: expect.stringContaining(words) });
  });

  test("[G36] what does not fit is still drawn; what keeps the margin fits", () => {
    const result = rideFigure(school, wall, { figure: "circle", diameter: 22, side: "left" });
    expect(result.ok === false && result.path !== null && lengthOf(result.path)).toBeCloseTo(22 * PI, 6);
    const roomy: Manege = { ...school, usual: { ...USUAL, margin: 1 } };
    const circle = (diameter: number): FigureAsk => ({ figure: "circle", diameter, side: "left" });
    expect(rideFigure(roomy, poseAt(9, 0, 9_000), circle(18)).ok).toBe(true);
    expect(rideFigure(roomy, poseAt(9, 0, 9_000), circle(18.01))).toMatchObject({
      code: "does-not-fit",
      sentence: expect.stringContaining(
        "comes within 0.99 m of the wall at x -9.01, y 0; the ground is 20 m by 40 m and 1 m are to stay free.",
      ),
    });
  });

  test("[G31] no ask makes a figure throw", () => {
    const number = fc.oneof(
      fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-300, 1e300, 0.0001, 1, 5, 90_000),
      fc.double(),
    );
    const maybe = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(of, { nil: null });
    const ask = fc.record({
      figure: fc.constantFrom(...FIGURES),
      side: maybe(fc.constantFrom("left", "right")),
      toward: maybe(fc.constantFrom("A", "X", "M", "nowhere")),
      from: maybe(fc.constantFrom("K", "X", "nowhere")),
      about: maybe(fc.constantFrom("X", "M", "nowhere")),
      amount: maybe(fc.constantFrom("quarter", "half", "three quarters", "full")),
      manner: maybe(fc.constantFrom("on the haunches", "half pirouette", "halt and turn", "small half circle")),
      heading: maybe(number),
      length: maybe(number),
      diameter: maybe(number),
      straight: maybe(number),
      back: maybe(number),
      outer: maybe(number),
      inner: maybe(number),
      width: maybe(number),
      seconds: maybe(number),
      laps: maybe(fc.constantFrom(0, -2, 0.5, 1, 3, Number.NaN)),
      loops: maybe(fc.constantFrom(0, 1, 4, 2.5, Number.NaN)),
    });
    const start = fc.constantFrom(origin, wall, poseAt(-10, -20, 0), poseAt(3, -4, 12_345), poseAt(10, 20, 4_500));
    fc.assert(
      fc.property(ask, start, (asked, from) => {
        const result = rideFigure(school, from, asked as FigureAsk);
        if (result.ok) expect(Number.isFinite(lengthOf(result.path))).toBe(true);
        else expect(result.sentence).toMatch(/\. [A-Z][^.]*.*\.$|: .*\.$/);
      }),
      { numRuns: 1_500 },
    );
  });
});
