/** tests/ride/together.test.ts - several riders of one ride or several: how near they come, when and where. */
import { describe, expect, test } from "vitest";
import { mirrorPose } from "../../shared/ground/plane.ts";
import { poseOfRider } from "../../shared/ground/riders.ts";
import { poseAt } from "../../shared/ride/moments.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { rideTogether } from "../../shared/ride/ride-together.ts";
import { supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RideBuilder, times } from "./build-ride.ts";
import { demoRows } from "./rides.ts";

/** Straight up a large ground at 4 m/s. */
function straightUp() {
  const made = new RideBuilder({ width: 60, length: 120 });
  const step = made.figure("on", "straight", { size: metres(80) });
  made.action(step, "go at", { gait: supplied("trot"), pace: supplied("working") });
  return rideExercise(made.rows(), made.home, {
    gaitSpeeds: [{ gait: "trot", pace: "working", speed: 4, strideLength: null }],
  });
}

describe("[R31] two riders", () => {
  test("five seconds apart on one line: 20 m less a horse's length", () => {
    const ridden = straightUp();
    const together = rideTogether([
      { ridden, offsetSeconds: 0 },
      { ridden, offsetSeconds: 5 },
    ]);
    if (!together.ok) throw new Error(together.sentence);
    const [pair] = together.distances;
    // 1.3 m before and 1.14 m behind the rider, and half a horse's width at both round ends.
    expect(pair?.nearest?.metres).toBeCloseTo(20 - 1.3 - 1.14 - 0.8, 1);
  });

  test("beside one another by the metres they are moved", () => {
    const ridden = straightUp();
    const together = rideTogether([
      { ridden, offsetSeconds: 0 },
      { ridden, offsetSeconds: 0, placeOffset: { x: 6, y: 0 } },
    ]);
    if (!together.ok) throw new Error(together.sentence);
    expect(together.distances[0]?.nearest?.metres).toBeCloseTo(6 - 0.8, 2);
  });

  test("on one circle, the second mirrored: they meet on the middle line", () => {
    const made = new RideBuilder({ width: 40, length: 40 });
    made.station("the well", 0, 0);
    made.figure("round", "circle", { turn: LEFT, size: metres(16), about: at("the well"), laps: times(1) });
    const ridden = rideExercise(made.rows(), made.home);
    const together = rideTogether([
      { ridden, offsetSeconds: 0 },
      { ridden, offsetSeconds: 0, mirrored: true },
    ]);
    if (!together.ok) throw new Error(together.sentence);
    const nearest = together.distances[0]?.nearest;
    expect(nearest?.metres).toBe(0);
    const [first, second] = together.riders;
    if (!first || !second) throw new Error("Two riders were expected.");
    expect(poseOfRider(first, 3)).toEqual(poseAt(ridden, 3));
    expect(poseOfRider(second, 3)).toEqual(mirrorPose(poseAt(ridden, 3)));
  });

  test.each([
    [0, "no-rider"],
    [9, "too-many-riders"],
  ])("%i riders are refused", (count, code) => {
    const ridden = straightUp();
    const together = rideTogether(Array.from({ length: count }, () => ({ ridden, offsetSeconds: 0 })));
    expect(together).toMatchObject({ ok: false, code });
  });
});

test("the point of the spear comes nearer to another than the bodies do, or as near", () => {
  const { rows, exercises } = demoRows();
  const ridden = rideExercise(rows, exercises.circle, {});
  const together = rideTogether([
    { ridden, offsetSeconds: 0 },
    { ridden, offsetSeconds: 4 },
  ]);
  if (!together.ok) throw new Error(together.sentence);
  expect(together.distances.map(({ point }) => point?.name ?? "bodies")).toEqual(["bodies", "the point", "the point"]);
  // The point of the one who comes behind looks forward: it is the nearer to the one before.
  const [bodies, , behind] = together.distances.map(({ nearest }) => nearest?.metres ?? Number.NaN);
  expect(behind).toBeLessThan((bodies ?? 0) + 2);
  expect(Number.isFinite(bodies)).toBe(true);
});
