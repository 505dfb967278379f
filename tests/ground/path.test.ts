/** Pieces and paths, with two independent libraries as oracles. Rules G6-G15. */
import { Arc as FlatArc, Point as FlatPoint, Segment as FlatSegment } from "@flatten-js/core";
import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import {
  arcAbout,
  arcFrom,
  beside,
  boxOf,
  cutPath,
  cutPiece,
  distance,
  halt,
  joinPaths,
  lengthOf,
  mirrorPath,
  mirrorPose,
  motionBetween,
  movePath,
  type Path,
  type Piece,
  type Pose,
  pathData,
  pathOf,
  pieceData,
  poseAt,
  poseAtFraction,
  poseAtLength,
  poseOn,
  reversePath,
  rideTheOtherWay,
  samePose,
  settled,
  straight,
  TOLERANCE,
  turnBetween,
  turnOnSpot,
} from "../../shared/ground/index.ts";
import { anyMovingPath, anyPath, anyPose, anySize } from "./any-ground.ts";

const origin = poseAt(0, 0, 0);
const near = (a: Pose, b: Pose): void => {
  expect(distance(a, b)).toBeLessThan(1e-6);
  expect(Math.abs(turnBetween(a.heading, b.heading))).toBeLessThan(1e-3);
};
const unbroken = (path: Path): void => {
  for (let index = 1; index < path.pieces.length; index += 1)
    near(poseOn(path.pieces[index - 1]!, 1), poseOn(path.pieces[index]!, 0));
};
/** A straight of 4 m, a quarter left on 2 m, a halt of 3 s, half a turn right on the spot. */
const little = (): Path => {
  const line = straight(origin, beside(origin, 4));
  const bend = arcFrom(poseOn(line, 1), 2, 9_000);
  const stand = halt(poseOn(bend, 1), 3);
  return pathOf([line, bend, stand, turnOnSpot(poseOn(bend, 1), -18_000)], TOLERANCE);
};

describe("pieces", () => {
  test("[G6] a quarter to the left ends up left, one to the right on the right", () => {
    near(poseOn(arcFrom(origin, 2, 9_000), 1), poseAt(2, 2, 9_000));
    near(poseOn(arcFrom(origin, 2, -9_000), 1), poseAt(2, -2, 27_000));
  });

  test("[G7] a piece gone backward keeps the heading and goes the other way", () => {
    const back = straight(origin, { x: -3, y: 0 }, true);
    expect(poseOn(back, 1)).toEqual(poseAt(-3, 0, 0));
    const arc = arcAbout({ x: 0, y: -2 }, 2, 0, 9_000, true);
    near(poseOn(arc, 0), origin);
    // Backward with the heading turning left: the quarters go to the right, behind the horse.
    near(poseOn(arc, 1), poseAt(-2, -2, 9_000));
  });

  test("[G8] nothing without a size is a piece", () => {
    expect(() => straight(origin, origin)).toThrow("There is no way from 0, 0 to itself.");
    expect(() => arcFrom(origin, 0, 100)).toThrow("An arc has a radius above 0 m, not 0.");
    expect(() => arcFrom(origin, Number.NaN, 100)).toThrow("not NaN");
    expect(() => arcFrom(origin, 1, 0)).toThrow("An arc turns by some hundredths, not 0.");
    expect(() => turnOnSpot(origin, Number.NaN)).toThrow("A turn has some hundredths, not NaN.");
    expect(() => halt(origin, 0)).toThrow("A halt lasts above 0 s, not 0.");
    expect(() => cutPiece(straight(origin, { x: 1, y: 0 }), 1)).toThrow("cut between its ends, not at 1 of it");
  });

  test("[G9] lengths agree with an independent library's", () => {
    fc.assert(
      fc.property(anyPose, anySize, fc.integer({ min: 1, max: 35_999 }), (pose, size, sweep) => {
        const line = straight(pose, beside(pose, size));
        const [a, b] = [new FlatPoint(line.from.x, line.from.y), new FlatPoint(line.to.x, line.to.y)];
        expect(line.length).toBeCloseTo(new FlatSegment(a, b).length, 9);
        const arc = arcFrom(pose, size, sweep);
        const centre = new FlatPoint(arc.centre.x, arc.centre.y);
        const start = Math.atan2(pose.y - arc.centre.y, pose.x - arc.centre.x);
        const flat = new FlatArc(centre, size, start, start + (sweep * Math.PI) / 18_000, true);
        expect(arc.length).toBeCloseTo(flat.length, 6);
        const end = poseOn(arc, 1);
        expect(Math.hypot(flat.end.x - end.x, flat.end.y - end.y)).toBeLessThan(1e-6);
        const box = boxOf(pathOf([arc], TOLERANCE));
        expect(box.left).toBeCloseTo(flat.box.xmin, 6);
        expect(box.right).toBeCloseTo(flat.box.xmax, 6);
        expect(box.foot).toBeCloseTo(flat.box.ymin, 6);
        expect(box.head).toBeCloseTo(flat.box.ymax, 6);
      }),
    );
  });

  test("[G9] lengths along the drawn path agree with a second library's within 1e-5 of themselves", () => {
    fc.assert(
      fc.property(anyMovingPath, (path) => {
        const drawn = new svgPathProperties(pathData(path)).getTotalLength();
        // The library adds up chords, about a millionth too short on any arc; hence a share of the length.
        expect(Math.abs(drawn - lengthOf(path))).toBeLessThan(1e-5 * Math.max(1, lengthOf(path)));
      }),
      { numRuns: 200 },
    );
  });

  test("[G15] the drawing of a piece: a full circle in four strokes, none for a turn and a halt", () => {
    const circle = arcFrom(origin, 5, 36_000);
    expect(pieceData(circle)).toBe("M 0 0 A 5 5 0 0 1 5 5 A 5 5 0 0 1 0 10 A 5 5 0 0 1 -5 5 A 5 5 0 0 1 0 0");
    expect(pieceData(arcFrom(origin, 5, -9_000))).toBe("M 0 0 A 5 5 0 0 0 5 -5");
    expect(pieceData(turnOnSpot(origin, 100))).toBe("");
    expect(pathData(little())).toBe("M 0 0 L 4 0 A 2 2 0 0 1 6 2");
  });
});

describe("paths", () => {
  test("[G11] by metres: the pose before what stands there, and the end at the end", () => {
    const path = little();
    expect(lengthOf(path)).toBeCloseTo(4 + Math.PI, 12);
    near(poseAtLength(path, 2), poseAt(2, 0, 0));
    near(poseAtLength(path, 4), poseAt(4, 0, 0));
    near(poseAtLength(path, lengthOf(path)), poseAt(6, 2, 27_000));
    expect(() => poseAtLength(path, 8)).toThrow("not 8 m");
    expect(() => poseAtLength(path, Number.NaN)).toThrow("not NaN m");
  });

  test("[G12] by fractions turns and halts have their moments too", () => {
    const path = pathOf([straight(origin, { x: 2, y: 0 }), halt(poseAt(2, 0, 0), 2)], TOLERANCE);
    near(poseAtFraction(path, 1, 4), poseAt(1, 0, 0));
    near(poseAtFraction(path, 3, 4), poseAt(2, 0, 0));
    const turn = pathOf([turnOnSpot(origin, 18_000)], TOLERANCE);
    near(poseAtFraction(turn, 1, 3), poseAt(0, 0, 6_000));
    near(poseAtFraction(turn, 1, 1), poseAt(0, 0, 18_000));
    for (const [over, of] of [
      [2, 1],
      [-1, 2],
      [0, 0],
      [0.5, 1],
    ] as const)
      expect(() => poseAtFraction(turn, over, of)).toThrow(`not ${over}/${of}`);
  });

  test("[G10] pieces that do not meet are no path, and the gap is named", () => {
    const first = pathOf([straight(origin, { x: 2, y: 0 })], TOLERANCE);
    const second = pathOf([straight(poseAt(2, 0.002, 0), { x: 5, y: 0.002 })], TOLERANCE);
    expect(joinPaths(first, second, TOLERANCE)).toEqual({
      ok: false,
      code: "path-gap",
      sentence:
        "The second line does not begin where the first ends: they are 2.0 mm and 0.00 degrees apart, where at most 1 mm and 0.05 degrees are allowed. Put a joining line between them.",
    });
    expect(() => pathOf([...first.pieces, ...second.pieces], TOLERANCE)).toThrow("Pieces 0 and 1 of a path are 2.0 mm");
    expect(() => pathOf([], TOLERANCE)).toThrow("A path has at least one piece.");
    expect(joinPaths(first, pathOf([straight({ x: 2, y: 0 }, { x: 2, y: 4 })], TOLERANCE), TOLERANCE).ok).toBe(false);
    expect(
      joinPaths(first, pathOf([straight({ x: 2, y: 0.0009 }, { x: 4, y: 0.0009 })], TOLERANCE), TOLERANCE).ok,
    ).toBe(true);
  });

  test("[G10] place and heading are unbroken everywhere, and a step's length apart in between", () => {
    fc.assert(
      fc.property(anyMovingPath, fc.nat(1_000), fc.nat(1_000), (path, from, to) => {
        unbroken(path);
        const whole = lengthOf(path);
        const [a, b] = [Math.min(whole, (whole * from) / 1_000), Math.min(whole, (whole * to) / 1_000)];
        expect(distance(poseAtLength(path, a), poseAtLength(path, b))).toBeLessThanOrEqual(Math.abs(a - b) + 1e-6);
      }),
    );
  });

  test("[G13] a cut keeps the length and every pose", () => {
    fc.assert(
      fc.property(anyMovingPath, fc.integer({ min: 1, max: 999 }), (path, part) => {
        const whole = lengthOf(path);
        const at = (whole * part) / 1_000;
        const [first, rest] = cutPath(path, at);
        expect(lengthOf(first) + lengthOf(rest)).toBeCloseTo(whole, 7);
        expect(lengthOf(first)).toBeCloseTo(at, 7);
        expect(distance(first.end, rest.start)).toBeLessThan(1e-6);
        near(rest.end, path.end);
        expect(samePose(first.start, path.start, TOLERANCE)).toBe(true);
      }),
    );
    // A hair from the end of an arc, where the cut would turn by nothing.
    const hair = cutPath(pathOf([arcFrom(origin, 0.5, 18_000)], TOLERANCE), 0.5 * Math.PI - 1e-15);
    expect(hair.map((path) => path.pieces.length)).toEqual([1, 1]);
    expect(lengthOf(hair[0]) + lengthOf(hair[1])).toBeCloseTo(0.5 * Math.PI, 9);
    expect(() => cutPath(little(), 0)).toThrow("is not cut at 0 m");
  });

  test("[G14] reversed in time: the same poses in the other order, the same length, and twice is nothing", () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const reversed = reversePath(path);
        unbroken(reversed);
        expect(lengthOf(reversed)).toBeCloseTo(lengthOf(path), 9);
        near(reversed.start, path.end);
        near(reversed.end, path.start);
        near(poseAtFraction(reversed, 1, 3), poseAtFraction(path, 2, 3));
        expect(reversePath(reversed).pieces).toEqual(path.pieces);
      }),
    );
  });

  test("[G14] ridden the other way: the same line, every heading turned about", () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const other = rideTheOtherWay(path);
        unbroken(other);
        expect(lengthOf(other)).toBeCloseTo(lengthOf(path), 9);
        near({ ...other.start, heading: 0 }, { ...path.end, heading: 0 });
        expect(Math.abs(turnBetween(other.start.heading, path.end.heading))).toBeCloseTo(18_000, 3);
      }),
    );
  });

  test("[G5] the mirror of a path is exact: every place, every settled end", () => {
    fc.assert(
      fc.property(anyMovingPath, fc.nat(997), (path, part) => {
        const mirrored = mirrorPath(path);
        const at = Math.min(lengthOf(path), (lengthOf(path) * part) / 997);
        expect(poseAtLength(mirrored, at)).toEqual(mirrorPose(poseAtLength(path, at)));
        expect(settled(mirrored.end)).toEqual(mirrorPose(settled(path.end)));
        expect(lengthOf(mirrored)).toBe(lengthOf(path));
        expect(mirrorPath(mirrored)).toEqual(path);
      }),
    );
  });

  test("[G14] a rigid motion keeps length, joins and turns", () => {
    fc.assert(
      fc.property(anyPath, anyPose, (path, to) => {
        const moved = movePath(path, motionBetween(path.start, to));
        near(moved.start, to);
        unbroken(moved);
        expect(lengthOf(moved)).toBe(lengthOf(path));
        expect(distance(moved.start, moved.end)).toBeCloseTo(distance(path.start, path.end), 7);
      }),
    );
  });

  test("[G9] the box holds every place and touches it on every side", () => {
    fc.assert(
      fc.property(anyMovingPath, (path) => {
        const box = boxOf(path);
        const places = path.pieces.flatMap((piece: Piece) =>
          Array.from({ length: 401 }, (_, index) => poseOn(piece, index / 400)),
        );
        const xs = places.map((place) => place.x);
        const ys = places.map((place) => place.y);
        // 401 places on two turns of 30 m radius lie within 30 m (1 - cos(0.0157)) of the farthest.
        expect(Math.min(...xs) - box.left).toBeGreaterThan(-1e-6);
        expect(Math.min(...xs) - box.left).toBeLessThan(0.005);
        expect(box.right - Math.max(...xs)).toBeGreaterThan(-1e-6);
        expect(box.right - Math.max(...xs)).toBeLessThan(0.005);
        expect(Math.min(...ys) - box.foot).toBeLessThan(0.005);
        expect(box.head - Math.max(...ys)).toBeLessThan(0.005);
      }),
      { numRuns: 50 },
    );
  });
});
