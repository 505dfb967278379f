/** tests/papers/step-rows.test.ts - what stands in the columns of the printed table, and what is left empty. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import type { Paper } from "../../schema/paper.ts";
import type { Slot, Support } from "../../schema/slot.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { idOf, implied, notSaid, supplied, WorkBuilder } from "../drill/build-rows.ts";
import { blocksThat, plain, printed, stepRowsOf } from "./paper-lines.ts";
import { askFor, NO_FILES } from "./small-book.ts";

function appendixOf(book: WorkBuilder, exercise: string): Paper {
  return printed(paperOf(book.rows(), askFor("appendix", [exercise]), NO_FILES));
}

/** The cells of one step that does these acts: horse, left hand, right hand, the lance; before them its title. */
function cellsOf(...acts: [Verb, Record<string, unknown>][]): string[] {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  const lance = book.object("the lance", "shaft");
  const step = book.step("A step", exercise);
  for (const [verb, slots] of acts) {
    const said = Object.entries(slots).map(([slot, value]) => {
      if (value === notSaid) return [slot, notSaid];
      return [slot, supplied(slot === "object" ? lance : value)];
    });
    book.action(step, verb, Object.fromEntries(said));
  }
  const [row] = stepRowsOf(appendixOf(book, exercise));
  const [title = "", ...horse] = (row?.cells[1] ?? []).map(plain);
  return [title, horse.join(" "), ...(row?.cells ?? []).slice(2).map((cell) => cell.map(plain).join(" "))];
}

const figure = { figure: "straight" };

describe("a cell", () => {
  const table: [why: string, acts: [Verb, Record<string, unknown>][], cells: string[]][] = [
    ["stays empty where nothing is entered", [["ride", figure]], ["straight on", "", "", ""]],
    ["says where a needed value is silent", [["go at", { gait: "canter" }]], ["canter; lead · · ·", "", "", ""]],
    [
      "says what is recorded as not said",
      [["ride", { ...figure, from: notSaid }]],
      ["straight on; from · · ·", "", "", ""],
    ],
    ["says that nothing is done", [["do nothing", { hand: "left" }]], ["", "—", "", ""]],
    [
      "of an act in its own words does not say who it belongs to",
      [["other", { who: "object", object: "lance", words: "takes the ring on the point" }]],
      ["", "", "", "takes the ring on the point"],
    ],
    [
      "says part of a circle once",
      [["ride", { figure: "part circle", amount: "quarter", turn: { to: "right", viewpoint: "rider" } }]],
      ["a quarter of a circle right", "", "", ""],
    ],
    ["says a pace once", [["go at", { pace: "increased" }]], ["increase the pace", "", "", ""]],
  ];
  test.each(table)("%s", (_why, acts, cells) => {
    expect(cellsOf(...acts)).toEqual(["A step", ...cells]);
  });
});

test("the column bears the object's name without its article", () => {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  const lance = book.object("the lance", "shaft");
  book.action(book.step("A step", exercise), "raise", { object: supplied(lance) });
  const columns = blocksThat(appendixOf(book, exercise), "table").flatMap((table) =>
    table.columns.map(({ name }) => name),
  );
  expect(columns).toContain("Lance");
});

describe("what a step rests on besides words", () => {
  const right = (because: string) => implied("right", because);
  const rested = (acts: readonly Record<string, Slot<unknown>>[], existence?: Support) => {
    const book = new WorkBuilder("A book");
    const exercise = book.exercise("An exercise");
    const step = book.step("A step", exercise, existence === undefined ? {} : { existence });
    for (const slots of acts) book.action(step, "hold", slots);
    const lines = stepRowsOf(appendixOf(book, exercise)).flatMap(({ shown, cells }) =>
      shown === null ? cells.flat() : [],
    );
    return lines.map(plain);
  };
  const premise = (text: string) => ({ is: "premise", text }) as const;

  test("each stands apart, with what is believed because of it", () => {
    expect(
      rested([{ hand: right("the left has the reins"), hold: implied(idOf("a hold"), "it was so before") }]),
    ).toEqual(["hold: (no longer there) – It was so before.", "hand: the right hand – The left has the reins."]);
  });
  test("said once where two values rest on it", () => {
    const twice = [{ hand: right("as before") }, { hand: implied("left", "as before") }];
    expect(rested(twice)).toEqual(["hand: the right hand; hand: the left hand – As before."]);
  });
  test("the step itself may rest on it", () => {
    expect(rested([], { warrant: "implied", basis: [premise("one letter is changed")] })).toEqual([
      "that it is done – One letter is changed.",
    ]);
  });
});
