/** tests/ride/roles.test.ts - an exercise of several roles: whose steps are whose, and who waits for whom. */
import { describe, expect, test } from "vitest";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { rideRoles } from "../../shared/ride/ride-roles.ts";
import { rolesOf } from "../../shared/ride/roles.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, metres, RideBuilder, timed } from "./build-ride.ts";
import { demoRows, expectWhole } from "./rides.ts";

const WALK = 1.73;

/** A leader who rides up past the well (20 m from the gate) and halts, and a pursuer who waits for what is said. */
function chase(cue: string | null, leaderCue: string | null = null) {
  const made = new RideBuilder({ width: 20, length: 40 });
  made.station("the gate", 0, -20);
  made.station("the well", 0, 0);
  made.object("spear", "shaft");
  const waits = (words: string | null) => (words === null ? {} : { cue: supplied(words) });
  const leads = made.step("he leads", made.home, { role: "the leader", ...waits(leaderCue) });
  made.action(leads, "ride", { figure: supplied("straight"), from: at("the gate"), size: metres(30) });
  made.action(leads, "raise", { object: supplied(idOf("spear")) }, timed({ is: "at", over: 1, of: 2 }));
  const both = made.step("both", made.home);
  made.action(both, "wait", {});
  const follows = made.step("he follows", made.home, { role: "the pursuer", ...waits(cue) });
  made.action(follows, "ride", { figure: supplied("straight"), from: at("the gate"), size: metres(10) });
  return made;
}
const numbers = (ridden: ReturnType<typeof rideExercise>) => ridden.stages.map(({ number }) => number);

describe("[R34] a rider of a role", () => {
  const made = chase(null);

  test("rides the steps of his role and those of nobody, under the numbers that are printed", () => {
    expect(numbers(rideExercise(made.rows(), made.home, { role: "the leader" }))).toEqual([1, 2]);
    expect(numbers(rideExercise(made.rows(), made.home, { role: "the pursuer" }))).toEqual([2, 3]);
    expect(numbers(rideExercise(made.rows(), made.home))).toEqual([1, 2, 3]);
  });

  test("what is done again is done again without the steps of others", () => {
    const again = chase(null);
    again.element("all of it again", again.home, {
      is: "again",
      role: "the pursuer",
      of: { is: "elements", from: idOf("he leads"), to: idOf("he follows") },
      manner: "as it is",
      except: [],
    });
    const ridden = rideExercise(again.rows(), again.home, { role: "the pursuer" });
    expect(ridden.stages.map(({ source }) => source)).toEqual(
      ["both", "he follows", "both", "he follows"].map((name) => idOf(name)),
    );
  });

  test("the roles of a drill come in its order", () => {
    expect(rolesOf([{ role: "" }, { role: "b" }, { role: "a" }, { role: "b" }])).toEqual(["b", "a"]);
  });
});

describe("[R35] a rider who waits for another", () => {
  test.each<[string, number | null]>([
    ["the leader is at the well", 20 / WALK],
    ["the leader has ended the line", 30 / WALK],
    ["the leader raises his spear", 15 / WALK],
    ["the leader begins", 0],
    ["the leader has finished", 30 / WALK + 2],
    ["the leader sneezes", null],
    ["the trumpet", null],
  ])("%s", (cue, seconds) => {
    const made = chase(cue);
    const rides = rideRoles(made.rows(), made.home, [{ role: "the leader" }, { role: "the pursuer" }]);
    for (const ride of rides) expectWhole(ride);
    const follows = rides[1]?.stages[1];
    const begins = rides[1]?.timed.times[(follows?.pieces.from ?? 0) + (follows?.joined ?? 0)];
    // He has waited two seconds with everybody, and what he waits for may be over by then.
    expect(begins).toBeCloseTo(Math.max(2, seconds ?? 2), 3);
    const waited = rides[1]?.lanes[0]?.spans.some(({ words }) => words === "waits, supplied");
    expect(waited).toBe(seconds !== null && seconds > 2);
  });

  test.each<[string, number]>([
    ["the leader has ended the line", 10],
    ["the leader has ended the first line", 10],
    ["the leader begins the second line", 10],
    ["the leader has ended the second line", 20],
  ])("a line of 10 m that the leader rides twice: %s", (cue, after) => {
    const made = new RideBuilder({ width: 20, length: 40 });
    const leads = made.step("he leads", made.home, { role: "the leader" });
    made.action(leads, "ride", { figure: supplied("straight"), size: metres(10) });
    made.element("again", made.home, {
      is: "again",
      role: "the leader",
      of: { is: "elements", from: leads, to: leads },
      manner: "as it is",
      except: [],
    });
    const follows = made.step("he follows", made.home, { role: "the pursuer", cue: supplied(cue) });
    made.action(follows, "ride", { figure: supplied("straight"), size: metres(10) });
    const [leader, pursuer] = rideRoles(made.rows(), made.home, [{ role: "the leader" }, { role: "the pursuer" }]);
    expect(leader?.metres).toBeCloseTo(20, 3);
    expect(pursuer?.timed.times[pursuer.stages[0]?.joined ?? 0]).toBeCloseTo(after / WALK, 3);
  });

  test("on the common clock: who begins later has less to wait", () => {
    const made = chase("the leader is at the well");
    const [, pursuer] = rideRoles(made.rows(), made.home, [{ role: "the leader" }, { role: "the pursuer", starts: 5 }]);
    const stage = pursuer?.stages[1];
    expect(pursuer?.timed.times[(stage?.pieces.from ?? 0) + 1]).toBeCloseTo(20 / WALK - 5, 3);
    expect(pursuer?.supplied.join()).toContain(
      "It waits for “the leader is at the well”, standing for 4.6 s, supplied.",
    );
  });

  test("two who wait for each other end all the same", () => {
    const made = chase("the leader has ended the line", "the pursuer has ended the line");
    const rides = rideRoles(made.rows(), made.home, [{ role: "the leader" }, { role: "the pursuer" }]);
    expect(rides.map((ride) => Number.isFinite(ride.timed.duration))).toEqual([true, true]);
  });

  test("an act is done when another rider does something, and a wait lasts until then", () => {
    const made = chase(null);
    const waits = made.step("and waits", made.home, { role: "the pursuer" });
    made.action(waits, "wait", { until: supplied("the leader has ended the line") });
    made.action(
      waits,
      "lower",
      { object: supplied(idOf("spear")) },
      timed({ is: "when", event: "the leader has ended the line" }),
    );
    const [, pursuer] = rideRoles(made.rows(), made.home, [{ role: "the leader" }, { role: "the pursuer" }]);
    const stage = pursuer?.stages.at(-1);
    expect(stage?.to).toBeCloseTo(30 / WALK, 3);
    expect(stage?.instants.at(-1)).toMatchObject({ timed: true, seconds: expect.closeTo(30 / WALK, 3) });
  });
});

test("[R1, R34] one role, nobody waiting: the ride of that role alone", () => {
  const { rows, exercises } = demoRows();
  for (const exercise of Object.values(exercises))
    expect(JSON.stringify(rideRoles(rows, exercise, [{ role: null }])[0])).toBe(
      JSON.stringify(rideExercise(rows, exercise)),
    );
});
