/** Grounds, walls, stations and the track. Rules G16-G26. The letters: FEI Dressage Rules Art. 429, the distances as
 *  several riding guides repeat them. */
import { Arc as FlatArc, Point as FlatPoint, Polygon as FlatPolygon, Segment as FlatSegment } from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  beside,
  clearanceOf,
  distance,
  distanceToWall,
  findStation,
  footOn,
  type GroundResult,
  type GroundStation,
  isAtStation,
  isInside,
  lengthOf,
  mirrorGround,
  mirrorPath,
  mirrorPoint,
  outlineFromMillimetres,
  type Point,
  pathOf,
  placeOfStation,
  poseAt,
  poseOn,
  poseRound,
  type RidingGround,
  reachToWall,
  rectangularGround,
  roundEndedGround,
  roundFrom,
  roundGround,
  schoolGround20x40,
  schoolGround20x60,
  TOLERANCE,
  trackOf,
} from "../../shared/ground/index.ts";
import { anyMovingPath, station } from "./any-ground.ts";

function ground(made: GroundResult): RidingGround {
  if (!made.ok) throw new Error(made.sentence);
  return made.ground;
}
const letter = (on: RidingGround, name: string): Point => placeOfStation(findStation(on, name)!, { x: 0, y: 0 });
const walk = (on: RidingGround, ...names: string[]): number =>
  names.slice(1).reduce((sum, name, index) => sum + distance(letter(on, names[index]!), letter(on, name)), 0);

const anyGround: fc.Arbitrary<RidingGround> = fc
  .record({
    shape: fc.constantFrom("rectangular", "round-ended", "round"),
    width: fc.integer({ min: 10, max: 60 }),
    more: fc.integer({ min: 0, max: 40 }),
    trackOffset: fc.integer({ min: 0, max: 30 }).map((tenths) => tenths / 10),
  })
  .map(({ shape, width, more, trackOffset }) => {
    if (shape === "rectangular") return ground(rectangularGround({ width, length: width + more, trackOffset }));
    if (shape === "round-ended") return ground(roundEndedGround({ width, length: width + more, trackOffset }));
    return ground(roundGround({ diameter: width, trackOffset }));
  });
const anyPlace = fc
  .tuple(fc.integer({ min: -40_000, max: 40_000 }), fc.integer({ min: -40_000, max: 40_000 }))
  .map(([x, y]) => ({ x: x / 1_000, y: y / 1_000 }));

/** The wall as an independent library draws it. */
function flatWall(on: RidingGround): FlatPolygon {
  const a = on.width / 2;
  const b = on.length / 2;
  const point = (x: number, y: number): FlatPoint => new FlatPoint(x, y);
  if (on.shape === "rectangular") return new FlatPolygon([point(a, -b), point(a, b), point(-a, b), point(-a, -b)]);
  const end = b - a;
  const side = (x: number, from: number, to: number): FlatSegment[] =>
    end > 0 ? [new FlatSegment(point(x, from), point(x, to))] : [];
  return new FlatPolygon([
    ...side(a, -end, end),
    new FlatArc(point(0, end), a, 0, Math.PI, true),
    ...side(-a, end, -end),
    new FlatArc(point(0, -end), a, Math.PI, 2 * Math.PI, true),
  ]);
}

describe("the ready-made grounds", () => {
  // From the corner between A and K: metres from the left long side, metres from the foot.
  const published = [
    ["20x40", schoolGround20x40(0), 40, { A: [10, 0], K: [0, 6], E: [0, 20], H: [0, 34], C: [10, 40], M: [20, 34] }],
    ["20x40", schoolGround20x40(0), 40, { B: [20, 20], F: [20, 6], D: [10, 6], X: [10, 20], G: [10, 34] }],
    ["20x60", schoolGround20x60(0), 60, { A: [10, 0], K: [0, 6], V: [0, 18], E: [0, 30], S: [0, 42], H: [0, 54] }],
    [
      "20x60",
      schoolGround20x60(0),
      60,
      { C: [10, 60], M: [20, 54], R: [20, 42], B: [20, 30], P: [20, 18], F: [20, 6] },
    ],
    ["20x60", schoolGround20x60(0), 60, { D: [10, 6], L: [10, 18], X: [10, 30], I: [10, 42], G: [10, 54] }],
  ] as const;
  it.each(published)("[G18] %s: letters as published", (_, on, length, letters) => {
    for (const [name, [x, y]] of Object.entries(letters))
      expect(letter(on, name), name).toEqual({ x: x - 10, y: y - length / 2 });
  });

  it.each([
    ["K-X-M on 20x60, a 20-48-52 triangle", schoolGround20x60(0), ["K", "X", "M"], 52],
    ["K-X-M on 20x40", schoolGround20x40(0), ["K", "X", "M"], 34.41],
    ["A to C on 20x60", schoolGround20x60(0), ["A", "C"], 60],
    ["letters of the long side, 12 m apart on 20x60", schoolGround20x60(0), ["K", "V", "E", "S", "H"], 48],
    ["letters of the long side, 14 m apart on 20x40", schoolGround20x40(0), ["K", "E", "H"], 28],
  ] as const)("[G18] %s", (_, on, names, metres) => {
    expect(walk(on, ...names)).toBeCloseTo(metres, 2);
  });

  test("[G18] diagonals from corner to corner: 63.25 and 44.72 m", () => {
    const across = (on: RidingGround): number => Math.hypot(on.width, on.length);
    expect(across(schoolGround20x60(0))).toBeCloseTo(63.25, 2);
    expect(across(schoolGround20x40(0))).toBeCloseTo(44.72, 2);
  });

  test("[G22] partners are where the mirror puts them", () => {
    for (const on of [schoolGround20x40(0), schoolGround20x60(0)])
      for (const { name, partner } of on.stations)
        expect(letter(on, partner!), name).toEqual(mirrorPoint(letter(on, name)));
  });

  test("[G17] the offset of the track has to make sense", () => {
    expect(() => schoolGround20x40(10)).toThrow(
      "The track lies from 0 to less than 10 m inside the wall of this ground, not 10.",
    );
    expect(() => schoolGround20x60(Number.NaN)).toThrow("not NaN. Give the offset in metres, such as 1.8.");
  });
});

describe("sizes that are none", () => {
  it.each([
    ["a width of 0", rectangularGround({ width: 0, length: 40, trackOffset: 0 }), "The width of a ground is from 1 to"],
    ["NaN", rectangularGround({ width: 20, length: Number.NaN, trackOffset: 0 }), "not NaN. Give its size in metres"],
    ["a negative circle", roundGround({ diameter: -4, trackOffset: 0 }), "not -4."],
    [
      "round ends on the long side",
      roundEndedGround({ width: 30, length: 20, trackOffset: 0 }),
      "this one is 20 m long and 30 m wide. Exchange the two, or make it rectangular.",
    ],
    ["a track outside", roundGround({ diameter: 20, trackOffset: -1 }), "not -1."],
  ])("[G17] %s is refused with the value", (_, made, words) => {
    expect(made).toMatchObject({ ok: false, code: "not-a-ground", sentence: expect.stringContaining(words) });
  });
});

describe("the wall", () => {
  it.each([
    ["middle of a school", schoolGround20x40(0), { x: 0, y: 0 }, 10],
    ["on the wall", schoolGround20x40(0), { x: 10, y: 3 }, 0],
    ["outside a corner", schoolGround20x40(0), { x: 13, y: 24 }, -5],
    ["in a round end", ground(roundEndedGround({ width: 20, length: 60, trackOffset: 0 })), { x: 3, y: 24 }, 5],
    ["between round ends", ground(roundEndedGround({ width: 20, length: 60, trackOffset: 0 })), { x: -7, y: 10 }, 3],
    ["round", ground(roundGround({ diameter: 30, trackOffset: 0 })), { x: 9, y: 12 }, 0],
  ])("[G19] %s", (_, on, place, metres) => {
    expect(distanceToWall(on, place)).toBeCloseTo(metres, 12);
    expect(isInside(on, place)).toBe(metres >= 0);
    expect(isInside(on, place, 5.1)).toBe(metres >= 5.1);
  });

  test("[G19] distance and inside agree with an independent library's", () => {
    fc.assert(
      fc.property(anyGround, anyPlace, (on, place) => {
        const wall = flatWall(on);
        const point = new FlatPoint(place.x, place.y);
        const metres = distanceToWall(on, place);
        // The library itself takes a millionth of a metre for nothing.
        expect(Math.abs(metres)).toBeCloseTo(point.distanceTo(wall)[0], 5);
        if (Math.abs(metres) > 1e-3) expect(wall.contains(point)).toBe(metres > 0);
      }),
      { numRuns: 150 },
    );
  });

  test("[G20] the nearest a path comes to the wall: no sample is nearer, and one is as near", () => {
    fc.assert(
      fc.property(anyGround, anyMovingPath, (on, path) => {
        const found = clearanceOf(on, path);
        expect(found.metres).toBe(distanceToWall(on, found.at));
        let least = Number.POSITIVE_INFINITY;
        for (const piece of path.pieces)
          for (let part = 0; part <= 1_000; part += 1)
            least = Math.min(least, distanceToWall(on, poseOn(piece, part / 1_000)));
        expect(found.metres).toBeLessThanOrEqual(least + 1e-9);
        // 1,000 samples of at most 380 m lie at most 0.19 m from any place; curved, they miss far less.
        expect(least - found.metres).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });

  test("[G19] straight on to the wall ends at the wall and no sooner", () => {
    fc.assert(
      fc.property(anyGround, anyPlace, fc.integer({ min: 0, max: 35_999 }), (on, place, heading) => {
        const inset = on.trackOffset;
        fc.pre(isInside(on, place, inset));
        const metres = reachToWall(on, place, heading, inset);
        const pose = { ...place, heading };
        expect(distanceToWall(on, beside(pose, metres))).toBeCloseTo(inset, 6);
        expect(distanceToWall(on, beside(pose, metres / 2))).toBeGreaterThan(inset - 1e-9);
        expect(distanceToWall(on, beside(pose, metres + 0.01))).toBeLessThan(inset);
      }),
    );
  });

  test("[G5] the mirrored ground has the mirrored walls and stations", () => {
    const on = { ...schoolGround20x40(1), stations: [station("gate", 4, 5), station("block", -3, -6)] };
    const mirrored = mirrorGround(on);
    expect(mirrored.stations.map((one) => placeOfStation(one, { x: 0, y: 0 }))).toEqual([
      { x: -4, y: 5 },
      { x: 3, y: -6 },
    ]);
    expect(mirrorGround(mirrored)).toEqual(on);
  });
});

describe("stations", () => {
  const line: GroundStation = {
    id: "l",
    name: "the ditch",
    outline: { is: "line", from: { x: 0, y: 0 }, to: { x: 4, y: 0 } },
    partner: null,
  };
  const area: GroundStation = {
    id: "a",
    name: "the platform",
    outline: outlineFromMillimetres({
      is: "area",
      corners: [
        { x: 0, y: 0 },
        { x: 6_000, y: 0 },
        { x: 6_000, y: 3_000 },
        { x: 0, y: 3_000 },
      ],
    }),
    partner: null,
  };

  test("[G21] one rides to the nearest place of a line, and to the middle of an area", () => {
    expect(placeOfStation(line, { x: 1, y: 5 })).toEqual({ x: 1, y: 0 });
    expect(placeOfStation(line, { x: 9, y: 5 })).toEqual({ x: 4, y: 0 });
    expect(placeOfStation(area, { x: 9, y: 9 })).toEqual({ x: 3, y: 1.5 });
  });

  test("[G21] an area without a surface still has a middle", () => {
    const flat = {
      is: "area" as const,
      corners: [
        { x: 0, y: 0 },
        { x: 3, y: 0 },
        { x: 6, y: 0 },
      ],
    };
    expect(placeOfStation({ ...area, outline: flat }, { x: 0, y: 0 })).toEqual({ x: 3, y: 0 });
  });

  it.each([
    ["near the line", line, { x: 2, y: 0.4 }, true],
    ["past the line", line, { x: 5, y: 0 }, false],
    ["inside the area", area, { x: 5, y: 1 }, true],
    ["just beside the area", area, { x: 6.4, y: 1 }, true],
    ["beside the area", area, { x: 7, y: 1 }, false],
    ["at a point", station("p", 1, 1), { x: 1.3, y: 1.4 }, true],
  ])("[G23] %s", (_, at, place, expected) => {
    expect(isAtStation(at, place, 0.5)).toBe(expected);
  });

  test("[G23] found by id before name", () => {
    const on = { ...schoolGround20x40(0), stations: [station("one", 1, 1), { ...station("two", 2, 2), name: "one" }] };
    expect(findStation(on, "one")?.id).toBe("one");
    expect(findStation(on, "three")).toBeNull();
  });
});

describe("the track", () => {
  test("[G24] a 20x40 ground, corners of 6 m, on the wall itself: two sides less the corners, and a circle", () => {
    const track = trackOf(schoolGround20x40(0), "left", 6, TOLERANCE);
    expect(lengthOf(track)).toBeCloseTo(2 * (14 + 34) + 6 * Math.PI, 9);
    expect(track.start).toEqual(poseAt(0, -20, 0));
    expect(distance(track.end, track.start)).toBeLessThan(1e-9);
  });

  test("[G24] on any ground it stays its offset from the wall, closes, and turns once round", () => {
    fc.assert(
      fc.property(anyGround, (on) => {
        const track = trackOf(on, "left", 6, TOLERANCE);
        expect(clearanceOf(on, track).metres).toBeCloseTo(on.trackOffset, 9);
        expect(distance(track.start, track.end)).toBeLessThan(1e-9);
        const sweep = track.pieces.reduce((sum, piece) => sum + (piece.is === "arc" ? piece.sweep : 0), 0);
        expect(sweep).toBe(36_000);
        expect(trackOf(on, "right", 6, TOLERANCE)).toEqual(mirrorPath(track));
      }),
    );
  });

  test("[G25] the foot of a place is the nearest of the track", () => {
    fc.assert(
      fc.property(anyGround, anyPlace, (on, place) => {
        const track = trackOf(on, "left", 6, TOLERANCE);
        const foot = footOn(track, place);
        expect(distance(poseRound(track, foot.along), foot.pose)).toBeLessThan(1e-5);
        for (let part = 0; part < 400; part += 1)
          expect(distance(poseRound(track, (lengthOf(track) * part) / 400), place)).toBeGreaterThan(foot.off - 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test("[G26] any way round has its length, and begins and ends where it should", () => {
    fc.assert(
      fc.property(anyGround, fc.nat(200_000), fc.integer({ min: 1, max: 500_000 }), (on, from, millimetres) => {
        const track = trackOf(on, "right", 6, TOLERANCE);
        const pieces = pathOf(roundFrom(track, from / 1_000, millimetres / 1_000), TOLERANCE);
        expect(lengthOf(pieces)).toBeCloseTo(millimetres / 1_000, 6);
        expect(distance(pieces.start, poseRound(track, from / 1_000))).toBeLessThan(1e-6);
        expect(distance(pieces.end, poseRound(track, (from + millimetres) / 1_000))).toBeLessThan(1e-6);
      }),
    );
  });
});
