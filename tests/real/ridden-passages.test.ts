/** tests/real/ridden-passages.test.ts - the published passages as they are ridden: Xenophon's ring, and the sabre of the
 *  US drill. Sources as in xenophon-7.test.ts and us-drill-782.test.ts. */
import { expect, test } from "vitest";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { idOf } from "../drill/build-rows.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { expectWhole, laneWords } from "../ride/rides.ts";
import { textOf } from "./source-texts.ts";
import { usDrillModel } from "./us-drill-model.ts";
import { xenophonModel } from "./xenophon-model.ts";

describeWithCheckData("Xenophon, On Horsemanship 7.13–17, ridden", (path) => {
  const greek = textOf(path("texts", "xenophon", "xen.opuscula_gk.xml"), ({ title }) => title === "Περὶ Ἱππικῆς");
  const english = textOf(path("texts", "xenophon", "xen.opuscula_eng.xml"), ({ title }) =>
    title.endsWith("Horsemanship"),
  );
  const { rows, exercise, pede, changing } = xenophonModel(greek, english);
  const figures = (choice: [string, string][]) => {
    const ridden = rideExercise(rows, exercise, { choice: new Map(choice) });
    expectWhole(ridden);
    expect(ridden.stages.flatMap(({ refusal }) => refusal ?? [])).toEqual([]);
    return ridden.stages.map(
      ({ pieces, mirrored }) => `${ridden.pieces[pieces.to - 1]?.figure}${mirrored ? ", mirrored" : ""}`,
    );
  };

  test("unsettled it is shown as a circle, on both reins, and then the oblong; and says so", () => {
    expect(figures([])).toEqual(["circle", "circle, mirrored", "oblong"]);
    const { supplied, ground } = rideExercise(rows, exercise, {});
    expect(supplied.filter((sentence) => sentence.startsWith("†")).length).toBe(3);
    expect([ground.width, ground.length]).toEqual([20, 60]);
  });

  test("a fetter of two loops is ridden as a figure of eight, begun with its other loop", () => {
    const eight: [string, string][] = [
      [pede, idOf("a figure of eight")],
      [changing, idOf("to the other loop")],
    ];
    expect(figures(eight)).toEqual(["figure of eight", "figure of eight, mirrored", "figure of eight"]);
  });

  test("neither size nor gait is in the passage: both are supplied", () => {
    const { supplied } = rideExercise(rows, exercise, {});
    expect(supplied).toContain("The text does not say at what gait the horse goes; walk is supplied.");
    expect(supplied.some((sentence) => sentence.includes("how large it is"))).toBe(true);
  });
});

describeWithCheckData("US Infantry Drill Regulations 782–785, done", (path) => {
  const text = textOf(path("texts", "us-drill-1911", "20866-8.txt"), () => true);
  const { rows, exercises } = usDrillModel(text);

  test.each(["on foot", "mounted"] as const)("%s: draw sabre stands in its place, act after act", (way) => {
    const ridden = rideExercise(rows, exercises.draw, { way });
    expectWhole(ridden);
    expect(ridden.metres).toBe(0);
    expect(ridden.pieces.every(({ gait }) => gait === "halt")).toBe(true);
    expect(ridden.stages.at(-1)?.after.objects[0]?.grip.right).toEqual({ is: "known", value: "hilt" });
    expect(laneWords(ridden, "right hand").some((words) => words.startsWith("something: sabre by the hilt"))).toBe(
      true,
    );
  });

  test("every exercise of the four paragraphs can be followed, either way, and mirrored", () => {
    for (const exercise of Object.values(exercises))
      for (const way of ["on foot", "mounted"] as const)
        for (const rein of ["as it is", "on the other rein"] as const)
          expectWhole(rideExercise(rows, exercise, { way, rein }));
  });
});
