/** tests/ride/compare-rides.test.ts - where two rides of an exercise differ, under two readings of one crux of the invented book. */
import { describe, expect, test } from "vitest";
import { compareRides } from "../../shared/ride/compare-rides.ts";
import { rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { demoRows } from "./rides.ts";

const { rows, exercises } = demoRows();
type Name = keyof typeof exercises;

function read(exercise: Name, title: string) {
  const found = rows.readings?.find(({ value }) => value.title.startsWith(title))?.value;
  if (!found) throw new Error(`The invented book has no reading “${title}”.`);
  return rideWithContext(rows, exercises[exercise], { choice: [{ crux: found.crux, reading: found.id }] }).ridden;
}
const compared = (exercise: Name, first: string, second: string) =>
  compareRides(read(exercise, first), read(exercise, second));

describe("[R36] two readings of one crux", () => {
  test.each<[Name, string, string, string]>([
    [
      "circle",
      "away from the well",
      "toward the well",
      "In the second, at step 4: horse “half turn left” (in the first “half turn right”). The line is another at step 4.",
    ],
    [
      "circle",
      "once, as in A",
      "twice, as in B",
      "In the second, at step 1: horse “twice” (in the first “once”). The line is another at step 1. The second lasts 10 s longer.",
    ],
    [
      "spears",
      "he leaves the wall to the left",
      "the spear is lowered to the left",
      "In the second, at step 4: lesser spear “point forward left (10 o’clock)” (in the first “point forward”). The line is the same.",
    ],
    [
      "knot",
      "when he comes round by the stair",
      "when he comes into the knot",
      "They differ in nothing that is ridden.",
    ],
    [
      "change",
      "he raises it",
      "he washes it (lavat)",
      "The second leaves out step 2. They differ at steps 3, 4, 5 and 7 too. The line is another at steps 2, 3, 4 and 7. The second lasts 1 s less.",
    ],
  ])("%s: %s, %s", (exercise, first, second, sentence) => {
    expect(compared(exercise, first, second).sentence).toBe(sentence);
  });

  test("the stretches are those of each ride, in the lanes that tell something else", () => {
    const { lanes, lines, sameLine } = compared("circle", "away from the well", "toward the well");
    expect(sameLine).toBe(false);
    expect(lines.first).toHaveLength(1);
    expect(lanes.map(({ lane }) => lane)).toEqual(["horse"]);
    const stage = read("circle", "away from the well").stages[lines.first[0] ?? -1];
    expect(lanes[0]?.first).toEqual({ from: stage?.from, to: stage?.to });
  });

  test("a ride differs from itself in nothing; told the other way round it is the same steps", () => {
    for (const exercise of Object.values(exercises)) {
      const { ridden } = rideWithContext(rows, exercise);
      expect(compareRides(ridden, ridden)).toEqual({
        sentence: "They differ in nothing that is ridden.",
        sameLine: true,
        lines: { first: [], second: [] },
        lanes: [],
      });
    }
    const one = compared("spears", "under his thigh", "beneath his arm");
    const other = compared("spears", "beneath his arm", "under his thigh");
    expect(other.lanes.map(({ lane, first, second }) => ({ lane, first: second, second: first }))).toEqual(one.lanes);
    expect(other.sameLine).toBe(one.sameLine);
  });
});
