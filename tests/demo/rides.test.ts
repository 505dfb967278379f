/** tests/demo/rides.test.ts - the later exercises of the invented book on the ground: nothing is refused under any reading,
 *  steps end where their words have them, and two riders keep clear of each other under one reading and not the other. */
import { describe, expect, test } from "vitest";
import { poseAt } from "../../shared/ride/moments.ts";
import { rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { rideRoles } from "../../shared/ride/ride-roles.ts";
import { rideTogether } from "../../shared/ride/ride-together.ts";
import { demoRows, expectWhole } from "../ride/rides.ts";

const { rows, exercises } = demoRows();
const readings = (rows.readings ?? []).map(({ value }) => value);
/** Without findings, which would ride it again under other readings. */
const rideOf = (exercise: string, options = {}) => rideWithContext(rows, exercise, options).ridden;
const later = ["spears", "boar", "knot"] as const;

describe.each(later)("%s", (name) => {
  const exercise = exercises[name];

  test("is one way without a gap, with no figure refused, under each reading of each crux", () => {
    const own = new Set(
      (rows.cruxes ?? []).filter(({ value }) => value.exercise === exercise).map(({ value }) => value.id),
    );
    for (const { id, crux } of readings.filter((reading) => own.has(reading.crux))) {
      const ridden = rideOf(exercise, { choice: [{ crux, reading: id }] });
      expect(ridden.stages.flatMap(({ refused }) => refused)).toEqual([]);
      expectWhole(ridden);
    }
  });

  test("can be ridden in every version of the day", () => {
    for (const { value } of rows.variants ?? []) {
      if (value.exercise !== exercise) continue;
      const ridden = rideOf(exercise, { variant: value.id });
      expect(ridden.way).toBe(value.way);
      expect(ridden.stages.flatMap(({ refused }) => refused)).toEqual([]);
      if (value.way === "mounted")
        expect(new Set(ridden.pieces.map(({ gait }) => gait))).toEqual(new Set(["walk", "halt"]));
    }
  });
});

test.each<[exercise: (typeof later)[number], step: string, x: number, y: number]>([
  ["spears", "Out along the wall to the trough", 8.2, 0],
  ["spears", "Slanting across to the stone", -8.2, 8],
  ["spears", "One left in the ring", 0, 18.2],
  ["spears", "Home with one spear", 0, -18.2],
  ["boar", "Down the court in three loops", 0, -18.2],
  ["boar", "The turn in the corner", -8.2, -18.2],
  ["knot", "Up the court, and about the well", 0, 6],
  ["knot", "The knot", 0, 6],
])("in %s, “%s” ends at %f, %f", (exercise, step, x, y) => {
  const ridden = rideOf(exercises[exercise]);
  const end = poseAt(ridden, ridden.stages.find(({ title }) => title === step)?.to ?? Number.NaN);
  expect([end.x, end.y]).toEqual([expect.closeTo(x, 2), expect.closeTo(y, 2)]);
});

describe("two riders in the knot", () => {
  const together = (title: string) => {
    const reading = readings.find((one) => one.title === title);
    const choice = [{ crux: reading?.crux ?? "", reading: reading?.id ?? "" }];
    const roles = ["the first", "the second"];
    const rides = rideRoles(
      rows,
      exercises.knot,
      roles.map((role) => ({ role, options: { choice } })),
    );
    const met = rideTogether(rides.map((ridden, at) => ({ ridden, offsetSeconds: 0, name: roles[at] ?? "" })));
    if (!met.ok) throw new Error(met.sentence);
    return met.distances.find(({ point }) => point === null)?.nearest?.metres ?? Number.POSITIVE_INFINITY;
  };

  test("set out from the knot they meet", () => {
    expect(together("when he comes into the knot")).toBe(0);
  });

  test("set out from the stair they never come within a horse's length", () => {
    expect(together("when he comes round by the stair")).toBeGreaterThan(2.44);
  });
});
