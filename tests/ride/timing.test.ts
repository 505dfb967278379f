/** tests/ride/timing.test.ts - when acts are done: every kind of timing, batches, and gaits that change on the way. */
import { describe, expect, test } from "vitest";
import type { ValueOf } from "../../schema/values.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RideBuilder, timed, times } from "./build-ride.ts";
import { ownMetres } from "./rides.ts";

const WALK = 1.73;

/** 34.6 m straight on at a walk: 20 s. */
function line() {
  const made = new RideBuilder({ width: 100, length: 100 });
  made.object("spear", "shaft");
  const step = made.figure("on", "straight", { size: metres(34.6) });
  const act = (timing: ValueOf<"timing"> | null, verb: "raise" | "lower" = "raise") =>
    made.action(step, verb, { object: supplied(idOf("spear")) }, timing === null ? {} : timed(timing));
  const moments = () => {
    const ridden = rideExercise(made.rows(), made.home);
    return ridden.stages[0]?.instants.map(({ actions, seconds, timed: said }) => [
      actions.length,
      Number(seconds.toFixed(3)),
      said,
    ]);
  };
  return { made, step, act, moments };
}

describe("[R23] one act on a way of 20 s", () => {
  test.each<[string, ValueOf<"timing"> | null, [number, boolean]]>([
    ["not said: in the middle", null, [10, false]],
    ["before", { is: "before" }, [0, true]],
    ["at one quarter", { is: "at", over: 1, of: 4 }, [5, true]],
    ["at the end", { is: "at", over: 3, of: 3 }, [20, true]],
    ["past the end: at the end", { is: "at", over: 5, of: 4 }, [20, true]],
    ["from a quarter to a half", { is: "during", from: [1, 4], to: [1, 2] }, [5, true]],
    ["after", { is: "after" }, [20, true]],
    ["throughout", { is: "throughout" }, [0, true]],
    ["until something", { is: "until", event: "the bell rings" }, [0, false]],
    ["when something", { is: "when", event: "the bell rings" }, [10, false]],
    ["with an act that is not here", { is: "with", action: idOf("nobody") }, [0, false]],
  ])("%s", (_, timing, [seconds, said]) => {
    const { act, moments } = line();
    act(timing);
    const before = timing?.is === "before";
    const figure = [1, 0, true];
    expect(moments()).toEqual(before ? [[1, seconds, said], figure] : [figure, [1, seconds, said]]);
  });
});

describe("[R24] several acts", () => {
  test("what is not timed lies evenly in the order of the text", () => {
    const { act, moments } = line();
    for (let count = 0; count < 3; count += 1) act(null);
    expect(moments()?.slice(1)).toEqual([
      [1, 5, false],
      [1, 10, false],
      [1, 15, false],
    ]);
  });

  test("between those that are timed", () => {
    const { act, moments } = line();
    act(null);
    act({ is: "at", over: 1, of: 2 });
    act(null);
    act({ is: "after" });
    expect(moments()?.slice(1)).toEqual([
      [1, 5, false],
      [1, 10, true],
      [1, 15, false],
      [1, 20, true],
    ]);
  });

  test("with another is at its moment; after another is after it and before the next", () => {
    const { act, moments } = line();
    const first = act({ is: "at", over: 1, of: 4 });
    act({ is: "with", action: first }, "lower");
    act({ is: "after action", action: first });
    act({ is: "at", over: 3, of: 4 });
    expect(moments()?.slice(1)).toEqual([
      [2, 5, true],
      [1, 10, true],
      [1, 15, true],
    ]);
  });

  test("each hanging on the other: from the start, in the order of the text", () => {
    const { made, step, moments } = line();
    const ids = ["a5", "a6"].map((rank) => ({ rank, id: idOf(`tied ${rank}`) }));
    for (const [index, { rank, id }] of ids.entries())
      made.action(
        step,
        "raise",
        { object: supplied(idOf("spear")) },
        { id, rank, ...timed({ is: "with", action: ids[1 - index]?.id ?? "" }) },
      );
    expect(moments()?.slice(1)).toEqual([
      [1, 0, false],
      [1, 0, false],
    ]);
  });
});

test("[R25] at one moment of the text, hands take hold before others let go, whatever the order and the fraction's terms", () => {
  const { made, step } = line();
  const spear = supplied(idOf("spear"));
  made.action(
    step,
    "take",
    { object: spear, hand: supplied("right"), zone: supplied("balance") },
    timed({ is: "before" }),
  );
  const letGo = made.action(
    step,
    "release",
    { object: spear, hand: supplied("right") },
    timed({ is: "at", over: 1, of: 2 }),
  );
  const takes = made.action(
    step,
    "take",
    { object: spear, hand: supplied("left"), zone: supplied("balance") },
    timed({ is: "at", over: 2, of: 4 }),
  );
  const instant = rideExercise(made.rows(), made.home).stages[0]?.instants.find(({ actions }) =>
    actions.includes(letGo),
  );
  expect(instant?.actions).toEqual([takes, letGo]);
  expect(instant?.after.objects[0]?.grip).toEqual({
    left: { is: "known", value: "balance" },
    right: { is: "known", value: null },
  });
});

test("[R24] acts after a halt in the text are done standing, each with its seconds", () => {
  const made = new RideBuilder({ width: 40, length: 40 });
  made.object("spear", "shaft");
  const step = made.figure("up", "straight", { size: metres(17.3) });
  made.action(step, "ride", { figure: supplied("halt") });
  for (let count = 0; count < 3; count += 1) made.action(step, "raise", { object: supplied(idOf("spear")) });
  const [stage] = rideExercise(made.rows(), made.home).stages;
  expect(stage?.to).toBeCloseTo(16, 6);
  expect(stage?.instants.map(({ seconds, piece }) => [Number(seconds.toFixed(3)), piece])).toEqual([
    [0, 0],
    [10, 0],
    [11.5, null],
    [13, null],
    [14.5, null],
  ]);
});

describe("[R21] gaits", () => {
  const gaits = (build: (made: RideBuilder, step: string) => void) => {
    const made = new RideBuilder({ width: 100, length: 100 });
    const step = made.step("a step", made.home);
    build(made, step);
    const ridden = rideExercise(made.rows(), made.home);
    return ridden.pieces.map(({ gait, gaitSupplied }, index) =>
      [gait, gaitSupplied ? "supplied" : "", Number(ridden.timed.path.pieces[index]?.length.toFixed(2))]
        .filter((part) => part !== "")
        .join(" "),
    );
  };
  const go = (made: RideBuilder, step: string, gait: ValueOf<"gait">, timing?: ValueOf<"timing">) =>
    made.action(step, "go at", { gait: supplied(gait) }, timing ? timed(timing) : {});
  const ride = (made: RideBuilder, step: string) =>
    made.action(step, "ride", { figure: supplied("straight"), size: metres(10) });

  test.each<[string, (made: RideBuilder, step: string) => void, string[]]>([
    ["none said: the walk, supplied", (made, step) => void ride(made, step), ["walk supplied 10"]],
    ["said after the figure: of the figure", (made, step) => [ride(made, step), go(made, step, "trot")], ["trot 10"]],
    [
      "between two figures: of the second",
      (made, step) => [go(made, step, "trot"), ride(made, step), go(made, step, "canter"), ride(made, step)],
      ["trot 10", "canter 10"],
    ],
    [
      "halt said last: then it stands",
      (made, step) => [go(made, step, "trot"), ride(made, step), go(made, step, "halt")],
      ["trot 10", "halt 0"],
    ],
    [
      "at a quarter of the way",
      (made, step) => [go(made, step, "walk"), go(made, step, "trot", { is: "at", over: 1, of: 4 }), ride(made, step)],
      ["walk 2.5", "trot 7.5"],
    ],
    [
      "after the step: of the next",
      (made, step) => [go(made, step, "walk"), ride(made, step), go(made, step, "trot", { is: "after" })],
      ["walk 10"],
    ],
  ])("%s", (_, build, pieces) => {
    expect(gaits(build)).toEqual(pieces);
  });

  test("[R20] a horse that was measured goes at its own speed", () => {
    const made = new RideBuilder({ width: 100, length: 100 });
    const step = made.figure("on", "straight", { size: metres(30) });
    made.action(step, "go at", { gait: supplied("trot"), pace: supplied("working") });
    const seconds = (gaitSpeeds: { gait: "trot"; pace: "working"; speed: number; strideLength: number | null }[]) =>
      rideExercise(made.rows(), made.home, { gaitSpeeds });
    expect(seconds([]).timed.duration).toBeCloseTo(30 / 3.61, 9);
    const own = seconds([{ gait: "trot", pace: "working", speed: 3, strideLength: 2.5 }]);
    expect([own.timed.duration, own.strides]).toEqual([expect.closeTo(10, 9), expect.closeTo(12, 9)]);
  });
});

test("a lap cut in two steps takes as long and is as long as the lap", () => {
  const ring = (laps: number[]) => {
    const made = new RideBuilder({ width: 40, length: 40 });
    made.station("the well", 0, 0);
    for (const [index, n] of laps.entries())
      made.figure(`part ${index}`, "circle", { turn: LEFT, size: metres(14), about: at("the well"), laps: times(n) });
    const ridden = rideExercise(made.rows(), made.home);
    const own = laps.reduce((sum, _, stage) => sum + ownMetres(ridden, stage), 0);
    return [own, ridden.timed.duration];
  };
  const whole = ring([1]);
  expect(whole[0]).toBeCloseTo(Math.PI * 14, 9);
  for (const parts of [
    [0.5, 0.5],
    [0.25, 0.5, 0.25],
    [1 / 3, 2 / 3],
  ]) {
    const cut = ring(parts);
    expect(cut[0]).toBeCloseTo(whole[0] ?? 0, 2);
    expect(cut[1]).toBeCloseTo(whole[1] ?? 0, 2);
  }
  expect(whole[1]).toBeGreaterThan((Math.PI * 14) / WALK);
});
