/** tests/drill/beginning.test.ts - how an exercise begins: as the standing instructions have it, and no further. */
import { describe, expect, test } from "vitest";
import type { Way } from "../../schema/guard.ts";
import { compileExercise } from "../../shared/drill/compile.ts";
import { handsFigure } from "../../shared/hands/figure.ts";
import { mirrorState } from "../../shared/ride/mirror-state.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { expectAsRidden } from "../ride-puzzle/whole-rides.ts";
import { supplied, under, WorkBuilder } from "./build-rows.ts";

const before = { timing: supplied({ is: "before" as const }) };

/** A work whose opening words put the reins in the left hand and the spear in the right, and name a gait. */
function opened(more: (book: WorkBuilder, exercise: string, spear: string) => void = () => undefined) {
  const book = new WorkBuilder("A riding book");
  const exercise = book.exercise("First exercise");
  const [spear, reins] = [book.object("spear", "shaft"), book.object("reins", "reins")];
  const hands = book.standing("How the hands begin", null);
  book.action(hands, "keep", { hand: supplied("left"), object: supplied(reins) }, before);
  book.action(hands, "keep", { hand: supplied("right"), object: supplied(spear), zone: supplied("balance") }, before);
  const gait = book.standing("At the canter", null);
  book.action(gait, "go at", { gait: supplied("canter") });
  more(book, exercise, spear);
  const turn = supplied({ to: "left" as const, viewpoint: "rider" as const });
  book.action(book.step("About", exercise), "ride", { figure: supplied("circle"), turn });
  book.action(book.step("To the left hand", exercise), "pass", { object: supplied(spear), to: supplied("left") });
  book.action(book.step("And on", exercise), "ride", { figure: supplied("circle"), turn });
  return { rows: book.rows(), exercise };
}

const sentences = (made: ReturnType<typeof opened>, way: Way = "mounted") => {
  const { begins, followed } = compileExercise(made.rows, made.exercise, { way });
  return [begins, ...followed.map(({ after }) => after)].map((state) => handsFigure(state, "").sentence.slice(2));
};

describe("[D10] how an exercise begins", () => {
  const table: [what: string, made: ReturnType<typeof opened>, begins: string][] = [
    [
      "as the work has it; a thing in one hand is in no other",
      opened(),
      "reins in the left hand, spear in the right, where the point looks and how high is not known.",
    ],
    [
      "the exercise's own instruction after that of the work",
      opened((book, exercise, spear) => {
        const low = book.standing("The point low and ahead", exercise);
        const bearing = supplied({ is: "clock" as const, hour: 12 });
        book.action(low, "carry", { object: supplied(spear), level: supplied("low"), bearing });
      }),
      "reins in the left hand, spear in the right, point forward and low.",
    ],
    [
      "what passes or turns is done in the first step, not before it",
      opened((book, exercise, spear) => {
        book.action(book.standing("Change hands", exercise), "pass", { object: supplied(spear) });
      }),
      "reins in the left hand, spear in the right, where the point looks and how high is not known.",
    ],
    [
      "under some readings only: both are possible",
      opened((book, exercise, spear) => {
        const crux = book.crux("how high", exercise);
        book.reading("raised", crux);
        book.reading("as it was", crux);
        const raised = book.standing("Raised", exercise, { guard: under("how high", "raised") });
        book.action(raised, "carry", { object: supplied(spear), level: supplied("high") }, before);
      }),
      "reins in the left hand, spear in the right, where the point looks and how high is not known.",
    ],
  ];
  test.each(table)("%s", (_what, made, begins) => {
    expect(sentences(made)[0]).toBe(begins);
  });

  test("no step inherits what is timed before; what holds throughout it still does", () => {
    const made = opened();
    expect(
      sentences(made)
        .slice(2)
        .map((words) => words.split(",")[1]),
    ).toEqual([" spear in the left", " spear in the left"]);
    const { drill } = compileExercise(made.rows, made.exercise, {});
    expect(drill.elements.map(({ actions }) => actions.map(({ verb }) => verb))).toEqual([
      ["go at", "ride"],
      ["go at", "pass"],
      ["go at", "ride"],
    ]);
    expect(drill.standing.map(({ text }) => text)).toEqual([
      "keep the reins, with the left hand; keep the spear at the balance, with the right hand",
      "canter",
    ]);
    expect(drill.objects.map(({ name }) => name)).toEqual(["spear", "reins"]);
  });

  test("on foot nothing is said of horse and reins", () => {
    expect(sentences(opened(), "on foot")[0]).toBe(
      "on foot, spear in the right hand, where the point looks and how high is not known.",
    );
  });

  test("a ride begins so; on the other rein mirrored", () => {
    const { rows, exercise } = opened();
    const { begins } = compileExercise(rows, exercise, {});
    const [first] = rideExercise(rows, exercise).stages;
    expect(first?.before).toEqual(begins);
    expect(begins.gait).toEqual({ is: "known", value: "canter" });
    const [other] = rideExercise(rows, exercise, { rein: "on the other rein" }).stages;
    expect(other?.before).toEqual(mirrorState(begins));
  });

  test("[P4] where readings differ in how it begins, each is counted as the whole ride has it", () => {
    const { rows, exercise } = opened((book, home, spear) => {
      const crux = book.crux("which hand", home);
      book.reading("the left", crux);
      book.reading("the right", crux);
      const left = book.standing("In the left", home, { guard: under("which hand", "the left") });
      book.action(left, "pass", { object: supplied(spear), to: supplied("left") }, before);
      const turn = supplied({ to: "left" as const, viewpoint: "rider" as const });
      const aside = book.step("Kept there", home);
      book.action(aside, "keep", { hand: supplied("right"), object: supplied(spear) });
      book.action(aside, "ride", { figure: supplied("circle"), turn });
    });
    expect(expectAsRidden(rows, [exercise])).toMatchObject({ assignments: 2, holding: 1 });
  });
});
