/** What holds for every kind of paper: sound in form, no link or note that leads nowhere, the same paper from the same rows in
 *  any order, a key wherever lines are drawn, and whatever somebody typed comes out as it was typed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PaperAsk, Span } from "../../schema/paper.ts";
import type { Rows } from "../../schema/record.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { buildPaper, paperOf } from "../../server/publish/papers/build-paper.ts";
import { linesOf } from "../../server/publish/write/paper-places.ts";
import { openStore, readContents } from "../../server/store/index.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { bigBook } from "../bench/big-book.ts";
import { idOf } from "../drill/build-rows.ts";
import { blocksOf, blocksThat, plain, printed, stepRowsOf, wordsOf } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const KINDS: PaperAsk["kind"][] = ["ride sheet", "class handout", "caller's sheet", "working sheet", "appendix"];

/** Every list of rows in another order. */
function shuffled(rows: Rows): Rows {
  return Object.fromEntries(Object.entries(rows).map(([kind, list]) => [kind, [...(list ?? [])].reverse()])) as Rows;
}

describe.each(KINDS)("a %s", (kind) => {
  const small = smallBook();
  const all = Object.values(small.exercises);
  const big = bigBook({ exercises: 3, steps: 3, cruxes: 2 });

  test.each([
    ["a small book", small.rows, all],
    ["one exercise", small.rows, all.slice(0, 1)],
    ["an exercise of which nothing is written down", small.rows, all.slice(2)],
    ["a larger book", big.rows, big.exercises],
  ])("is sound for %s", (_what, rows, exercises) => {
    expect(() => printed(paperOf(rows, askFor(kind, exercises), NO_FILES))).not.toThrow();
  });

  test("is the same paper whatever order the rows came in", () => {
    const made = (rows: Rows) => canonicalJson(printed(paperOf(rows, askFor(kind, all), NO_FILES)));
    expect(made(shuffled(small.rows))).toBe(made(small.rows));
  });

  test("changes no row", () => {
    const before = canonicalJson(small.rows);
    paperOf(small.rows, askFor(kind, all), NO_FILES);
    expect(canonicalJson(small.rows)).toBe(before);
  });

  test("has the key to what it draws, and the caution where it is ridden from", () => {
    const paper = printed(paperOf(small.rows, askFor(kind, all), NO_FILES));
    const paragraphs = blocksThat(paper, "paragraph");
    const key = paragraphs.filter(({ as }) => as === "key").flatMap(({ words }) => words);
    const drawn = new Set(
      [
        ...paper.blocks.flatMap((block) =>
          block.is === "table" ? block.rows.flatMap(({ cells }) => cells.flat(2)) : [],
        ),
      ].flatMap((span) => (span.is === "words" && span.standing !== null ? [span.standing] : [])),
    );
    for (const standing of drawn) {
      expect(key.some((span) => span.is === "words" && span.standing === standing)).toBe(true);
    }
    expect(paragraphs.some(({ as }) => as === "caution")).toBe(kind !== "working sheet");
  });

  test("has no key to what it does not draw", () => {
    for (const exercises of [all, ...all.map((one) => [one])]) {
      const paper = printed(paperOf(small.rows, askFor(kind, exercises), NO_FILES));
      const keys = blocksOf(paper).filter((block) => block.is === "paragraph" && block.as === "key");
      const rest = [
        ...blocksOf(paper)
          .filter((block) => !keys.includes(block))
          .flatMap(linesOf),
        ...paper.notes.flatMap(({ lines }) => lines),
      ].flat();
      const kindOf = (span: Span): string => (span.is === "words" ? (span.standing ?? "") : span.is);
      const drawn = new Set(rest.map(kindOf));
      for (const told of keys.flatMap(linesOf).flat().map(kindOf)) {
        expect(told === "" || drawn.has(told) || (told === "not settled" && drawn.has("sign")), told).toBe(true);
      }
      for (const key of keys) expect(linesOf(key).flat()).not.toEqual([]);
    }
  });

  test("says the occasion once, under its title", () => {
    const asked = askFor(kind, all, { occasion: "  Saturday, in the rain  " });
    const paper = printed(paperOf(small.rows, asked, NO_FILES));
    const leads = blocksThat(paper, "paragraph").filter(({ as }) => as === "lead");
    expect(leads.map(({ words }) => plain(words))).toEqual(["Saturday, in the rain"]);
  });

  test("takes any words as words", () => {
    const markup = fc.constantFrom(
      "<b>x</b>",
      "#let x = 1",
      "*a* _b_",
      "\\",
      "$x$",
      "]]>",
      "&amp;",
      "{{",
      "†a",
      "“",
      "‏مرحبا",
      "\u0301",
      "a\tb",
    );
    const typed = fc.array(fc.oneof(markup, fc.string({ minLength: 1, unit: "grapheme" })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(typed, (parts) => {
        const title = `x${parts.join(" ").replace(/\s+/g, " ").trim()}`.slice(0, 400);
        const rows = smallBook().rows;
        const exercise = rows.exercises?.find(({ value }) => value.id === small.exercises.circle);
        if (exercise) exercise.value.title = title;
        const paper = printed(paperOf(rows, askFor(kind, [small.exercises.circle]), NO_FILES));
        expect(wordsOf(paper)).toContain(title);
      }),
      { numRuns: 25 },
    );
  });
});

describe("the demo", () => {
  const opened = openStore(":memory:");
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const loaded = loadDemo(opened.value, "2026-01-01T00:00:00Z");
  if (!loaded?.ok) throw new Error("The invented book was not written.");
  const exercises = readContents(opened.value).works.flatMap(({ rows }) =>
    (rows.exercises ?? []).map(({ value }) => value.id),
  );

  test.each(KINDS)("prints as a %s, from the store", (kind) => {
    const paper = printed(buildPaper(opened.value, askFor(kind, exercises)));
    expect(blocksThat(paper, "heading").length).toBeGreaterThanOrEqual(exercises.length);
  });

  test("says the same of one exercise whether it is read alone or with the whole work", () => {
    const [first = ""] = exercises;
    const alone = printed(buildPaper(opened.value, askFor("ride sheet", [first])));
    const together = printed(buildPaper(opened.value, askFor("ride sheet", exercises.slice(0, 2))));
    const rows = stepRowsOf(alone).map(({ cells }) => cells.map((cell) => cell.map(plain)));
    expect(
      stepRowsOf(together)
        .slice(0, rows.length)
        .map(({ cells }) => cells.map((cell) => cell.map(plain))),
    ).toEqual(rows);
  });
});

describe("bad input", () => {
  test("a title of 500 letters stands whole", () => {
    const title = "w".repeat(500);
    const { rows, exercises } = smallBook((book) => void book.exercise(title));
    const paper = printed(paperOf(rows, askFor("ride sheet", [idOf(title)]), NO_FILES));
    expect(paper.title).toBe(title);
    expect(exercises.circle).not.toBe("");
  });

  test("a step with 40 cruxes has a sign and a line for each", () => {
    const names = Array.from({ length: 40 }, (_, index) => `Crux number ${index}`);
    const { rows, exercises, steps } = smallBook((book) => {
      for (const name of names) {
        const crux = book.crux(name, idOf("The circle"));
        const reading = book.reading(`${name}, read`, crux);
        book.action(idOf("Ride the circle"), "sit", {}, { guard: [{ is: "reading", crux, readings: [reading] }] });
      }
    });
    for (const kind of ["ride sheet", "appendix"] as const) {
      const paper = printed(paperOf(rows, askFor(kind, [exercises.circle]), NO_FILES));
      const row = stepRowsOf(paper).filter(({ element }) => element === steps.ride);
      const signs = new Set(
        row.flatMap(({ cells }) => cells.flat(2)).flatMap((span) => (span.is === "sign" ? [span.crux] : [])),
      );
      for (const name of names) expect(signs.has(idOf(name))).toBe(true);
      for (const name of names) expect(wordsOf(paper)).toContain(name);
    }
  });

  test.each([
    [
      "an exercise that is not there",
      { parts: [{ exercise: idOf("gone"), from: null, to: null, variant: null }] },
      "row_unknown",
    ],
    [
      "a step of another exercise",
      { parts: [{ exercise: idOf("The circle"), from: idOf("Follow the wall"), to: null, variant: null }] },
      "row_unknown",
    ],
    [
      "a part that ends before it begins",
      {
        parts: [
          { exercise: idOf("The circle"), from: idOf("Raise the spear"), to: idOf("Ride the circle"), variant: null },
        ],
      },
      "selection_backwards",
    ],
    [
      "a version of another exercise",
      { parts: [{ exercise: idOf("The wall"), from: null, to: null, variant: idOf("the quiet day") }] },
      "row_unknown",
    ],
    [
      "a reading of another crux",
      { choice: [{ crux: idOf("The other"), reading: idOf("once") }] },
      "reading_of_other_crux",
    ],
    ["a style that is not there", { style: "no such style" }, "style_unknown"],
  ] as [string, Partial<PaperAsk>, string][])("%s is refused", (_what, more, code) => {
    const { rows, exercises } = smallBook();
    const outcome = paperOf(rows, askFor("appendix", [exercises.circle], more), NO_FILES);
    expect(outcome.ok ? null : outcome.refusal.error.code).toBe(code);
  });

  test("a sheet that cites no source asks for no style", () => {
    const { rows, exercises } = smallBook();
    expect(paperOf(rows, askFor("ride sheet", [exercises.circle], { style: "none" }), NO_FILES).ok).toBe(true);
  });
});
