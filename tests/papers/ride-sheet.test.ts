/** What makes a ride sheet short: hands without a column of their own, a hand named once a step; and the picture that a step has
 *  nothing else to go by. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import type { Paper, PaperAsk } from "../../schema/paper.ts";
import type { Basis, Slot } from "../../schema/slot.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { idOf, said, supplied, under, WorkBuilder } from "../drill/build-rows.ts";
import { blocksThat, plain, printed, stepRowsOf } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const SPEAR = idOf("the spear");
const REGION = idOf("a part of a drawing");
const keep: Acted = ["keep", { object: idOf("the reins"), hand: "left" }];
const ride: Acted = ["ride", { figure: "straight" }];
const raise: Acted = ["raise", { object: SPEAR, hand: "right" }];
type Acted = [verb: Verb, slots: Record<string, unknown>, stated?: "stated" | "only one"];

function sheetOf(steps: Acted[][], size: PaperAsk["size"] = "A4"): Paper {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  book.object("the spear", "shaft");
  book.object("the reins", "reins");
  book.put("pictures", {
    id: idOf("a drawing"),
    work: book.work,
    rank: "a0",
    title: "A drawing",
    witness: null,
    where: "",
    attachment: "none",
    width: 100,
    height: 50,
    note: "",
  });
  const corners: [number, number][] = [
    [0, 0],
    [9, 9],
  ];
  book.put("regions", { id: REGION, picture: idOf("a drawing"), corners, label: "the hand" });
  book.reading("one", book.crux("Which", exercise, { is: "ambiguous" }));
  book.reading("two", idOf("Which"));
  for (const [index, acts] of steps.entries()) {
    const step = book.step(`Step ${index}`, exercise);
    for (const [verb, slots, how] of acts) {
      const given = Object.entries(slots).map(([slot, value]): [string, Slot<unknown>] => [
        slot,
        how === "stated" ? said(value, "stated", [{ is: "picture", region: REGION }]) : supplied(value),
      ]);
      const guard = how === "only one" ? { guard: under("Which", "one") } : {};
      book.action(step, verb, Object.fromEntries(given), guard);
    }
  }
  return printed(paperOf(book.rows(), askFor("ride sheet", [exercise], { size }), NO_FILES));
}

const columnsOf = (paper: Paper): string[] =>
  blocksThat(paper, "table").flatMap(({ columns }) => columns.map(({ name }) => name));

describe("the columns", () => {
  test.each<[why: string, steps: Acted[][], size: PaperAsk["size"], columns: string[]]>([
    [
      "hands that do something in every step",
      [[keep], [raise, ["change reins", { to: "right" }]]],
      "A4",
      ["Hands", "Spear"],
    ],
    [
      "hands that do something in two steps of three",
      [[keep], [raise], [["change reins", { to: "right" }]]],
      "A4",
      ["Hands", "Spear"],
    ],
    ["hands that do something in one step of two", [[keep], [raise]], "A4", ["Hands and spear"]],
    ["a small sheet", [[keep], [raise, ["change reins", { to: "right" }]]], "A5", ["Hands and spear"]],
  ])("of %s", (_why, steps, size, columns) => {
    expect(columnsOf(sheetOf(steps, size))).toEqual(["", "Horse", ...columns, "Where"]);
  });

  test("name each hand where it has no column", () => {
    const [first] = stepRowsOf(sheetOf([[keep, raise], [ride], [ride]]));
    expect(first?.cells[2]?.map(plain)).toEqual(["left: keep the reins", "raise the spear, with the right hand"]);
  });
});

describe("a hand is named once for what is done with one thing in a step", () => {
  const lower = (hand: string): Acted => ["lower", { object: SPEAR, hand }];
  test.each<[why: string, acts: Acted[], told: string[]]>([
    ["by the same hand", [raise, lower("right")], ["raise the spear, with the right hand", "lower the spear"]],
    [
      "but another hand is named",
      [raise, lower("left")],
      ["raise the spear, with the right hand", "lower the spear, with the left hand"],
    ],
    [
      "but one that the text names again is named again",
      [raise, ["lower", { object: SPEAR, hand: "right" }, "stated"]],
      ["raise the spear, with the right hand", "lower the spear, with the right hand"],
    ],
    [
      "but an act of one reading does not speak for what is always done",
      [["raise", { object: SPEAR, hand: "right" }, "only one"], lower("right")],
      ["raise the spear, with the right hand only †a 1", "lower the spear, with the right hand"],
    ],
  ])("%s", (_why, acts, told) => {
    const [row] = stepRowsOf(sheetOf([acts]));
    expect(row?.cells[2]?.map(plain)).toEqual(told);
  });
});

describe("a picture", () => {
  const picture: Basis = { is: "picture", region: idOf("the hand") };
  const captionsOf = (basis: Basis[], withWords = false): string[] => {
    const { rows, exercises } = smallBook((book) => {
      const text = idOf(`text of ${idOf("p1")} in ${idOf("Translation")}`);
      const words: Basis[] = withWords
        ? [{ is: "words", mark: book.mark("elements", idOf("He looks up"), text, "raises the spear") }]
        : [];
      book.step("He looks up", idOf("The circle"), { existence: { warrant: "implied", basis: [...words, ...basis] } });
    });
    const bytes = new Uint8Array([1, 2, 3]);
    const attachment = () => ({ hash: "x", mediaType: "image/png", name: "x", size: 3, bytes });
    const paper = printed(paperOf(rows, askFor("ride sheet", [exercises.circle]), { stylesFolder: null, attachment }));
    return blocksThat(paper, "figure").flatMap(({ caption, of }) => (of[0]?.kind === "regions" ? plain(caption) : []));
  };

  test("is shown where a step rests on it alone", () => {
    expect(captionsOf([picture])).toEqual(["the hand (A drawing, f. 2r)."]);
  });

  test("is left to other papers where the step has words as well, or only a value rests on it", () => {
    expect(captionsOf([picture], true)).toEqual([]);
    expect(captionsOf([{ is: "editor", note: "So it goes." }])).toEqual([]);
  });
});
