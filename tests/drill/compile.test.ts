/** tests/drill/compile.test.ts - an exercise compiled: filtered, numbered, cited, and said in words. */
import { describe, expect, test } from "vitest";
import { Drill } from "../../schema/drill.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { held, idOf, said, slotAt, supplied, supports, under, WorkBuilder } from "./build-rows.ts";

/** A small exercise: a circle whose side is a crux, then a turn that is there under one reading only. */
function smallWork() {
  const book = new WorkBuilder("A riding book");
  const layer = book.layer("The translation", { urn: "urn:cts:demo:book.one.en:" });
  const exercise = book.exercise("First exercise", { label: "1" });
  const passage = book.passage("7.13", [{ kind: "section", from: ["7", "13"] }], exercise);
  const text = book.text(passage, layer, "Ride the circle about the well at a canter, then turn.");
  const spear = book.object("spear", "shaft");

  const canter = book.standing("At the canter throughout", exercise);
  book.action(canter, "go at", { gait: supplied("canter") });

  const first = book.step("The circle", exercise);
  const mark = book.mark("elements", first, text, "Ride", "well");
  const ride = book.action(first, "ride", {
    figure: said("circle", "stated", [{ is: "words", mark }]),
    turn: held("side"),
  });
  const turning = book.step("The turn", exercise, {
    guard: under("side", "to the left"),
    existence: supports("stated", book.mark("elements", idOf("The turn"), text, "then turn")),
  });
  book.action(turning, "ride", { figure: supplied("turn") });
  book.action(turning, "go at", { gait: supplied("walk") });
  const carried = book.step("The spear", exercise);
  book.action(carried, "carry", {
    object: supplied(spear),
    bearing: supplied({ is: "clock", hour: 9 }),
    level: supplied("low"),
  });

  const side = book.crux("side", exercise);
  for (const to of ["left", "right"] as const) {
    book.reading(`to the ${to}`, side, {
      values: [{ at: slotAt(ride, "turn"), value: supplied({ to, viewpoint: "rider" }) }],
    });
  }
  book.question("To which side?", exercise, side);
  return { book, exercise, side };
}

describe("a drill", () => {
  const { book, exercise, side } = smallWork();
  const rows = book.rows();

  test("keeps what is not settled, with the readings it waits for", () => {
    const drill = compileDrill(rows, exercise);
    expect(Drill.parse(drill)).toEqual(drill);
    expect(drill.elements.map(({ number, title }) => [number, title])).toEqual([
      [1, "The circle"],
      [2, "The turn"],
      [3, "The spear"],
    ]);
    const [circle, turn, spear] = drill.elements;
    expect(circle?.actions.map(({ text, inherited }) => [text, inherited])).toEqual([
      ["canter", true],
      ["circle left or right", false],
    ]);
    expect(circle?.actions[1]?.values[1]).toMatchObject({
      standing: "not settled",
      text: "not settled: left or right",
    });
    expect(turn?.onlyUnder).toEqual([{ crux: side, readings: [idOf("to the left")] }]);
    expect(turn?.actions.map(({ text }) => text)).toEqual(["turn", "walk"]);
    expect(spear?.actions.at(-1)?.text).toBe("the spear: point left, low");
    expect(circle?.citations[0]).toMatchObject({
      reference: "7.13",
      quote: "Ride the circle about the well",
      urn: "urn:cts:demo:book.one.en:7.13@Ride the circle about the well",
    });
    expect(drill.questions.map(({ text }) => text)).toEqual(["To which side?"]);
  });

  test("drops what the chosen reading leaves out, and numbers afterwards", () => {
    const drill = compileDrill(rows, exercise, { choice: [{ crux: side, reading: idOf("to the right") }] });
    expect(drill.elements.map(({ number, title }) => [number, title])).toEqual([
      [1, "The circle"],
      [2, "The spear"],
    ]);
    expect(drill.elements[0]?.actions[1]?.text).toBe("circle right");
    expect(drill.elements[0]?.cruxes[0]).toMatchObject({
      taken: { reading: idOf("to the right"), because: "chosen" },
      others: [{ title: "to the left", gives: [{ label: "to which side", text: "left" }] }],
    });
  });
});
