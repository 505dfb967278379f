/** tests/ride/ending.test.ts - where a line ends: before a wall, so far past a place or before it as words measure. */
import { describe, expect, test } from "vitest";
import type { ValueOf } from "../../schema/values.ts";
import { poseOn } from "../../shared/ground/piece.ts";
import { measuresIn } from "../../shared/ride/lengths-in-words.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RideBuilder } from "./build-ride.ts";

/** A ground of 20 m by 40 m: a gate at its foot, a stair at its head, a trough in the wall on the right, an oak inside. */
function court(trackOffset = 1.8): RideBuilder {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset });
  made.station("the gate", 0, -20);
  made.station("the stair", 0, 20);
  made.station("the trough", 10, 0);
  made.station("the oak", 0, 5);
  return made;
}

const endOf = ({ timed }: Ridden) => timed.path.end;
const onGroundIn = ({ findings }: Ridden) =>
  findings.flatMap(({ rule, sentence }) => (rule === "on-ground" ? [sentence] : []));

describe("[G37][V30] a line to a place in the wall ends with the horse’s head inside", () => {
  test("0.4 m and a head before it", () => {
    const made = court();
    made.figure("up", "straight", { from: at("the gate"), toward: at("the stair") });
    const ridden = rideExercise(made.rows(), made.home, {});
    expect(endOf(ridden)).toEqual({ x: 0, y: expect.closeTo(20 - 1.7, 9), heading: 9_000 });
    expect(ridden.supplied.join()).toContain("ends 1.7 m before it: the stair lies in the wall");
    expect(onGroundIn(ridden)).toEqual([]);
  });
  test("a place inside the ground is ridden to itself", () => {
    const made = court();
    made.figure("up", "straight", { from: at("the gate"), toward: at("the oak") });
    expect(endOf(rideExercise(made.rows(), made.home, {}))).toEqual({ x: 0, y: 5, heading: 9_000 });
  });
  test("by a length of its own it can come too near, and that is found", () => {
    const made = court();
    made.figure("up", "straight", { from: at("the gate"), size: metres(39.2) });
    const ridden = rideExercise(made.rows(), made.home, {});
    expect(onGroundIn(ridden)).toEqual([expect.stringContaining("head or croup comes 0.5 m past the wall")]);
    expect(onGroundIn(rideExercise(made.rows(), made.home, { way: "on foot" }))).toEqual([]);
  });
  test.each([0.5, 1, 1.8])("along a track %s m inside the wall nothing is found", (trackOffset) => {
    const made = court(trackOffset);
    made.figure("round", "along the wall", { from: at("the gate"), turn: LEFT });
    expect(onGroundIn(rideExercise(made.rows(), made.home, {}))).toEqual([]);
  });
});

describe("[R38] a halt so far before a place", () => {
  const halted = (how: string, toward: string): number => {
    const made = court();
    const step = made.figure("up", "straight", { from: at("the gate"), toward: at(toward) });
    made.action(step, "ride", { figure: supplied("halt"), how: supplied(how) });
    return endOf(rideExercise(made.rows(), made.home, {})).y;
  };
  test.each([
    ["two horse’s lengths before the stair", "the stair", 20 - 4.88],
    ["4 metres before the oak", "the oak", 1],
    ["ten paces before the oak", "the oak", -3],
    ["two feet before the stair", "the stair", 18.3],
    ["before the oak", "the oak", 5],
    ["4 metres before the gate", "the oak", 5],
    ["a spear’s length before the oak", "the oak", 5],
  ])("%s, on the way to %s", (how, toward, y) => {
    expect(halted(how, toward)).toBeCloseTo(y, 3);
  });
});

describe("[R38] until so far past a place", () => {
  const along = (how: string, extra = {}): Ridden => {
    const made = court();
    made.figure("out", "along the wall", { from: at("the gate"), turn: LEFT, toward: at("the trough") });
    made.figure("on", "along the wall", { turn: LEFT, how: supplied(how), ...extra });
    return rideExercise(made.rows(), made.home, {});
  };
  test.each([
    ["until three lengths of the horse past the trough", 7.32],
    ["two metres past the trough", 2],
    ["until 5 yards past the trough", 4.572],
  ])("%s", (how, y) => {
    const ridden = along(how);
    expect(endOf(ridden)).toMatchObject({ x: 8.2, y: expect.closeTo(y, 3) });
    expect(ridden.stages[1]?.refusal).toBe(null);
  });
  test("what is sized otherwise goes by its size, and what only comes by a place by our own", () => {
    expect(endOf(along("two metres past the trough", { size: metres(6) })).y).toBeCloseTo(6, 3);
    expect(endOf(along("past the trough")).y).toBeCloseTo(8, 3);
  });
  test("just past it already, it rides nothing more", () => {
    const made = court();
    made.figure("out", "along the wall", { from: at("the gate"), turn: LEFT, size: metres(30) });
    const before = rideExercise(made.rows(), made.home, {});
    const y = endOf(before).y;
    made.figure("on", "along the wall", {
      turn: LEFT,
      how: supplied(`until ${(y - 1).toFixed(2)} metres past the trough`),
    });
    const ridden = rideExercise(made.rows(), made.home, {});
    expect(endOf(ridden)).toEqual(endOf(before));
    expect(ridden.stages[1]?.refusal).toBe(null);
    expect(ridden.stages[1]?.notes.join()).toContain("it is there already");
  });
});

describe("[R38] lengths in words", () => {
  const spears = [
    { name: "the spear", metres: 2 },
    { name: "the lesser spear", metres: 1.5 },
    { name: "a staff", metres: 3 },
  ];
  test.each<[string, typeof spears, (number | null)[]]>([
    ["a spear’s length", spears.slice(0, 1), [2]],
    ["two spear lengths", spears.slice(0, 1), [4]],
    ["three lengths of the staff", spears, [9]],
    ["three lengths of the horse", spears, [3 * 2.44]],
    ["a spear’s length", spears, [null]],
    ["a rope’s length", spears, [null]],
    ["a groom and two metres", spears, [2]],
  ])("%s of %o", (words, things, expected) => {
    expect(measuresIn(words, things)).toEqual(expected);
  });
});

describe("[R37] a supplied line at a gallop", () => {
  const charged = (x: number, y: number, gait: ValueOf<"gait"> | null): Ridden => {
    const made = new RideBuilder({ width: 60, length: 80, trackOffset: 1.8 });
    made.station("the post", x, y);
    made.figure("in", "straight", { size: metres(20) });
    const step = made.figure("at it", "charge", { toward: at("the post") });
    if (gait !== null) made.action(step, "go at", { gait: supplied(gait), pace: supplied("full speed") });
    return rideExercise(made.rows(), made.home, {});
  };
  const joinOf = ({ pieces, timed }: Ridden) => {
    const index = pieces.findIndex(({ stage, joins }) => stage === 1 && joins);
    const piece = timed.path.pieces[index];
    return {
      radius: piece?.is === "arc" ? piece.radius : null,
      gait: pieces[index]?.gait,
      end: piece && poseOn(piece, 1),
    };
  };
  const found = ({ findings }: Ridden) =>
    findings.flatMap(({ rule, verdict, severity }) => (rule === "joins-ridden" ? [`${verdict}, ${severity}`] : []));

  test("bends wide where there is room", () => {
    const ridden = charged(10, 35, "gallop");
    expect(joinOf(ridden)).toMatchObject({ radius: expect.closeTo(27.6, 1), gait: "gallop" });
    expect(found(ridden)).toEqual([]);
  });
  test("where there is none it is told as ours, and bars nothing", () => {
    const ridden = charged(-28, -20, "gallop");
    expect(joinOf(ridden)).toMatchObject({ radius: 3, gait: "gallop" });
    expect(found(ridden)).toEqual(["cannot tell, notes"]);
    expect(ridden.findings.find(({ rule }) => rule === "joins-ridden")?.sentence).toContain(
      "is our own, not the text’s",
    );
  });
  test("a gait that is ours too is slower there", () => {
    const ridden = charged(-7, -18.2, null);
    expect(joinOf(ridden)).toMatchObject({ radius: 3, gait: "canter" });
    expect(ridden.pieces.at(-1)?.gait).toBe("gallop");
    expect(found(ridden)).toEqual([]);
  });
});

describe("[V30] a head past the wall is not asked", () => {
  test("of a length that is given only about", () => {
    const made = court();
    const about = supplied({ is: "about" as const, of: 39.2, spread: 1 });
    made.figure("up", "straight", { from: at("the gate"), size: about });
    expect(onGroundIn(rideExercise(made.rows(), made.home, {}))).toEqual([]);
  });
  test("where the track runs along the wall itself: there the line ends at the place", () => {
    const made = court(0);
    made.figure("up", "straight", { from: at("the gate"), toward: at("the stair") });
    const ridden = rideExercise(made.rows(), made.home, {});
    expect(endOf(ridden)).toEqual({ x: 0, y: 20, heading: 9_000 });
    expect(onGroundIn(ridden)).toEqual([]);
  });
});
