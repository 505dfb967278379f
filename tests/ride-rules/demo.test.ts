/** tests/ride-rules/demo.test.ts - what is found in the invented book: no false alarm, and the surprises that are real. */
import { describe, expect, test } from "vitest";
import { rideExercise, rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { findingsOf, RULES_TABLE, verdictsOf } from "../../shared/ride/rules/index.ts";
import { demoRows } from "../ride/rides.ts";

const { rows, exercises } = demoRows();

/** Findings but for remarks on supplied joins: step, rule, verdict. */
function lines(exercise: string, options = {}): string[] {
  const ridden = rideExercise(rows, exercise, options);
  return ridden.findings
    .filter(({ rule }) => rule !== "joins-shown")
    .map(({ stage, rule, verdict }) => `step ${ridden.stages[stage]?.number}: ${rule}, ${verdict}`);
}

describe("the invented book", () => {
  test("the first exercise and the one only begun have nothing in the way", () => {
    expect(lines(exercises.circle)).toEqual([]);
    expect(lines(exercises.turned)).toEqual([]);
  });

  test("in the second, given to the other hand, the point is forward on the right as the half volte bends back to the wall", () => {
    expect(lines(exercises.change)).toEqual(["step 3: own-point, broken", "step 7: own-point, broken"]);
    const [first, again] = rideExercise(rows, exercises.change).findings.filter(({ rule }) => rule === "own-point");
    expect(first?.sentence).toMatch(
      /^Step 3, late in the half volte: the horse turns right while the point of the spear is forward on the right/,
    );
    expect(first?.sentence).toContain("“brings the spear across before him”");
    expect(again?.sentence).toMatch(
      /^Step 7, where step 3 is done again, mirrored, late in the half volte: the horse turns left/,
    );
    for (const finding of [first, again]) {
      expect(finding?.reading).toMatchObject({
        cruxTitle: "The other hand, or the other side",
        lifting: [{ title: "to the other side, in the same hand" }],
      });
    }
  });

  test("given to the other side, the point is taken to be out of the way in time, and bars nothing", () => {
    const [finding] = rideExercise(rows, exercises.change).findings.filter(({ reading }) => reading !== null);
    const choice = [{ crux: finding?.reading?.crux ?? "", reading: finding?.reading?.lifting[0]?.reading ?? "" }];
    expect(lines(exercises.change, { choice })).toEqual([]);
  });

  test("[V4] every sentence is whole, quotes what is there, and stops once", () => {
    for (const exercise of Object.values(exercises)) {
      for (const { sentence, citations } of rideExercise(rows, exercise).findings) {
        expect(sentence).toMatch(/^(Step \d+|“)/);
        expect(sentence).not.toMatch(/undefined|null|NaN|\.\.|\s\s|: \./);
        for (const [, quote = ""] of sentence.matchAll(/says(?: only)? “([^”]*)”/g)) {
          const start = quote.replace(/ …$/, "");
          expect(
            citations.some((one) => one.quote.replace(/\s+/g, " ").startsWith(start)),
            quote,
          ).toBe(true);
        }
      }
    }
  });

  test("verdicts are counted for every stage, and only codes of the table are used", () => {
    const codes = new Set(RULES_TABLE.map(({ code }) => code));
    for (const exercise of Object.values(exercises)) {
      const { ridden, context } = rideWithContext(rows, exercise);
      const verdicts = verdictsOf(ridden, context);
      expect(verdicts.every(({ rule }) => codes.has(rule))).toBe(true);
      expect(verdicts.filter(({ rule }) => rule === "figure-fits")).toHaveLength(
        ridden.stages.filter(({ is }) => is !== "untreated").length,
      );
    }
  });

  test("without looking at other readings the findings are the same but for what lifts them", () => {
    const { ridden, context } = rideWithContext(rows, exercises.change);
    const plain = findingsOf(ridden, context, { compareReadings: false });
    expect(plain.map(({ id }) => id)).toEqual(findingsOf(ridden, context).map(({ id }) => id));
    expect(plain.every(({ reading }) => reading === null)).toBe(true);
  });
});
