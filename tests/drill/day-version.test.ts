/** tests/drill/day-version.test.ts - [D7] what a version of the day changes in a drill, and what it leaves alone. */
import { describe, expect, test } from "vitest";
import type { Variant } from "../../schema/exercise.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { idOf, supplied, WorkBuilder } from "./build-rows.ts";

const variant = idOf("the quiet day");

/** A charge at an opponent, a thrust at him, and a halt; the version does this. */
function drilled(deltas: Variant["deltas"]) {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  const spear = book.object("the spear", "shaft");
  const threat = book.put("threats", {
    id: idOf("the man"),
    work: book.work,
    name: "the man",
    slots: {},
    note: "",
  });
  const charge = book.step("Charge", exercise, { threat: supplied(threat) });
  const gallop = book.action(charge, "go at", { gait: supplied("gallop") });
  book.action(charge, "ride", { figure: supplied("charge") });
  book.action(charge, "thrust", { object: supplied(spear) }, { threat: supplied(threat) });
  book.action(book.step("Halt", exercise), "ride", { figure: supplied("halt") });
  book.put("variants", {
    id: variant,
    work: book.work,
    exercise,
    rank: "a0",
    name: "the quiet day",
    way: "mounted",
    deltas: deltas.map((delta) => (delta.is === "act instead" ? { ...delta, action: gallop } : delta)),
  });
  const rows = book.rows();
  return { rows, exercise, drill: compileDrill(rows, exercise, { variant }) };
}

const charge = idOf("Charge");
const reason = "it is wet";
const walk: Variant["deltas"][number] = {
  is: "act instead",
  action: charge,
  act: { verb: "go at", slots: { gait: supplied("walk") } },
  reason,
};
const acts = ({ drill }: ReturnType<typeof drilled>) =>
  drill.elements.map(({ actions }) => actions.map(({ text, standing }) => `${text} (${standing})`));
const threats = ({ drill }: ReturnType<typeof drilled>) =>
  drill.elements.flatMap(({ values, actions }) =>
    [...values, ...actions.flatMap((action) => action.values)].filter(({ slot }) => slot === "threat"),
  ).length;

describe("[D7] a version of the day", () => {
  test("that changes nothing leaves the opponent where he stands", () => {
    const made = drilled([]);
    expect(threats(made)).toBe(2);
    expect(rideExercise(made.rows, made.exercise, { variant }).threats).toHaveLength(1);
  });

  test("puts an act in the place of the text's, supplied, with its reason", () => {
    const made = drilled([walk]);
    expect(acts(made)[0]?.[0]).toBe("walk (supplied)");
    expect(made.drill.elements[0]?.actions[0]?.rests).toContain("changed for the day: it is wet");
  });

  test("takes an opponent away, in the step and in its acts, in words and in the ride", () => {
    const made = drilled([{ is: "no opponent", element: charge, reason }]);
    expect(threats(made)).toBe(0);
    expect(made.drill.notes.map(({ text }) => text)).toEqual(["No opponent for the day: “Charge” (it is wet)"]);
    expect(rideExercise(made.rows, made.exercise, { variant }).threats).toEqual([]);
  });

  test("leaves a step out", () => {
    expect(acts(drilled([{ is: "leave out", element: charge, reason }]))).toHaveLength(1);
  });
});
