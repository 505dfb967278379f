/** tests/ride/school.test.ts - a school sequence entered by hand as rows, as a dressage test gives its figures, and ridden.
 *  Letters of the 20 m by 60 m and the 20 m by 40 m ground: FEI Dressage Rules Art. 429 (distances as several riding
 *  guides repeat them). The figures themselves are common to such tests: enter and halt on the middle line, track left,
 *  a circle of 20 m, the change across the long diagonal. */
import { describe, expect, test } from "vitest";
import { schoolGround20x40, schoolGround20x60 } from "../../shared/ground/school-grounds.ts";
import { placeOfStation } from "../../shared/ground/stations.ts";
import { poseAt } from "../../shared/ride/moments.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RideBuilder, times } from "./build-ride.ts";
import { expectWhole, ownMetres } from "./rides.ts";

/** The letters as rows of a work. */
function school(length: 40 | 60): RideBuilder {
  const made = new RideBuilder({ width: 20, length, trackOffset: 0 });
  const { stations } = length === 60 ? schoolGround20x60(0) : schoolGround20x40(0);
  for (const station of stations) {
    const { x, y } = placeOfStation(station, { x: 0, y: 0 });
    made.station(station.name, x, y, station.partner);
  }
  return made;
}

const trot = (made: RideBuilder) => {
  const standing = made.standing("working trot throughout", made.home);
  made.action(standing, "go at", { gait: supplied("trot"), pace: supplied("working") });
};

describe("enter at A, halt at X, track left, circle at E, change F-X-H, on the other rein the mirror of it", () => {
  const made = school(60);
  trot(made);
  made.figure("A: enter", "straight", { from: at("A"), toward: at("X") });
  made.figure("X: halt", "halt");
  made.figure("on to G", "straight", { toward: at("G") });
  made.figure("track left to E", "along the wall", { turn: LEFT, toward: at("E") });
  made.figure("E: circle", "circle", { turn: LEFT, size: metres(20), from: at("E"), laps: times(1) });
  made.figure("by K and A to F", "along the wall", { turn: LEFT, toward: at("F") });
  made.figure("F-X-H", "change across", { from: at("F"), toward: at("H") });
  const ridden = rideExercise(made.rows(), made.home);

  test("every step can be ridden, without a line that nobody asked for but onto the track", () => {
    expect(ridden.stages.flatMap(({ refusal }) => refusal ?? [])).toEqual([]);
    expect(ridden.stages.flatMap(({ joined }, index) => (joined > 0 ? [index] : []))).toEqual([3]);
    expectWhole(ridden);
  });

  test("the lengths are those of the ground", () => {
    // Rounded corners: two quarters of a volte of 6 m (FEI Art. 409.2) in place of 6 m each.
    const corner = 6 - (Math.PI * 6) / 4;
    expect(ownMetres(ridden, 0)).toBeCloseTo(30, 6);
    expect(ownMetres(ridden, 2)).toBeCloseTo(24, 6);
    expect(ownMetres(ridden, 4)).toBeCloseTo(Math.PI * 20, 6);
    expect(ownMetres(ridden, 5)).toBeCloseTo(30 + 20 + 6 - 2 * corner, 2);
    // The long diagonal is 52.00 m from letter to letter; the bends off and onto the track make it a little longer.
    expect(ownMetres(ridden, 6)).toBeGreaterThan(52);
    expect(ownMetres(ridden, 6)).toBeLessThan(52.3);
  });

  test("the times follow from 3.61 m/s (working trot, Clayton 1994, from memory) and two seconds of halt", () => {
    expect(ridden.timed.duration).toBeCloseTo(ridden.metres / 3.61 + 2, 6);
  });

  test("it ends at H on the right rein; on the other rein at M on the left", () => {
    const end = poseAt(ridden, ridden.timed.duration);
    expect(end).toEqual({ x: -10, y: 24, heading: 9_000 });
    const other = rideExercise(made.rows(), made.home, { rein: "on the other rein" });
    expect(poseAt(other, other.timed.duration)).toEqual({ x: 10, y: 24, heading: 9_000 });
    expect(other.metres).toBeCloseTo(ridden.metres, 6);
    expect(other.lanes[0]?.spans.at(-1)?.words).toBe("change across, from K, toward M");
  });
});

test.each([
  [60, 52],
  [40, Math.hypot(20, 28)],
] as const)("K-X-M in the ground of 20 m by %i m is %d m", (length, expected) => {
  const made = school(length);
  made.figure("K-X-M", "straight", { from: at("K"), toward: at("M") });
  const ridden = rideExercise(made.rows(), made.home);
  expect(ridden.metres).toBeCloseTo(expected, 9);
  // 20-48-52 is exact; facts give 34.41 m for the short ground.
  expect(Number(ridden.metres.toFixed(2))).toBe(length === 60 ? 52 : 34.41);
});
