/** Places, headings and poses. Rules G1-G5. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  bearing,
  beside,
  directionOf,
  distance,
  headingOf,
  headingOfClock,
  mirrorHeading,
  mirrorPoint,
  mirrorPose,
  motionBetween,
  movePose,
  pointAt,
  poseAt,
  roundAway,
  samePose,
  settled,
  TOLERANCE,
  turnBetween,
  turned,
} from "../../shared/ground/index.ts";
import { anyPose } from "./any-ground.ts";

describe("headings", () => {
  it.each([
    ["[G2] toward +x", { x: 3, y: 0 }, 0],
    ["[G2] toward the head", { x: 0, y: 2 }, 9_000],
    ["[G2] toward -x", { x: -1, y: 0 }, 18_000],
    ["[G2] toward the foot", { x: 0, y: -5 }, 27_000],
    ["[G2] between two axes", { x: -4, y: 4 }, 13_500],
  ])("%s", (_, to, expected) => {
    expect(bearing({ x: 0, y: 0 }, to)).toBe(expected);
  });

  it.each([
    ["12 is ahead", 12, 9_000],
    ["3 is right", 3, 0],
    ["6 is behind", 6, 27_000],
    ["9 is left", 9, 18_000],
  ])("[G2] the clock from a horse that heads for the head: %s", (_, hour, expected) => {
    expect(headingOfClock(9_000, hour)).toBe(expected);
  });

  test("[G3] whole turns fall away, and the shortest way round is found", () => {
    expect(headingOf(-1)).toBe(35_999);
    expect(headingOf(36_000)).toBe(0);
    expect(turned(35_000, 2_000)).toBe(1_000);
    expect(turnBetween(35_000, 1_000)).toBe(2_000);
    expect(turnBetween(0, 18_000)).toBe(18_000);
    expect(turnBetween(0, 18_001)).toBe(-17_999);
  });

  test("[G2] directions along the axes are exact", () => {
    expect([0, 9_000, 18_000, 27_000].map((heading) => directionOf(heading))).toEqual([
      { x: 1, y: 0 },
      { x: 0, y: 1 },
      { x: -1, y: 0 },
      { x: 0, y: -1 },
    ]);
  });

  test("[G1] what is not a number throws with the value", () => {
    expect(() => pointAt(Number.NaN, 0)).toThrow("A place is two finite metres, not NaN, 0.");
    expect(() => poseAt(0, 0, Number.POSITIVE_INFINITY)).toThrow("finite hundredths of a degree, not Infinity");
    expect(() => bearing({ x: 1, y: 1 }, { x: 1, y: 1 })).toThrow("There is no way from 1, 1 to itself.");
    expect(() => headingOfClock(0, 13)).toThrow("The clock goes from 1 to 12, not 13.");
  });
});

describe("settling", () => {
  it.each([
    [0.5, 1],
    [-0.5, -1],
    [1.4999, 1],
    [-2.5, -3],
    [0.49999999999999994, 0],
  ])("[G4] %d rounds to %d", (value, expected) => {
    expect(roundAway(value)).toBe(expected);
  });

  test("[G4] a pose keeps whole millimetres and whole hundredths, and settles once", () => {
    expect(settled({ x: 1.2345, y: -0.0005, heading: 123.5 })).toEqual({ x: 1.235, y: -0.001, heading: 123 });
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 35_999, noNaN: true }),
        (x, heading) => {
          const once = settled({ x, y: x / 3, heading });
          expect(settled(once)).toEqual(once);
          expect(samePose(once, { x, y: x / 3, heading }, TOLERANCE)).toBe(true);
        },
      ),
    );
  });

  test("[G5] settling and mirroring may be done in either order, to the last bit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.integer({ min: 0, max: 360_000 }),
        (x, y, tenths) => {
          const pose = { x, y, heading: headingOf(tenths / 10) };
          expect(settled(mirrorPose(pose))).toEqual(mirrorPose(settled(pose)));
        },
      ),
    );
  });
});

describe("the mirror", () => {
  test("[G5] twice is nothing, and a heading becomes 180 degrees less itself", () => {
    expect(mirrorHeading(0)).toBe(18_000);
    expect(mirrorHeading(9_000)).toBe(9_000);
    expect(mirrorHeading(20_000)).toBe(34_000);
    fc.assert(
      fc.property(anyPose, (pose) => {
        expect(mirrorPose(mirrorPose(pose))).toEqual(pose);
      }),
    );
  });

  test("[G5] bearings and directions mirror exactly", () => {
    fc.assert(
      fc.property(anyPose, anyPose, (a, b) => {
        fc.pre(distance(a, b) > 0);
        expect(bearing(mirrorPoint(a), mirrorPoint(b))).toBe(mirrorHeading(bearing(a, b)));
        expect(directionOf(mirrorHeading(a.heading))).toEqual(mirrorPoint(directionOf(a.heading)));
        expect(beside(mirrorPose(a), 3.7, -1.2)).toEqual(mirrorPoint(beside(a, 3.7, 1.2)));
      }),
    );
  });
});

test("[G3] a rigid motion carries one pose to the other and keeps distances", () => {
  fc.assert(
    fc.property(anyPose, anyPose, anyPose, (from, to, third) => {
      const motion = motionBetween(from, to);
      expect(distance(movePose(from, motion), to)).toBeLessThan(1e-9);
      expect(movePose(from, motion).heading).toBe(to.heading);
      expect(distance(movePose(third, motion), to)).toBeCloseTo(distance(third, from), 9);
    }),
  );
});

test("[G5] a horse that heads straight for the foot mirrors exactly too, whichever way it goes on turning", () => {
  fc.assert(
    fc.property(fc.double({ min: -90_000, max: 90_000, noNaN: true }), (by) => {
      expect(turned(27_000, -by)).toBe(mirrorHeading(turned(27_000, by)));
      expect(directionOf(27_000, -by)).toEqual(mirrorPoint(directionOf(27_000, by)));
    }),
    { numRuns: 500 },
  );
});
