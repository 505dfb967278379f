/** tests/publish/step-table.test.ts - what stands in the columns of the printed table, and what is left empty. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import { drillPageOf } from "../../server/publish/drill-page.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { notSaid, supplied, WorkBuilder } from "../drill/build-rows.ts";

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
