/** tests/ride-rules/turn-room.test.ts - the room a horse wants where it turns on the spot beside the wall. */
import { describe, expect, test } from "vitest";
import type { ValueOf } from "../../schema/values.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RIGHT, RideBuilder } from "../ride/build-ride.ts";

/** A half turn on the track of a ground of 20 m by 40 m, the wall on the right: 1.3 m lie before the rider, 1.14 behind. */
function turnedAtTheWall(manner: ValueOf<"manner">, turn: typeof LEFT | typeof RIGHT, trackOffset: number, way = {}) {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset });
  made.station("the oak", 10, 0);
  made.figure("along", "along the wall", { turn: LEFT, from: at("the oak"), size: metres(8) });
  made.figure("turn", "turn", { turn, amount: supplied("half"), manner: supplied(manner) });
  const ridden = rideExercise(made.rows(), made.home, way);
  return ridden.findings.flatMap(({ rule, sentence }) => (rule === "on-ground" ? [sentence] : []));
}

describe("[V30] a half turn with the wall 0.6 m to the right", () => {
  test.each<[ValueOf<"manner">, "left" | "right", number | null]>([
    ["on the haunches", "left", null],
    ["on the haunches", "right", 2.44 - 0.6],
    ["on the forehand", "left", 2.44 - 0.6],
    ["on the forehand", "right", null],
    ["halt and turn", "left", 1.14 - 0.6],
    ["halt and turn", "right", 1.3 - 0.6],
  ])("%s to the %s: %s m past it", (manner, side, past) => {
    const found = turnedAtTheWall(manner, side === "left" ? LEFT : RIGHT, 0.6);
    if (past === null) expect(found).toEqual([]);
    else expect(found.join()).toContain(`swings ${Number(past.toFixed(2))} m past the wall (a horse of 2.44 m)`);
  });

  test("farther in there is room", () => {
    expect(turnedAtTheWall("halt and turn", RIGHT, 1.8)).toEqual([]);
  });

  test("on foot nobody is so long", () => {
    expect(turnedAtTheWall("halt and turn", RIGHT, 0.6, { way: "on foot" })).toEqual([]);
  });
});
