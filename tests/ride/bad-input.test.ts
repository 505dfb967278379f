/** tests/ride/bad-input.test.ts - what cannot be ridden: refused with its words, and the ride goes on; nothing throws. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { z } from "zod";
import { type Act, VERB_NAMES, VERBS } from "../../schema/act.ts";
import { VALUES, type ValueKind } from "../../schema/values.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { arbitraryFrom } from "../kit/arbitrary-from.ts";
import { at, LEFT, metres, RideBuilder, times } from "./build-ride.ts";
import { expectWhole } from "./rides.ts";

type Slots = Parameters<RideBuilder["figure"]>[2];
const about = (of: number, spread: number) => supplied({ is: "about" as const, of, spread });

describe("[R13] one step refused, the next ridden", () => {
  test.each<[string, string, Slots, string]>([
    ["a circle of 0 m", "circle", { size: metres(0), turn: LEFT }, "A size from 0.001 to 100000 m was expected"],
    ["a circle below nought", "circle", { size: metres(-4) }, "but it is -4 m"],
    ["a circle larger than the ground", "circle", { size: metres(90) }, "It does not fit"],
    ["half a figure of eight", "figure of eight", { laps: times(0.5) }, "A whole number from 1 to 10000 was expected"],
    ["about so much that it is nothing", "volte", { size: about(0, 3) }, "but it is 0 m"],
    [
      "laps and an amount that differ",
      "circle",
      { laps: times(2), amount: supplied("half") },
      "One amount was expected",
    ],
    [
      "along the wall to the middle",
      "along the wall",
      { toward: at("the well") },
      "A station at the wall was expected",
    ],
  ])("%s", (_, figure, slots, words) => {
    const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1 });
    made.station("the well", 0, 0);
    made.figure("wrong", figure as "circle", slots);
    made.figure("right", "straight", { size: metres(5) });
    const ridden = rideExercise(made.rows(), made.home);
    expect(ridden.stages[0]?.refusal).toContain(words);
    expect(ridden.stages[0]?.refused.length).toBe(1);
    expect(ridden.stages[0]?.pieces).toEqual({ from: 0, to: 0 });
    expect(ridden.stages[1]).toMatchObject({ refusal: null, pieces: { from: 0, to: 1 } });
    expectWhole(ridden);
  });
});

test("a place the ground does not have is left out, and said to be", () => {
  const made = new RideBuilder({ width: 20, length: 40 });
  made.figure("to nowhere", "straight", { toward: supplied({ is: "words", words: "the old mill" }), size: metres(4) });
  const ridden = rideExercise(made.rows(), made.home);
  expect(ridden.metres).toBeCloseTo(4, 9);
  expect(ridden.supplied.some((sentence) => sentence.includes("“the old mill” has no place on this ground"))).toBe(
    true,
  );
});

test("words that name a station find it", () => {
  const made = new RideBuilder({ width: 20, length: 40 });
  made.station("the oak", 0, 10);
  made.figure("to the oak", "straight", { toward: supplied({ is: "words", words: "The Oak" }) });
  expect(rideExercise(made.rows(), made.home).metres).toBeCloseTo(30, 9);
});

test("a ground that cannot be is replaced, with the reason", () => {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset: 30 });
  made.figure("on", "straight", { size: metres(5) });
  const ridden = rideExercise(made.rows(), made.home);
  expect(ridden.groundSupplied).toBe(true);
  expect(ridden.supplied[0]).toMatch(/^the ground cannot be ridden on: The track lies from 0 to less than 10 m inside/);
});

test("a figure that is not known is refused, and what follows is ridden", () => {
  const made = new RideBuilder({ width: 20, length: 40 });
  made.action(made.step("something", made.home), "ride", { how: supplied("finely") });
  made.figure("on", "straight", { size: metres(5) });
  const ridden = rideExercise(made.rows(), made.home);
  expect(ridden.stages[0]?.refusal).toMatch(/^What is ridden is not known/);
  expect(ridden.metres).toBeCloseTo(5, 9);
});

test("an exercise or a reading that is not there is a mistake of the caller", () => {
  const made = new RideBuilder();
  expect(() => rideExercise(made.rows(), idOf("nobody"))).toThrow(RangeError);
  expect(() => rideExercise(made.rows(), made.home, { choice: [{ crux: idOf("a"), reading: idOf("b") }] })).toThrow(
    RangeError,
  );
});

/** Any value of a kind as its schema declares it; stations and objects are those that are there. */
function anyValue(kind: ValueKind): fc.Arbitrary<unknown> {
  if (kind === "object") return fc.constantFrom(idOf("spear"), idOf("reins"));
  if (kind !== "place") return arbitraryFrom(VALUES[kind] as z.ZodType);
  return fc.constantFrom("the gate", "the well", "the oak").map((name) => ({ is: "station", station: idOf(name) }));
}

const anyAct: fc.Arbitrary<Act> = fc.constantFrom(...VERB_NAMES).chain((verb) => {
  const slots = Object.entries(VERBS[verb].slots as Record<string, ValueKind>).map(([name, kind]) =>
    fc.option(anyValue(kind), { nil: undefined }).map((held) => [name, held] as const),
  );
  return fc.tuple(...slots).map((held) => {
    const said = held.flatMap(([name, value]) => (value === undefined ? [] : [[name, supplied(value)] as const]));
    return { verb, slots: Object.fromEntries(said) } as Act;
  });
});

test("any acts with any timing make a whole ride: one path, moments in their stages, and nothing throws", () => {
  const timing = fc.option(arbitraryFrom(VALUES.timing), { nil: undefined });
  const step = fc.array(fc.tuple(anyAct, timing), { maxLength: 4 });
  fc.assert(
    fc.property(
      fc.array(step, { maxLength: 4 }),
      fc.constantFrom("mounted", "on foot"),
      fc.boolean(),
      (steps, way, other) => {
        const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1 });
        made.station("the gate", 0, -20);
        made.station("the well", 0, 0);
        made.station("the oak", 9, 3);
        made.object("spear", "shaft");
        made.object("reins", "reins");
        for (const [index, acts] of steps.entries()) {
          const id = made.step(`step ${index}`, made.home);
          for (const [act, when] of acts)
            made.action(id, act.verb, act.slots as never, when === undefined ? {} : { timing: supplied(when) });
        }
        const ridden = rideExercise(made.rows(), made.home, {
          way: way as "mounted",
          rein: other ? "on the other rein" : "as it is",
        });
        expectWhole(ridden);
        expect(ridden.stages.length).toBe(steps.length);
        expect(Number.isFinite(ridden.timed.duration)).toBe(true);
      },
    ),
    { numRuns: 150 },
  );
});
