/** tests/ride/stages.test.ts - which stages there are: agains unrolled, exceptions, movements, advice, what cannot be told. */
import { describe, expect, test } from "vitest";
import type { Again } from "../../schema/exercise.ts";
import { rideExercise, rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RIGHT, RideBuilder, timed, times } from "./build-ride.ts";
import { expectWhole, ownMetres } from "./rides.ts";

const again = (of: Again["of"], rest: Partial<Again> = {}) => ({
  is: "again" as const,
  of,
  manner: "as it is" as const,
  except: [],
  ...rest,
});
const elements = (from: string, to = from): Again["of"] => ({ is: "elements", from: idOf(from), to: idOf(to) });

/** On a ground of 40 m by 40 m: a circle of 10 m to the left, a walk of 12 m straight on, with a spear. */
function book() {
  const made = new RideBuilder({ width: 40, length: 40, trackOffset: 2 });
  made.station("the gate", 0, -20);
  made.station("the oak", 18, 0, "the elm");
  made.station("the elm", -18, 0, "the oak");
  made.object("spear", "shaft");
  const circle = made.figure("circle", "circle", { turn: LEFT, size: metres(10), from: at("the gate") });
  made.action(circle, "take", { object: supplied(idOf("spear")), hand: supplied("right") });
  made.figure("on", "straight", { size: metres(12) });
  return made;
}

const told = (made: RideBuilder) =>
  rideExercise(made.rows(), made.home).stages.map(
    ({ number, source, round, mirrored, refusal }) =>
      `${number} ${Object.entries({ circle: idOf("circle"), on: idOf("on") }).find(([, id]) => id === source)?.[0] ?? "own"}` +
      `${round > 0 ? ` round ${round}` : ""}${mirrored ? " mirrored" : ""}${refusal === null ? "" : " refused"}`,
  );

describe("[R6] what is done again", () => {
  test.each<[string, Again["of"], Partial<Again>, string[]]>([
    ["one step, once where it is not said how often", elements("circle"), {}, ["3 circle round 1"]],
    [
      "three times",
      elements("circle"),
      { times: times(3) },
      ["3 circle round 1", "3 circle round 2", "3 circle round 3"],
    ],
    [
      "a range, mirrored",
      elements("circle", "on"),
      { manner: "mirrored" },
      ["3 circle round 1 mirrored", "3 on round 1 mirrored"],
    ],
    ["on the other rein", elements("on"), { manner: "on the other rein" }, ["3 on round 1 mirrored"]],
    [
      "this exercise, itself: without end",
      { is: "exercise", exercise: idOf("a ride") },
      {},
      ["3 circle round 1", "3 on round 1", "3 own round 1 refused"],
    ],
    ["the wrong way round", elements("on", "circle"), {}, ["3 own refused"]],
    ["an exercise that was not read", { is: "exercise", exercise: idOf("another") }, {}, ["3 own refused"]],
    ["more often than can be shown", elements("circle"), { times: times(9_999) }, ["3 own refused"]],
  ])("%s", (_, of, rest, stages) => {
    const made = book();
    made.element("again", made.home, again(of, rest));
    expect(told(made)).toEqual(["1 circle", "2 on", ...stages]);
    expectWhole(rideExercise(made.rows(), made.home));
  });

  test("an again of an again is unrolled too, and mirrored twice is as it was", () => {
    const made = book();
    made.element("first", made.home, again(elements("circle"), { manner: "mirrored", times: times(2) }));
    made.element("second", made.home, again(elements("first"), { manner: "mirrored" }));
    expect(told(made).slice(2)).toEqual([
      "3 circle round 1 mirrored",
      "3 circle round 2 mirrored",
      "4 circle round 1",
      "4 circle round 1",
    ]);
  });

  test("a movement is done by its own acts", () => {
    const made = book();
    const movement = made.movement("salute");
    made.action(movement, "raise", { object: supplied(idOf("spear")), level: supplied("high") });
    made.action(movement, "lower", { object: supplied(idOf("spear")), level: supplied("low") });
    made.element("again", made.home, again({ is: "movement", movement }, { times: times(2) }));
    const ridden = rideExercise(made.rows(), made.home);
    expect(ridden.stages.slice(2).map(({ instants }) => instants.length)).toEqual([2, 2]);
    expect(ridden.stages.at(-1)?.after.objects[0]?.level).toEqual({ is: "known", value: "low" });
  });

  test("[R7] it begins where it began: a line is supplied where its end does not fit its start", () => {
    const made = book();
    made.element("again", made.home, again(elements("circle")));
    const ridden = rideExercise(made.rows(), made.home);
    // The straight has led away from the gate.
    expect(ridden.stages[2]?.joined).toBeGreaterThan(0);
    expect(ridden.supplied.some((sentence) => sentence.includes("comes to the gate"))).toBe(true);
    const fits = new RideBuilder({ width: 40, length: 40 });
    fits.figure("circle", "circle", { turn: LEFT, size: metres(10) });
    fits.element("again", fits.home, again(elements("circle"), { times: times(4) }));
    expect(rideExercise(fits.rows(), fits.home).stages.map(({ joined }) => joined)).toEqual([0, 0, 0, 0, 0]);
  });

  test.each<[string, (ids: { take: string; by: string }) => Again["except"], Again["manner"], string[]]>([
    ["nothing excepted: its own acts come last", () => [], "as it is", ["take with right", "take with left", "raise"]],
    ["left out", ({ take }) => [{ is: "without", action: take }], "as it is", ["take with left", "raise"]],
    [
      "another in its place",
      ({ take, by }) => [{ is: "instead", action: take, by }],
      "as it is",
      ["take with left", "raise"],
    ],
    [
      "in its place as it is said, though all is mirrored",
      ({ take, by }) => [{ is: "instead", action: take, by }],
      "mirrored",
      ["take with left", "raise"],
    ],
    ["mirrored", () => [], "mirrored", ["take with left", "take with left", "raise"]],
  ])("[R8] %s", (_, except, manner, expected) => {
    const made = book();
    const element = made.element("again", made.home, again(elements("circle"), { manner }));
    const by = made.action(element, "take", { object: supplied(idOf("spear")), hand: supplied("left") });
    made.action(element, "raise", { object: supplied(idOf("spear")) });
    const rows = made.rows();
    const take = rows.actions?.find(({ value }) => value.owner === idOf("circle") && value.act.verb === "take")?.value
      .id;
    const list = rows.elements?.map((row) =>
      row.value.id === element
        ? { ...row, value: { ...row.value, except: except({ take: take ?? "", by }) } as Again }
        : row,
    );
    const { context } = rideWithContext({ ...rows, elements: list ?? [] }, made.home);
    const done = context.actsOf(2).filter(({ known }) => known.verb !== "ride");
    expect(
      done.map(({ known: { verb, slots } }) =>
        slots.hand?.is === "known" ? `${verb} with ${slots.hand.value}` : verb,
      ),
    ).toEqual(expected);
  });

  test.each<[string, number, number, boolean]>([
    ["the circle is ended", 0, 1, true],
    ["the first circle is done", 0, 1, true],
    ["he begins the circle", 0, 0, true],
    ["the line is ended", 1, 1, true],
    ["the second circle is done", 1, 0.5, false],
    ["the figure is done", 1, 1, true],
    ["the turn is done", 1, 0.5, false],
    ["the bell rings", 1, 0.5, false],
  ])("[R8, R32] its own act when %s, in stage %d of what is done again, at %d of it", (event, stage, part, said) => {
    const made = book();
    const element = made.element("again", made.home, again(elements("circle", "on"), { times: times(2) }));
    made.action(element, "raise", { object: supplied(idOf("spear")) }, timed({ is: "when", event }));
    const { ridden, context } = rideWithContext(made.rows(), made.home);
    expectWhole(ridden);
    const raised = ridden.stages.flatMap((one, index) =>
      one.instants
        .filter(({ actions }) => actions.some((id) => context.act(index, id)?.known.verb === "raise"))
        .map(({ seconds, timed: isSaid }) => {
          const first = ridden.timed.times[one.pieces.from + one.joined] ?? one.from;
          return [index, (seconds - first) / (one.to - first), isSaid];
        }),
    );
    // Two steps, then the run of two, twice.
    expect(raised).toEqual([2 + stage, 4 + stage].map((at_) => [at_, expect.closeTo(part, 6), said]));
  });

  test("[R10] stations answer to their partners; one without is ridden to itself, and noted", () => {
    const made = new RideBuilder({ width: 40, length: 40 });
    made.station("the oak", 15, 0, "the elm");
    made.station("the elm", -15, 0, "the oak");
    made.station("the stone", 10, 10);
    made.station("the well", 0, 5);
    made.figure("to the oak", "straight", { toward: at("the oak") });
    made.figure("to the stone", "straight", { toward: at("the stone") });
    made.figure("to the well", "straight", { toward: at("the well") });
    const ridden = rideExercise(made.rows(), made.home, { rein: "on the other rein" });
    expect(ridden.stages.map(({ withoutPartner }) => withoutPartner)).toEqual([[], [idOf("the stone")], []]);
    expect(ridden.lanes[0]?.spans.map(({ words }) => words)).toContain("straight on, toward the elm");
  });
});

test("[R5] advice is no stage", () => {
  const made = book();
  made.element("advice", made.home, { is: "advice", demand: "Ride it round", from: null, to: null, rule: null });
  expect(told(made)).toEqual(["1 circle", "2 on"]);
});

test("[R22] where nothing is ridden the horse stands, or goes on as it went", () => {
  const made = new RideBuilder({ width: 40, length: 40, trackOffset: 2 });
  made.object("spear", "shaft");
  const handle = (name: string) =>
    made.action(made.step(name, made.home), "raise", { object: supplied(idOf("spear")) });
  handle("before anything");
  made.figure("round", "circle", { turn: RIGHT, size: metres(12) });
  handle("on the circle");
  made.figure("out", "along the wall", { turn: LEFT, size: metres(20) });
  handle("on the track");
  made.figure("stop", "halt");
  handle("standing");
  const ridden = rideExercise(made.rows(), made.home);
  expectWhole(ridden);
  const walk = 1.73 * 2;
  expect([0, 2, 4, 6].map((stage) => Number(ownMetres(ridden, stage).toFixed(6)))).toEqual([0, walk, walk, 0]);
  expect([0, 2, 4, 6].map((stage) => ridden.pieces.find((piece) => piece.stage === stage)?.figure)).toEqual([
    null,
    "circle",
    "along the wall",
    null,
  ]);
  for (const stage of [0, 2, 4, 6]) {
    const { from = 0, to = 0 } = ridden.stages[stage] ?? {};
    expect(to - from).toBeCloseTo(2, 9);
  }
});

test("an exercise with nothing in it stands for a moment, on a ground that is supplied", () => {
  const made = new RideBuilder();
  const ridden = rideExercise(made.rows(), made.home);
  expect(ridden).toMatchObject({ stages: [], lanes: [], metres: 0, groundSupplied: true });
  expect(ridden.timed.duration).toBe(2);
  expect(ridden.supplied).toEqual([
    "No ground is drawn for this exercise: a ground of 20 m by 60 m with its usual letters is supplied.",
  ]);
});
