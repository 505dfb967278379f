/** Every figure: its exact length and end, and what it supplies. Rules G30, G37-G51. */
import { describe, expect, it, test } from "vitest";
import {
  type FigureAsk,
  lengthOf,
  type Manege,
  type Path,
  type Pose,
  poseAt,
  rideFigure,
  schoolGround20x40,
  schoolGround20x60,
  settled,
  USUAL,
} from "../../shared/ground/index.ts";
import { openField, station } from "./any-ground.ts";

const PI = Math.PI;
const school: Manege = { ground: schoolGround20x40(0), usual: USUAL };
const large: Manege = { ground: schoolGround20x60(0), usual: USUAL };
const field: Manege = { ground: openField([station("oak", 30, 40), station("well", -6, 0)]), usual: USUAL };
const origin = poseAt(0, 0, 0);

function ridden(manege: Manege, start: Pose, ask: FigureAsk): Path {
  const result = rideFigure(manege, start, ask);
  if (!result.ok) throw new Error(result.sentence);
  return result.path;
}
/** About which parameters something was supplied or remarked. */
function noted(manege: Manege, start: Pose, ask: FigureAsk): string[] {
  const result = rideFigure(manege, start, ask);
  if (!result.ok) throw new Error(result.sentence);
  return result.notes.map((note) => note.about);
}

type Case = [rule: string, manege: Manege, start: Pose, ask: FigureAsk, metres: number, end: Pose];
const cases: Case[] = [
  ["[G37] straight 12 m", field, origin, { figure: "straight", length: 12 }, 12, poseAt(12, 0, 0)],
  [
    "[G37] straight to a station ahead",
    school,
    poseAt(0, -20, 9_000),
    { figure: "straight", toward: "X" },
    20,
    poseAt(0, 0, 9_000),
  ],
  [
    "[G37] 5 m toward a station",
    school,
    poseAt(0, -20, 9_000),
    { figure: "straight", toward: "X", length: 5 },
    5,
    poseAt(0, -15, 9_000),
  ],
  [
    "[G37] K to M through X, 20x60",
    large,
    poseAt(-10, -24, 6_738),
    { figure: "straight", toward: "M" },
    52,
    poseAt(10, 24, 6_738),
  ],
  ["[G37] straight on, to the track", school, poseAt(0, -20, 9_000), { figure: "straight" }, 40, poseAt(0, 20, 9_000)],
  [
    "[G37] onto another heading by a bend of 3 m radius",
    field,
    origin,
    { figure: "straight", heading: 9_000, length: 10 },
    1.5 * PI + 10,
    poseAt(3, 13, 9_000),
  ],
  [
    "[G38] charge to a station",
    field,
    poseAt(0, 0, 5_313),
    { figure: "charge", toward: "oak" },
    50,
    poseAt(30, 40, 5_313),
  ],
  [
    "[G39] along the wall, a length round a corner",
    school,
    poseAt(10, 10, 9_000),
    { figure: "along the wall", side: "left", length: 7 + 1.5 * PI + 2 },
    7 + 1.5 * PI + 2,
    poseAt(5, 20, 18_000),
  ],
  [
    "[G39] along the wall to a station",
    school,
    poseAt(10, -10, 9_000),
    { figure: "along the wall", side: "left", toward: "B" },
    10,
    poseAt(10, 0, 9_000),
  ],
  [
    "[G39] two laps, and on to a station",
    school,
    poseAt(10, -10, 9_000),
    { figure: "along the wall", side: "left", laps: 2, toward: "B" },
    2 * (96 + 6 * PI) + 10,
    poseAt(10, 0, 9_000),
  ],
  [
    "[G39] once round to where one stands",
    school,
    poseAt(10, 0, 9_000),
    { figure: "along the wall", side: "left", toward: "B" },
    96 + 6 * PI,
    poseAt(10, 0, 9_000),
  ],
  ["[G42] circle", field, origin, { figure: "circle", diameter: 20, side: "left" }, 20 * PI, origin],
  [
    "[G42] two circles and a half",
    field,
    origin,
    { figure: "circle", diameter: 10, side: "right", laps: 2.5 },
    25 * PI,
    poseAt(0, -10, 18_000),
  ],
  [
    "[G42] three quarters",
    field,
    origin,
    { figure: "part circle", diameter: 8, side: "left", amount: "three quarters" },
    6 * PI,
    poseAt(-4, 4, 27_000),
  ],
  ["[G42] volte", field, origin, { figure: "volte", diameter: 6, side: "right" }, 6 * PI, origin],
  [
    "[G43] about a station one is beside",
    field,
    poseAt(-6, -5, 0),
    { figure: "circle", about: "well", side: "left" },
    10 * PI,
    poseAt(-6, -5, 0),
  ],
  ["[G45] figure of eight", field, origin, { figure: "figure of eight", diameter: 10, side: "left" }, 20 * PI, origin],
  [
    "[G45] figure of eight, 2 m straight at each change",
    field,
    origin,
    { figure: "figure of eight", diameter: 10, side: "left", straight: 2, laps: 2 },
    40 * PI + 8,
    poseAt(8, 0, 0),
  ],
  [
    "[G46] oblong",
    field,
    origin,
    { figure: "oblong", diameter: 10, straight: 30, side: "right", laps: 3 },
    3 * (60 + 10 * PI),
    origin,
  ],
  [
    "[G47] serpentine of three loops fills 20x60",
    large,
    poseAt(0, -30, 0),
    { figure: "serpentine", loops: 3, side: "left" },
    30 * PI,
    poseAt(0, 30, 18_000),
  ],
  [
    "[G47] serpentine of four loops: half circles of 15 m, lines of 5 m",
    large,
    poseAt(0, -30, 0),
    { figure: "serpentine", loops: 4, side: "left" },
    30 * PI + 20,
    poseAt(0, 30, 0),
  ],
  [
    "[G48] spiral in by half circles of 20, 18 ... 10 m",
    field,
    origin,
    { figure: "spiral in", outer: 20, inner: 10, side: "left", laps: 3 },
    (PI / 2) * (20 + 18 + 16 + 14 + 12 + 10),
    poseAt(0, 6, 0),
  ],
  [
    "[G49] half a turn on the haunches stays there",
    field,
    origin,
    { figure: "turn", amount: "half", manner: "on the haunches", side: "left" },
    0,
    poseAt(0, 0, 18_000),
  ],
  [
    "[G49] a quarter on the forehand to the right",
    field,
    origin,
    { figure: "turn", amount: "quarter", manner: "on the forehand", side: "right" },
    0,
    poseAt(0, 0, 27_000),
  ],
  [
    "[G49] a full turn",
    field,
    origin,
    { figure: "turn", amount: "full", manner: "roll back over the hocks", side: "right" },
    0,
    origin,
  ],
  [
    "[G49] halt and turn",
    field,
    origin,
    { figure: "turn", amount: "half", manner: "halt and turn", side: "left" },
    0,
    poseAt(0, 0, 18_000),
  ],
  [
    "[G49] a small half circle of 4 m",
    field,
    origin,
    { figure: "turn", manner: "small half circle", diameter: 4, side: "left" },
    2 * PI,
    poseAt(0, 4, 18_000),
  ],
  ["[G51] rein back 4 m", field, origin, { figure: "rein back", length: 4 }, 4, poseAt(-4, 0, 0)],
  ["[G51] halt", field, origin, { figure: "halt", seconds: 5 }, 0, origin],
];

describe("figures", () => {
  it.each(cases)("%s", (_, manege, start, ask, metres, end) => {
    const path = ridden(manege, start, ask);
    expect(lengthOf(path)).toBeCloseTo(metres, 3);
    expect(settled(path.end)).toEqual(end);
  });

  test("[G44] half volte of 6 m: half circle, then obliquely back to the wall, on the other rein", () => {
    const path = ridden(school, poseAt(10, 10, 9_000), { figure: "half volte", diameter: 6, side: "left", back: 12 });
    expect(settled(path.end)).toEqual(poseAt(10, -2, 27_000));
    expect(path.pieces.map((piece) => piece.is)).toEqual(["arc", "arc", "straight", "arc"]);
    expect(path.pieces[0]).toMatchObject({ sweep: 18_000, radius: 3 });
  });

  test("[G44] reversed: the same path the other way, equally long, with its half circle last", () => {
    const half = ridden(school, poseAt(10, 10, 9_000), { figure: "half volte", diameter: 6, side: "left", back: 12 });
    const reversed = ridden(school, poseAt(10, -10, 9_000), {
      figure: "half volte reversed",
      diameter: 6,
      side: "left",
      back: 12,
    });
    expect(lengthOf(reversed)).toBeCloseTo(lengthOf(half), 9);
    expect(settled(reversed.end)).toEqual(poseAt(10, 2, 27_000));
    expect(reversed.pieces.at(-1)).toMatchObject({ sweep: -18_000, radius: 3 });
  });

  test("[G41] change across from K to M on 20x60: through the middle, onto the other rein, little longer than straight", () => {
    const path = ridden(large, poseAt(-10, -24, 9_000), { figure: "change across", from: "K", toward: "M" });
    expect(settled(path.end)).toEqual(poseAt(10, 24, 9_000));
    expect(lengthOf(path)).toBeGreaterThan(52);
    expect(lengthOf(path)).toBeLessThan(52.1);
    expect(noted(large, poseAt(-10, -24, 9_000), { figure: "change across", from: "K", toward: "M" })).toEqual([]);
  });

  test("[G41] without an end it goes to the place opposite; from elsewhere a line to its start is supplied", () => {
    expect(noted(large, poseAt(-10, -24, 9_000), { figure: "change across" })).toEqual(["toward"]);
    expect(noted(large, poseAt(0, -30, 18_000), { figure: "change across", from: "K", toward: "M" })).toEqual(["join"]);
  });

  test("[G39] off the track a line onto it is supplied and counted", () => {
    const start = poseAt(0, -10, 9_000);
    const result = rideFigure(school, start, { figure: "along the wall", side: "right", toward: "B" });
    expect(result).toMatchObject({ ok: true, notes: [{ is: "supplied line", from: 0, about: "join" }] });
  });

  test("[G40] corners are quarters of a volte of the diameter that is set", () => {
    const wide: Manege = { ...school, usual: { ...USUAL, cornerDiameter: 10 } };
    const ask: FigureAsk = { figure: "along the wall", side: "left", laps: 1 };
    expect(lengthOf(ridden(wide, poseAt(10, 0, 9_000), ask))).toBeCloseTo(120 - 40 + 10 * PI, 9);
  });
});

describe("what is not said is supplied, and said to be", () => {
  it.each([
    ["[G30] circle", { figure: "circle" }, ["side", "diameter"]],
    ["[G30] volte", { figure: "volte", side: "left" }, ["diameter"]],
    ["[G30] part circle", { figure: "part circle", side: "left", diameter: 6 }, ["amount"]],
    ["[G50] turn", { figure: "turn" }, ["manner", "amount", "side"]],
    ["[G50] half pirouette says how much itself", { figure: "turn", manner: "half pirouette", side: "left" }, []],
    ["[G50] halt and turn", { figure: "turn", manner: "halt and turn", side: "left", amount: "half" }, ["seconds"]],
    ["[G30] rein back", { figure: "rein back" }, ["length"]],
    ["[G30] halt", { figure: "halt" }, ["seconds"]],
    ["[G30] spiral", { figure: "spiral in", side: "left" }, ["outer", "inner", "laps"]],
    ["[G30] oblong", { figure: "oblong", side: "left" }, ["diameter", "straight"]],
    ["[G30] along the wall", { figure: "along the wall" }, ["side", "laps"]],
    ["[G42] a large volte is remarked on", { figure: "volte", side: "left", diameter: 12 }, ["diameter"]],
    ["[G42] voltes of 6, 8 and 10 m are not", { figure: "volte", side: "left", diameter: 10 }, []],
  ] as [string, FigureAsk, string[]][])("%s", (_, ask, about) => {
    expect(noted(school, poseAt(10, 0, 9_000), ask)).toEqual(about);
  });

  test("[G50] the words for an unknown manner", () => {
    const result = rideFigure(field, origin, { figure: "turn", amount: "half", side: "left" });
    expect(result).toMatchObject({
      notes: [
        {
          is: "supplied",
          sentence: "The text does not say in what manner the horse turns; a turn on the haunches is shown.",
        },
      ],
    });
  });
});
