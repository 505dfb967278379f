/** tests/publish/step-table.test.ts - what stands in the columns of the printed table, and what is left empty. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import type { Slot, Support } from "../../schema/slot.ts";
import { drillPageOf } from "../../server/publish/drill-page.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { idOf, implied, notSaid, supplied, WorkBuilder } from "../drill/build-rows.ts";

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
  const page = drillPageOf(compileDrill(book.rows(), exercise));
  const body = page.slice(page.indexOf("<tbody"), page.indexOf("</tbody>"));
  const cells = [...body.matchAll(/<td(?: class="(?:across|inherited)"| colspan="4" class="across")?>(.*?)<\/td>/gs)];
  return cells.map(([, cell = ""]) => cell.replace(/<[^>]*>/g, ""));
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
    ["says that nothing is done", [["do nothing", { hand: "left" }]], ["", "nothing", "", ""]],
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
  expect(drillPageOf(compileDrill(book.rows(), exercise))).toContain('<th scope="col">Lance</th>');
});

describe("what a step rests on besides words", () => {
  const right = (because: string) => implied("right", because);
  const rested = (acts: readonly Record<string, Slot<unknown>>[], existence?: Support) => {
    const book = new WorkBuilder("A book");
    const exercise = book.exercise("An exercise");
    const step = book.step("A step", exercise, existence === undefined ? {} : { existence });
    for (const slots of acts) book.action(step, "hold", slots);
    const page = drillPageOf(compileDrill(book.rows(), exercise));
    const list = /<ul class="rests">(.*?)<\/ul>/s.exec(page)?.[1] ?? "";
    return [...list.matchAll(/<li>(.*?)<\/li>/gs)].map(([, item = ""]) => item.replace(/<[^>]*>/g, ""));
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

test("only a long step may part at the foot of a page", () => {
  const shapes = (note: string) => {
    const book = new WorkBuilder("A book");
    const exercise = book.exercise("An exercise");
    book.step("A step", exercise, { note });
    return /<tbody class="([^"]*)"/.exec(drillPageOf(compileDrill(book.rows(), exercise)))?.[1];
  };
  expect(shapes("short")).toBe("step");
  expect(shapes("a long note ".repeat(200))).toBe("step tall");
});
