/** tests/ride/demo.test.ts - the invented book's exercises ridden: stages, lengths, joins, what is said to be supplied. */
import { describe, expect, test } from "vitest";
import { poseAt, shaftAt, stageAt, stateAt } from "../../shared/ride/moments.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { demoRows, expectWhole, laneWords, ownMetres } from "./rides.ts";

const { rows, exercises } = demoRows();
const ride = (exercise: string) => rideExercise(rows, exercise, {});

describe("Of the circle about the well", () => {
  const ridden = ride(exercises.circle);

  test("[R1] has a stage for each of its seven steps, all of them ridden", () => {
    expect(ridden.stages.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(ridden.stages.flatMap(({ refusal }) => refusal ?? [])).toEqual([]);
    expectWhole(ridden);
  });

  test("[R14] each lap of its circle of sixteen paces is π times 12.8 m", () => {
    for (const stage of [0, 1, 2, 4]) expect(ownMetres(ridden, stage)).toBeCloseTo(Math.PI * 12.8, 9);
    // From the gate's side of the well, which lies at six o'clock, to beside the elm: the well on the right, so by a quarter.
    expect(ownMetres(ridden, 5)).toBeLessThan((Math.PI * 12.8) / 2 + 25);
  });

  test("[R18] begins at the gate heading up the court, and comes onto the circle by a supplied line", () => {
    expect(poseAt(ridden, 0)).toEqual({ x: 0, y: -20, heading: 9_000 });
    expect(ridden.stages.map(({ joined }) => joined > 0)).toEqual([true, false, false, false, false, false, false]);
    expect(ridden.supplied).toContain(
      "The text does not say how the horse comes to the circle about the well: a line of 14.83 m is supplied.",
    );
  });

  test("[R19] goes at the canter that stands throughout, faster in the third round", () => {
    const speeds = [0, 1, 2, 4].map((stage) => ridden.pieces.findLast((piece) => piece.stage === stage)?.speed);
    expect(speeds).toEqual([3.91, 3.91, 4.9, 3.91]);
    expect(ridden.stages[1]).toMatchObject({
      to: expect.closeTo((ridden.stages[1]?.from ?? 0) + (Math.PI * 12.8) / 3.91, 6),
    });
  });

  test("[R9] the greeting is written out act by act, two seconds each, standing", () => {
    const stage = ridden.stages[6];
    expect(stage?.to).toBeCloseTo((stage?.from ?? 0) + 8, 9);
    expect(stage?.instants.length).toBe(6);
    expect(stage?.instants.every(({ piece }) => piece === null)).toBe(true);
  });

  test("the moments of it: stage, state and shaft", () => {
    expect(stageAt(ridden, 15)).toBe(1);
    // By the opening words: reins and spear are where they begin, from the first moment.
    expect(stateAt(ridden, 0)?.reins).toEqual({ is: "known", value: "left hand" });
    expect(stateAt(ridden, 15)?.reins).toEqual({ is: "known", value: "left hand" });
    // Before the spear is by the boot nobody has said where it points.
    expect(shaftAt(ridden, 1)).toBeNull();
    const [pose, shaft] = [poseAt(ridden, 13), shaftAt(ridden, 13)];
    if (shaft === null) throw new Error("By the boot, at the balance, the shaft is known.");
    const metres = Math.hypot(shaft.point.x - shaft.butt.x, shaft.point.y - shaft.butt.y);
    expect(metres).toBeCloseTo(2, 2);
    expect(Math.hypot(shaft.point.x - pose.x, shaft.point.y - pose.y)).toBeLessThan(2);
  });

  test("the text never says the lead, and the lane does not say there is none while he canters", () => {
    expect(laneWords(ridden, "lead")[0]).toBe("not said: the text does not say");
    expect(laneWords(ridden, "lead").at(-1)).toBe("nothing: no lead at this gait");
  });
});

describe("Of the change upon the wall", () => {
  const ridden = ride(exercises.change);

  test("[R6] has its again unrolled, mirrored, the elm in the place of the trough", () => {
    expect(ridden.stages.map(({ number, mirrored }) => `${number}${mirrored ? " mirrored" : ""}`)).toEqual([
      ...["1", "2", "3", "4", "5", "6"],
      ...Array.from({ length: 5 }, () => "7 mirrored"),
      ...["8", "9"],
    ]);
    expect(ridden.stages.flatMap(({ refusal }) => refusal ?? [])).toEqual([]);
    expect(laneWords(ridden, "horse")).toContain(
      "something: along the wall, on the right rein, from the gate, toward the elm, “the wall upon his right”",
    );
    expectWhole(ridden);
  });

  test("[R8] the raising is left out under the elm, and what is excepted only in words is said", () => {
    const raises = ridden.stages.map(({ instants }) => instants.length);
    expect([raises[1], raises[7]]).toEqual([2, 1]);
    expect(ridden.supplied).toContain(
      "“The same by the other wall” has an exception that is only in words and is not ridden: “The elm takes the place of the trough.”",
    );
  });

  test("[R2] shows one reading of what is not settled, and says so; the other when it is chosen", () => {
    expect(ridden.supplied[0]).toBe(
      "† The other hand, or the other side: shown as ‘to the other hand; the reins change too’; not settled.",
    );
    const [crux, reading] = readingCalled("to the other side, in the same hand");
    const other = rideExercise(rows, exercises.change, { choice: new Map([[crux, reading]]) });
    expect(other.supplied.some((sentence) => sentence.startsWith("†"))).toBe(false);
    expect(other.stages[3]?.after.reins).toEqual({ is: "known", value: "left hand" });
    expect(ridden.stages[3]?.after.reins).toEqual({ is: "known", value: "right hand" });
  });

  test("[R10] by the other wall everything is on the other side, and takes as long", () => {
    for (const stage of [2, 3]) {
      const [here, there] = [ridden.stages[stage], ridden.stages[stage + 6]];
      expect((there?.to ?? 0) - (there?.from ?? 0)).toBeCloseTo((here?.to ?? 0) - (here?.from ?? 0), 6);
      const [end, mirrored] = [poseAt(ridden, here?.to ?? 0), poseAt(ridden, there?.to ?? 0)];
      expect(mirrored.x).toBeCloseTo(-end.x, 3);
      expect(mirrored.y).toBeCloseTo(end.y, 3);
    }
  });
});

test("[R5] Of the spear carried and turned: what is not written out takes no path and leaves nothing known", () => {
  const ridden = ride(exercises.turned);
  expect(ridden.stages.map(({ is, from, to }) => [is, to > from])).toEqual([
    ["step", true],
    ["untreated", false],
  ]);
  expect(ridden.metres).toBeCloseTo(20, 9);
  expect(ridden.stages[1]?.after.reins).toEqual({ is: "unknown" });
  expect(ridden.treated).toMatch(/^Only part of the exercise is treated/);
  expectWhole(ridden);
});

test("the same rows give the same ride to the byte, in whatever order they come", () => {
  const backward = Object.fromEntries(Object.entries(rows).map(([kind, list]) => [kind, [...(list ?? [])].reverse()]));
  for (const exercise of Object.values(exercises))
    expect(JSON.stringify(ride(exercise))).toBe(JSON.stringify(rideExercise(backward, exercise, {})));
});

test("on foot the horse is taken away and the rider walks", () => {
  const ridden = rideExercise(rows, exercises.circle, { way: "on foot" });
  expect(new Set(ridden.pieces.map(({ gait, speed }) => `${gait} ${speed}`))).toEqual(new Set(["walk 1.4", "halt 0"]));
  expect(ridden.strides).toBeNull();
  expect(ridden.lanes.map(({ key }) => key).slice(0, 3)).toEqual(["horse", "left hand", "right hand"]);
  expect(ridden.stages[0]?.before.reins).toEqual({ is: "known", value: "away" });
  expectWhole(ridden);
});

test.each(Object.entries(exercises))("[R39] on foot no reins are held, judged or shown in %s", (_name, exercise) => {
  const ridden = rideExercise(rows, exercise, { way: "on foot" });
  const hands = ridden.lanes.filter(({ key }) => key.endsWith(" hand"));
  expect(hands.flatMap(({ spans }) => spans.filter(({ words }) => /\breins?\b/u.test(words)))).toEqual([]);
  expect(ridden.findings.filter(({ sentence }) => /\breins?\b/u.test(sentence.split(". ")[0] ?? ""))).toEqual([]);
  expect(ridden.supplied.filter((sentence) => sentence.startsWith("On foot “keep the reins"))).not.toEqual([]);
  expectWhole(ridden);
});

function readingCalled(title: string): [crux: string, reading: string] {
  const row = rows.readings?.find(({ value }) => value.title === title);
  if (!row) throw new RangeError(`No reading is called "${title}".`);
  return [row.value.crux, row.value.id];
}
