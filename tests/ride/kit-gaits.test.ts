/** tests/ride/kit-gaits.test.ts - the horse of a stored kit: chosen, it goes at its own speeds; not chosen, at the published. */
import { describe, expect, test } from "vitest";
import type { Kit } from "../../schema/teaching.ts";
import { horseGaits, speedOf } from "../../shared/ground/gaits.ts";
import { kitGaits } from "../../shared/ride/kit-gaits.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { demoRows } from "./rides.ts";

const { rows, exercises } = demoRows();
const madder = rows.kits?.[0]?.value as Kit;

describe("[R40] the demo's kit, whose mare walks 1.6 m/s and canters 3.8", () => {
  test.each<[Parameters<typeof speedOf>[0], Parameters<typeof speedOf>[1], number]>([
    ["walk", null, 1.6],
    ["walk", "medium", 1.6],
    ["canter", null, 3.8],
    ["canter", "medium", (3.8 * 4.9) / 3.91],
    ["trot", null, 3.61],
    ["gallop", "full speed", 12.5],
  ])("%s, %s: %d m/s", (gait, pace, speed) => {
    expect(speedOf(gait, pace, kitGaits(madder)).speed).toBeCloseTo(speed, 9);
  });

  test("says what the speed rests on", () => {
    expect(speedOf("canter", null, kitGaits(madder)).basis).toMatch(
      /^Madder, .*, as the kit has it: “Metres a second, .*[^.]”$/,
    );
    expect(speedOf("canter", "medium", kitGaits(madder)).basis).toMatch(
      /^in proportion to the canter of the kit: Madder, /,
    );
    expect(speedOf("trot", null, kitGaits(madder)).basis).toBe(speedOf("trot", null).basis);
  });

  test("nobody chooses it: the published speeds, to the byte", () => {
    for (const exercise of [exercises.circle, exercises.change])
      expect(rideExercise(rows, exercise, { kit: null })).toEqual(rideExercise(rows, exercise));
  });

  test("somebody does: the same line, ridden more slowly", () => {
    const [usual, own] = [
      rideExercise(rows, exercises.circle),
      rideExercise(rows, exercises.circle, { kit: madder.id }),
    ];
    expect(own.metres).toBeCloseTo(usual.metres, 1);
    const canter = own.pieces.find(({ gait, pace }) => gait === "canter" && pace !== "medium");
    expect(canter?.speed).toBe(3.8);
    expect(own.timed.duration).toBeGreaterThan(usual.timed.duration);
  });

  test("what is measured today goes before it", () => {
    const gaitSpeeds = horseGaits({ canter: 4 });
    const { pieces } = rideExercise(rows, exercises.circle, { kit: madder.id, gaitSpeeds });
    const speeds = pieces.map(({ speed }) => speed);
    expect(speeds).not.toContain(3.8);
    expect(speeds).toContain(4);
  });

  test("a kit that is not there is a slip of the caller", () => {
    expect(() => rideExercise(rows, exercises.circle, { kit: "none" })).toThrow(
      "The kit none is not among the rows that were given.",
    );
  });
});

test("[R40] a kit without speeds changes nothing; a range is taken by its middle", () => {
  const bare = { horse: { name: "", slots: {} } };
  expect(kitGaits(bare)).toEqual([]);
  const range = {
    is: "said" as const,
    value: { is: "range" as const, from: 1.5, to: 1.9 },
    warrant: "supplied" as const,
  };
  const [walk] = kitGaits({ horse: { name: "", slots: { walk: { ...range, basis: [] } } } });
  expect(walk).toMatchObject({
    gait: "walk",
    pace: null,
    speed: 1.7,
    basis: "the horse of the kit, as the kit has it",
  });
});
