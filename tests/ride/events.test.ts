/** tests/ride/events.test.ts - things that stand only in words: coming to a station, a figure's end; what a step waits for. */
import { describe, expect, test } from "vitest";
import { isNamed } from "../../shared/ride/event-meant.ts";
import { poseAt } from "../../shared/ride/moments.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RideBuilder, timed, times } from "./build-ride.ts";
import { expectWhole, ownMetres } from "./rides.ts";

const WALK = 1.73;
const until = (event: string) => supplied({ is: "until" as const, event });

/** A ground of 20 m by 40 m, its track at the wall: the oak and the elm in the long sides, the well in the middle. */
function court() {
  const made = new RideBuilder({ width: 20, length: 40 });
  made.station("the oak", 10, 0, "the elm");
  made.station("the elm", -10, 0, "the oak");
  made.station("the gate", 0, -20);
  made.station("the well", 0, 0);
  made.object("spear", "shaft");
  return made;
}

const ride = (made: RideBuilder, options = {}) => {
  const ridden = rideExercise(made.rows(), made.home, options);
  expectWhole(ridden);
  return ridden;
};

describe("[R32] a name in words", () => {
  test.each<[string, string, boolean]>([
    ["when he is at the elm", "the elm", true],
    ["when he is at the Elm,", "the elm", true],
    ["beneath the elms", "the elm", false],
    ["until he comes to A", "A", true],
    ["a groom comes away", "A", false],
    ["when I say so", "I", false],
    ["à la porte", "porte", true],
    ["nothing", "", false],
  ])("“%s”: %s is named: %s", (words, name, named) => {
    expect(isNamed(words, name)).toBe(named);
  });
});

describe("[R32] an act that is done when something happens", () => {
  /** From the gate up the middle, 36 m, past the well after 20: seconds and whether they are said. */
  function momentOf(event: string) {
    const made = court();
    const step = made.figure("up", "straight", { from: at("the gate"), size: metres(36) });
    made.action(step, "raise", { object: supplied(idOf("spear")) }, timed({ is: "when", event }));
    const instant = ride(made).stages[0]?.instants.at(-1);
    return instant && [instant.seconds, instant.timed];
  }

  test.each<[string, number, boolean]>([
    ["he passes the well", 20 / WALK, true],
    ["the line is ended", 36 / WALK, true],
    ["he begins the line", 0, true],
    ["he is ten paces past the well", 28 / WALK, true],
    ["4 m before the well", 16 / WALK, true],
    ["twelve lengths beyond the well", 18 / WALK, false],
    ["two paces from the well", 18 / WALK, false],
    ["he passes the well the second time", 18 / WALK, false],
    ["he passes between the oak and the elm", 18 / WALK, false],
    ["he is again at the gate", 18 / WALK, false],
    ["the turn is done", 18 / WALK, false],
    ["the bell rings", 18 / WALK, false],
  ])("when %s: after %d s", (event, seconds, said) => {
    expect(momentOf(event)).toEqual([expect.closeTo(seconds, 3), said]);
  });

  test("the second time round is the second time", () => {
    const made = court();
    const step = made.figure("round", "circle", {
      turn: LEFT,
      size: metres(8),
      about: at("the well"),
      laps: times(2),
      from: at("the gate"),
    });
    made.action(
      step,
      "raise",
      { object: supplied(idOf("spear")) },
      timed({ is: "when", event: "the oak, the second time" }),
    );
    const ridden = ride(made);
    const raised = ridden.stages[0]?.instants.at(-1);
    const ends = poseAt(ridden, raised?.seconds ?? 0);
    expect([ends.x, ends.y]).toEqual([expect.closeTo(4, 3), expect.closeTo(0, 3)]);
  });

  test.each<[string, number | null]>([
    ["the first circle is done", 8 * Math.PI],
    ["the second circle is done", 16 * Math.PI],
    ["he begins a second circle", 8 * Math.PI],
    ["the third circle is done", null],
    ["the circle is done", null],
    ["the first half of the circle is done", null],
  ])("two circles, when %s: after %d m", (event, after) => {
    const made = court();
    const circle = { turn: LEFT, size: metres(8), about: at("the well") };
    const step = made.figure("twice", "circle", { ...circle, from: at("the oak") });
    made.action(step, "ride", { figure: supplied("circle"), ...circle });
    made.action(step, "raise", { object: supplied(idOf("spear")) }, timed({ is: "when", event }));
    const { stages, timed: path } = ride(made);
    const raised = stages[0]?.instants.at(-1);
    const begins = path.times[stages[0]?.joined ?? 0] ?? 0;
    expect(raised?.timed).toBe(after !== null);
    if (after !== null) expect((raised?.seconds ?? 0) - begins).toBeCloseTo(after / WALK, 3);
  });

  test("two acts that wait for the same are done together, gains first", () => {
    const made = court();
    const step = made.figure("up", "straight", { from: at("the gate"), size: metres(36) });
    const when = timed({ is: "when", event: "he passes the well" });
    const spear = supplied(idOf("spear"));
    made.action(step, "release", { object: spear, hand: supplied("right") }, when);
    made.action(step, "take", { object: spear, hand: supplied("left") }, when);
    const last = ride(made).stages[0]?.instants.at(-1);
    expect(last?.actions.length).toBe(2);
  });

  test("a gait changes there", () => {
    const made = court();
    const step = made.figure("up", "straight", { from: at("the gate"), size: metres(36) });
    made.action(step, "go at", { gait: supplied("walk") });
    made.action(step, "go at", { gait: supplied("trot") }, timed({ is: "when", event: "he passes the well" }));
    const ridden = ride(made);
    expect(ridden.pieces.map(({ gait }) => gait)).toEqual(["walk", "trot"]);
    expect(ridden.timed.path.lengths[1]).toBeCloseTo(20, 3);
  });
});

describe("[R32] a figure until something", () => {
  test("along the wall until he is at the elm ends there", () => {
    const made = court();
    const step = made.step("round", made.home);
    made.action(step, "ride", {
      figure: supplied("along the wall"),
      turn: LEFT,
      from: at("the oak"),
      laps: until("he is at the elm"),
    });
    const ridden = ride(made);
    expect(poseAt(ridden, ridden.timed.duration)).toMatchObject({ x: -10, y: 0 });
    expect(ridden.supplied.join()).toContain("“until he is at the elm” is ridden until it is at the elm");
  });

  test("a circle until the gate is round to the gate, by its timing as well", () => {
    const circle = { turn: LEFT, size: metres(8), about: at("the well"), from: at("the oak") };
    const byLaps = court();
    byLaps.figure("round", "circle", { ...circle, laps: until("the elm") });
    const byTiming = court();
    const step = byTiming.step("round", byTiming.home);
    byTiming.action(step, "ride", { figure: supplied("circle"), ...circle }, timed({ is: "until", event: "the elm" }));
    for (const made of [byLaps, byTiming]) {
      const end = poseAt(ride(made), 1_000);
      expect([end.x, end.y]).toEqual([expect.closeTo(-4, 3), expect.closeTo(0, 3)]);
    }
  });

  test("until something that no place answers to is ridden once, and said to be only in words", () => {
    const made = court();
    made.figure("round", "circle", { turn: LEFT, size: metres(8), about: at("the well"), laps: until("he is tired") });
    expect(ride(made).supplied).toContain("How often is said only in words (“until he is tired”).");
  });
});

describe("[R33] a step that waits for a station", () => {
  function then(cue: string, first: (made: RideBuilder) => void) {
    const made = court();
    first(made);
    const step = made.step("then", made.home, { cue: supplied(cue) });
    made.action(step, "ride", { figure: supplied("volte"), turn: LEFT, size: metres(6) });
    return ride(made);
  }
  const alongTheWall = (made: RideBuilder) =>
    made.figure("along", "along the wall", { turn: LEFT, from: at("the oak"), size: metres(5) });
  const roundTheWell = (made: RideBuilder) =>
    made.figure("round", "circle", {
      turn: LEFT,
      size: metres(8),
      about: at("the well"),
      from: at("the oak"),
      laps: times(1),
    });

  test("the horse goes on along the wall to it", () => {
    const ridden = then("he is at the elm", alongTheWall);
    const stage = ridden.stages[1];
    expect(stage?.joined).toBeGreaterThan(0);
    const begins = ridden.timed.times[(stage?.pieces.from ?? 0) + (stage?.joined ?? 0)] ?? 0;
    expect(poseAt(ridden, begins)).toMatchObject({ x: -10, y: 0 });
    expect(ownMetres(ridden, 1)).toBeCloseTo(6 * Math.PI, 6);
    expect(ridden.supplied.join("\n")).toMatch(
      /It is to begin when “he is at the elm”: the horse goes on to the elm, 4\d\.\d+ m, supplied\./,
    );
    expect(ridden.findings.filter(({ rule }) => rule === "begins-there")).toEqual([]);
  });

  test("it goes on round the circle that it is on", () => {
    const ridden = then("he comes to the elm", (made) => {
      roundTheWell(made);
    });
    const stage = ridden.stages[1];
    const joined = ridden.timed.path.pieces[stage?.pieces.from ?? 0];
    expect(joined).toMatchObject({ is: "arc", radius: 4 });
    expect(ownMetres(ridden, 1)).toBeCloseTo(6 * Math.PI, 6);
  });

  test("where it is there already nothing is supplied", () => {
    const ridden = then("the oak", (made) =>
      made.figure("up", "along the wall", { turn: LEFT, from: at("the gate"), toward: at("the oak") }),
    );
    expect(ridden.stages[1]?.joined).toBe(0);
  });

  test("a ride begins at the station its first step waits for", () => {
    const made = court();
    const step = made.step("first", made.home, { cue: supplied("at the elm") });
    made.action(step, "ride", { figure: supplied("along the wall"), turn: LEFT, size: metres(5) });
    const ridden = ride(made);
    expect(poseAt(ridden, 0)).toMatchObject({ x: -10, y: 0 });
    expect(ridden.supplied.join()).not.toContain("does not say where it begins");
  });

  test("[R10] on the other rein it waits for the partner", () => {
    const made = court();
    alongTheWall(made);
    const step = made.step("then", made.home, { cue: supplied("he is at the elm") });
    made.action(step, "ride", { figure: supplied("volte"), turn: LEFT, size: metres(6) });
    const ridden = ride(made, { rein: "on the other rein" });
    const stage = ridden.stages[1];
    const begins = ridden.timed.times[(stage?.pieces.from ?? 0) + (stage?.joined ?? 0)] ?? 0;
    expect(poseAt(ridden, begins)).toMatchObject({ x: 10, y: 0 });
  });

  test("words that name no station leave it as it is", () => {
    const ridden = then("the trumpet", alongTheWall);
    expect(ridden.stages[1]?.joined).toBe(0);
  });
});
