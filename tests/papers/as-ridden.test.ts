/** What stands near the head of a paper: that it cannot be ridden as it is read, and what being on foot changes. */
import { describe, expect, test } from "vitest";
import type { PaperAsk } from "../../schema/paper.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { idOf, supplied, under } from "../drill/build-rows.ts";
import { blocksOf, blocksThat, plain, printed } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const KINDS: PaperAsk["kind"][] = ["ride sheet", "class handout", "caller's sheet", "appendix"];
const wide = idOf("The wide one");

/** The small book, and an exercise in which a circle is far wider than the ground. "first": only under the first of two readings
 *  nobody chose; "first, and again": and one more under both, so that nothing can be ridden. */
function withWide(when: "always" | "first" | "first, and again") {
  return smallBook((book) => {
    book.exercise("The wide one", { label: "4" });
    const which = book.crux("Which of them", wide, { is: "ambiguous" });
    book.reading("he rides wide", which);
    book.reading("he does not", which);
    const circle = (step: string, metres: number | null, guarded: boolean) =>
      book.action(
        book.step(step, wide),
        "ride",
        {
          figure: supplied("circle"),
          ...(metres !== null && { size: supplied({ is: "exact" as const, of: metres * 1000 }) }),
        },
        guarded ? { guard: under("Which of them", "he rides wide") } : {},
      );
    circle("Ride on", null, false);
    circle("Ride wide", 900, when !== "always");
    if (when === "first, and again") circle("Ride wider", 950, false);
  }).rows;
}

const openOf = (...[rows, ask]: [ReturnType<typeof withWide>, PaperAsk]): string[] =>
  blocksThat(printed(paperOf(rows, ask, NO_FILES)), "paragraph")
    .filter(({ as }) => as === "open")
    .map((block) => plain(block.words));

const barred = (lines: string[]): string[] =>
  lines.filter((line) => line.includes("cannot be ridden under these rules"));

describe("what bars the ride", () => {
  test.each(KINDS)("is said near the head of a %s", (kind) => {
    const [says, ...others] = barred(openOf(withWide("always"), askFor(kind, [wide])));
    expect(says).toMatch(/^As it is read here it cannot be ridden under these rules: ./);
    expect(others).toEqual([]);
  });

  test("is said to come from a reading that is not settled", () => {
    const rows = withWide("first, and again");
    const sheet = openOf(rows, askFor("ride sheet", [wide]));
    expect(barred(sheet)).toEqual([
      expect.stringMatching(/^As it is read here it cannot be ridden under these rules: /),
    ]);
    expect(sheet).toContain("Drawn with †a 1, which is not settled, one more thing is in the way.");
    const studied = barred(openOf(rows, askFor("appendix", [wide])));
    expect(studied).toContainEqual(
      expect.stringMatching(/^Drawn with “he rides wide”, which is not settled, it cannot be ridden/),
    );
    const choice = [{ crux: idOf("Which of them"), reading: idOf("he rides wide") }];
    const [chosen] = barred(openOf(withWide("first"), askFor("ride sheet", [wide], { choice })));
    expect(chosen).toMatch(/^As it is read here/);
  });

  test.each(KINDS)("is not drawn on a %s where another reading can be ridden, and the plan says why", (kind) => {
    const paper = printed(paperOf(withWide("first"), askFor(kind, [wide]), NO_FILES));
    expect(JSON.stringify(paper)).not.toContain("cannot be ridden under these rules");
    const drawn = blocksThat(paper, "figure").map(({ caption }) => plain(caption));
    const says = expect.stringMatching(
      /Drawn with .*(?:†a 2|“he does not”).*, which is not settled; under the first readings it cannot be ridden\./,
    );
    if (kind !== "caller's sheet") expect(drawn).toContainEqual(says);
  });

  test("is said of a reading beside its sign on a sheet, and of no other", () => {
    const paper = printed(paperOf(withWide("first"), askFor("ride sheet", [wide]), NO_FILES));
    const [key] = blocksThat(paper, "entries").flatMap(({ items }) =>
      items.map(({ lines }) => lines.map(plain).join(" ")),
    );
    expect(key).toContain("1 “he rides wide” (cannot be done under these rules) or 2 “he does not”");
    const none = printed(paperOf(withWide("first, and again"), askFor("ride sheet", [wide]), NO_FILES));
    expect(JSON.stringify(none)).not.toContain("cannot be done under these rules");
  });

  test("is told in a sentence at the head of the book part, and whole below the steps, once", () => {
    const rows = withWide("first, and again");
    const paper = printed(paperOf(rows, askFor("appendix", [wide]), NO_FILES));
    const blocks = blocksOf(paper);
    const at = blocks.findIndex((block) => block.is === "heading" && plain(block.words) === "What stands in the way");
    expect(at).toBeGreaterThan(blocks.findIndex((block) => block.is === "table"));
    const list = blocks[at + 1];
    const whole = list?.is === "list" ? list.items.map((item) => plain(item.words)) : [];
    expect(whole).toHaveLength(2);
    expect(whole[0]).toContain("under “he does not” it does not arise");
    const heads = barred(openOf(rows, askFor("appendix", [wide])));
    expect(heads.join()).not.toContain("it does not arise");
    const told = heads.map((head) => head.split("under these rules: ")[1]?.replace(/\.$/, "") ?? "?");
    expect(whole.every((one) => told.some((head) => one.startsWith(head)))).toBe(true);
  });

  test("is not said where nothing is in the way, nor of steps that are cut away", () => {
    const rows = withWide("first");
    const choice = [{ crux: idOf("Which of them"), reading: idOf("he does not") }];
    expect(barred(openOf(rows, askFor("ride sheet", [wide], { choice })))).toEqual([]);
    const parts = [{ exercise: wide, from: null, to: idOf("Ride on"), variant: null }];
    expect(barred(openOf(withWide("always"), askFor("ride sheet", [], { parts })))).toEqual([]);
  });
});

describe("on foot", () => {
  const says = (lines: string[]): number => lines.filter((line) => line.startsWith("Done on foot: ")).length;

  test.each([...KINDS, "working sheet" as const])("a %s says once who does what the horse does", (kind) => {
    const rows = withWide("always");
    expect(says(openOf(rows, askFor(kind, [wide], { way: "on foot" })))).toBe(1);
    expect(says(openOf(rows, askFor(kind, [wide])))).toBe(0);
    expect(says(openOf(rows, askFor(kind, [idOf("The empty one")], { way: "on foot" })))).toBe(0);
  });
});
