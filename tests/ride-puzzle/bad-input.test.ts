/** tests/ride-puzzle/bad-input.test.ts - bad rows of cruxes: named, placed, and counted around. */
import { describe, expect, test } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { answerDecide, type DecideAsk, exercisePuzzle, type Problem, whyNot } from "../../shared/ride/puzzle/index.ts";
import { held, idOf, slotAt, supplied, under } from "../drill/build-rows.ts";
import { LEFT, metres, RideBuilder } from "../ride/build-ride.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };

/** One circle whose size is in the crux "size"; other cruxes are made by the test. */
class Sized extends RideBuilder {
  readonly circle: string;

  constructor(sizes: Record<string, number>, fields: { confidence?: string; arises?: string } = {}) {
    super({ width: 20, length: 40, trackOffset: 1 });
    this.crux("size", this.home, {
      arisesWhen: fields.arises === undefined ? [] : [condition(fields.arises, `${fields.arises} one`)],
    });
    const step = this.step("round", this.home);
    this.circle = this.action(step, "ride", {
      figure: supplied("circle" as const),
      turn: LEFT,
      size: held("size"),
    });
    for (const [name, size] of Object.entries(sizes))
      this.reading(name, idOf("size"), {
        values: [{ at: slotAt(this.circle, "size"), value: metres(size) }],
        confidence: fields.confidence ?? null,
      });
  }

  weighed(rows: Rows = this.rows()) {
    return exercisePuzzle(rows, [this.home]);
  }

  problems(): Problem[] {
    return this.weighed().problems;
  }
}

const condition = (crux: string, ...readings: string[]) => ({
  is: "reading" as const,
  crux: idOf(crux),
  readings: readings.map(idOf),
});

describe("[P8] what is wrong is named, placed, and stops nothing", () => {
  test.each<[name: string, make: () => Sized, code: Problem["code"], place: string, words: RegExp, holding: string]>([
    [
      "a crux with one reading",
      () => new Sized({ small: 8 }),
      "crux_with_one_reading",
      "size",
      /“size” has only one reading, “small”/,
      "1",
    ],
    ["a crux without readings", () => new Sized({}), "crux_without_readings", "size", /“size” has no reading yet/, "1"],
    [
      "readings of equal effect",
      () => new Sized({ small: 8, wee: 8, large: 16 }),
      "readings_of_equal_effect",
      "size",
      /“small” and “wee” of “size” do the same/,
      "2",
    ],
    [
      "a slot of a step that is gone",
      () => {
        const made = new Sized({ small: 8, large: 16 });
        made.reading("odd", idOf("size"), {
          values: [{ at: slotAt(idOf("nowhere"), "size"), value: metres(3) }],
        });
        return made;
      },
      "slot_gone",
      "odd",
      /“odd” of “size” says something of an act \(“size”\) that is no longer there/,
      "3",
    ],
    [
      "a slot that is in no crux any more",
      () => {
        const made = new Sized({ small: 8, large: 16 });
        made.reading("odd", idOf("size"), { values: [{ at: slotAt(made.circle, "turn"), value: LEFT }] });
        return made;
      },
      "slot_gone",
      "odd",
      /no longer asked/,
      "3",
    ],
    [
      "two owners of one slot",
      () => {
        const made = new Sized({ small: 8, large: 16 });
        made.crux("other", made.home);
        for (const name of ["other one", "other two"])
          made.reading(name, idOf("other"), { values: [{ at: slotAt(made.circle, "size"), value: metres(10) }] });
        return made;
      },
      "slot_owned_twice",
      "size",
      /both speak of an act \(“size”\)/,
      "2",
    ],
    [
      "a circle among conditions",
      () => {
        const made = new Sized({ small: 8, large: 16 }, { arises: "other" });
        made.crux("other", made.home, { arisesWhen: [condition("size", "small")] });
        for (const name of ["other one", "other two"]) made.reading(name, idOf("other"));
        return made;
      },
      "condition_circle",
      "size",
      /“size” arises under “other”, and that leads back to “size”/,
      "2",
    ],
    [
      "a condition on what is gone",
      () => new Sized({ small: 8, large: 16 }, { arises: "other" }),
      "condition_unknown",
      "size",
      /another crux that is no longer there/,
      "2",
    ],
    [
      "a confidence for one reading alone",
      () => {
        const made = new Sized({ small: 8 }, { confidence: "0.6" });
        made.reading("large", idOf("size"), { values: [{ at: slotAt(made.circle, "size"), value: metres(16) }] });
        return made;
      },
      "confidence_missing",
      "size",
      /“large” has none/,
      "2",
    ],
    [
      "confidences over one",
      () => new Sized({ small: 8, large: 16 }, { confidence: "0.6" }),
      "confidence_over_one",
      "size",
      /come to more than 1/,
      "2",
    ],
  ])("%s", (_name, make, code, place, words, holding) => {
    const made = make();
    const weighed = made.weighed();
    const found = weighed.problems.find((problem) => problem.code === code);
    expect(weighed.problems.map((problem) => problem.code)).toContain(code);
    expect(found?.sentence).toMatch(words);
    expect([idOf(place), idOf("other")]).toContain(found?.id);
    expect(answerDecide(weighed, ASK)).toMatchObject({ exact: true, holding });
    expect(whyNot(weighed, ASK, null).sentence).toMatch(/nothing is in the way/);
  });

  test("every reading ruled out: nothing holds, and that is said", () => {
    const made = new Sized({});
    for (const name of ["small", "large"])
      made.reading(name, idOf("size"), { status: { is: "ruled out", on: "2026-01-01", sitting: null, reason: "no" } });
    const weighed = made.weighed();
    expect(weighed.problems.map(({ code }) => code)).toContain("all_readings_ruled_out");
    expect(answerDecide(weighed, ASK)).toMatchObject({ holding: "0", all: "0" });
    expect(whyNot(weighed, ASK, null).sentence).toMatch(/^Nothing holds as it stands/);
  });

  test("a reading that requires what is not there is never taken", () => {
    const made = new Sized({ small: 8 });
    made.reading("large", idOf("size"), { requires: [condition("gone", "gone one")] });
    expect(answerDecide(made.weighed(), ASK)).toMatchObject({ holding: "1", all: "1" });
  });

  test("a guard on a crux that is gone leaves its step out, as in the ride", () => {
    const made = new Sized({ small: 8, large: 16 });
    const step = made.step("never", made.home, { guard: under("gone", "gone one") });
    made.action(step, "ride", { figure: supplied("circle" as const), size: metres(80) });
    expect(answerDecide(made.weighed(), ASK).holding).toBe("2");
  });

  test("an exercise that is not there is a mistake of the caller", () => {
    expect(() => exercisePuzzle(new Sized({ small: 8 }).rows(), ["nowhere"])).toThrow(RangeError);
    expect(() => exercisePuzzle(new Sized({ small: 8 }).rows(), [])).toThrow("At least one exercise");
  });
});
