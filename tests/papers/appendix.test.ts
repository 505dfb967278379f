/** The appendix held against the rows: a walk of its own over them, and every step, citation, reading and question is there,
 *  once and in order. */
import { describe, expect, test } from "vitest";
import type { Paper } from "../../schema/paper.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { bigBook } from "../bench/big-book.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { blocksThat, plain, printed, stepRowsOf, wordsOf } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

type Book = ReturnType<typeof smallBook>;

function appendixOf(book: Pick<Book, "rows">, exercises: readonly string[], more = {}): Paper {
  return printed(paperOf(book.rows, askFor("appendix", exercises, more), NO_FILES));
}

const small = smallBook();
const { circle, wall, empty } = small.exercises;
const paper = appendixOf(small, [circle, wall, empty]);

const books: [name: string, rows: Book["rows"], exercises: string[]][] = [
  ["a small book", small.rows, [circle, wall, empty]],
  ...[2, 5].map((exercises): [string, Book["rows"], string[]] => {
    const made = bigBook({ exercises, steps: 4, cruxes: 3 });
    return [`${exercises} exercises`, made.rows, made.exercises];
  }),
];

describe.each(books)("%s", (_name, rows, exercises) => {
  const whole = appendixOf({ rows }, exercises);
  const values = <K extends keyof typeof rows>(kind: K) => (rows[kind] ?? []).map((row) => row.value);

  test("every element is a row of its exercise, once, in the order of its ranks", () => {
    const expected = exercises.flatMap((id) =>
      (rows.elements ?? [])
        .map(({ value }) => value)
        .filter((element) => element.exercise === id)
        .sort(compareRanked)
        .map((element) => element.id),
    );
    const told = stepRowsOf(whole).filter(({ anchor }) => anchor !== null);
    expect(told.map(({ element }) => element)).toEqual(expected);
  });

  test("every step cites the places of all its words", () => {
    const marks = (rows.marks ?? []).map(({ value }) => value);
    const anchors = (rows.anchors ?? []).flatMap(({ value }) => (value.is === "text" ? value : []));
    for (const row of stepRowsOf(whole).filter(({ anchor }) => anchor === null)) {
      const own = marks.filter(({ of, target }) => of === "elements" && target === row.element).map(({ id }) => id);
      const cited = row.cells.flat().flat();
      for (const anchor of anchors.filter(({ mark }) => own.includes(mark))) {
        const passage = (rows.passages ?? []).find(({ value }) => value.id === anchor.passage)?.value;
        const [first] = passage?.references ?? [];
        expect(plain(cited)).toContain(first === undefined ? "?" : formatReference(first));
      }
      const mine = anchors.filter(({ mark }) => own.includes(mark));
      const within = (one: (typeof mine)[number]) =>
        mine.some((other) => other !== one && other.text === one.text && other.from <= one.from && one.to <= other.to);
      const quoted = mine.filter((one) => !within(one)).map(({ quote }) => quote.slice(0, 12).trim());
      const spans = cited.flatMap((span) =>
        span.is === "words" && (span.as === "said" || span.as === "emphasis") ? [span.text] : [],
      );
      for (const quote of quoted) expect(spans.some((said) => said.includes(quote))).toBe(true);
    }
  });

  test("every crux has one note; its readings are in it, each once, the one taken first and those ruled out last", () => {
    const notes = whole.notes.filter(({ id }) => id.startsWith("crux-"));
    const own = values("cruxes").filter((crux) => "exercise" in crux && exercises.includes(String(crux.exercise)));
    expect(notes).toHaveLength(own.length);
    for (const crux of own) {
      const note = notes.find(({ of }) => of.some(({ kind, id }) => kind === "cruxes" && id === crux.id));
      const heads = (note?.lines ?? []).map(plain);
      const readings = (rows.readings ?? []).map(({ value }) => value).filter((reading) => reading.crux === crux.id);
      const rank = (status: string) => ["adopted", "standing", "ruled out"].indexOf(status);
      const expected = [...readings].sort((a, b) => rank(a.status.is) - rank(b.status.is) || compareRanked(a, b));
      const places = expected.map(({ title }) =>
        heads.findIndex((line) => line.startsWith(title) || line.includes(`] ${title}`)),
      );
      expect(places).not.toContain(-1);
      expect([...places].sort((a, b) => a - b)).toEqual(places);
      expect(new Set(places).size).toBe(places.length);
      for (const { argument, holder } of readings) {
        if (argument !== "") expect(heads.filter((line) => line.includes(argument)).length).toBe(1);
        if (holder !== "") expect(heads.join("\n")).toContain(holder);
      }
    }
  });

  test("every open question is there once", () => {
    const told = blocksThat(whole, "entries").filter(({ as }) => as === "questions");
    const ids = told.flatMap(({ items }) => items.flatMap(({ of }) => of.map(({ id }) => id)));
    expect(ids.sort()).toEqual(
      values("questions")
        .map(({ id }) => id)
        .sort(),
    );
  });

  test("every source that is cited is in the bibliography once, no other, and every trial, remark and word", () => {
    const [bibliography] = blocksThat(whole, "entries").filter(({ as }) => as === "bibliography");
    const ids = bibliography?.items.map(({ of }) => of[0]?.id) ?? [];
    const others = JSON.stringify({ ...rows, sources: [] });
    const named = values("sources").filter(({ id }) => others.includes(id));
    expect([...ids].sort()).toEqual(named.map(({ id }) => id).sort());
    const listed = blocksThat(whole, "list").flatMap(({ items }) => items.flatMap(({ of }) => of));
    for (const kind of ["trials", "notes"] as const) {
      const told = listed.filter((one) => one.kind === kind).map(({ id }) => id);
      expect(told.sort()).toEqual(
        values(kind)
          .map(({ id }) => id)
          .sort(),
      );
    }
  });
});

describe("what an appendix says", () => {
  const words = wordsOf(paper);
  test.each([
    [
      "the reading taken, with reason and day",
      "†a 1, step 1 A f. 1r, ll. 1–9 “once or twice” ] once (adopted on 1 March 2026): It is said first.",
    ],
    ["the others with who holds them", "twice T. Translator: The last word counts.\n"],
    [
      "those ruled out with their reason",
      "as often as he likes (ruled out on 2 March 2026): Nobody would write it so.",
    ],
    ["what is not settled", "“the other” ] not settled."],
    ["a source in full the first time", "A parallel: So it is there."],
    ["what is silent", "circle"],
    ["what is not treated", "Not yet treated: A f. 1v, ll. 1–9, perhaps 2 to 3 steps"],
    [
      "how much is treated",
      "Only part of the exercise is treated: 2 steps of the treated part. 1 part is noted as not yet treated.",
    ],
    ["an exercise of which nothing is written down", "No step is written down yet."],
    ["a trial", "6 May 2026: N. Rider, mounted, ridden in part. Read as “once”†a. Step 2: The spear struck a branch."],
    ["what was looked for", "On which leg he canters"],
    ["a word that is followed", "he turns. Horse and all. A f. 1r, ll. 10–18"],
    ["all references of its passages", "A f. 1r, l. 10–1v, l. 9; tr. p. 19"],
    ["words nobody has spoken of", "A f. 1r, ll. 10–18 “to the stair, and”"],
    ["what an act only inherits", "canter; lead · · ·"],
  ])("%s", (_what, expected) => {
    expect(words).toContain(expected);
  });

  test("nothing is drawn where nothing is done, and dots where the text does not say", () => {
    const raise = stepRowsOf(paper).find(({ element, anchor }) => element === small.steps.raise && anchor !== null);
    expect(raise?.cells[2]?.map(plain)).toEqual(["—"]);
    const ride = stepRowsOf(paper).find(({ element, anchor }) => element === small.steps.ride && anchor !== null);
    expect(ride?.cells[1]?.map(plain).join(" ")).toContain("to which side · · ·");
  });

  test("a source is cited in full first, then short, then as the same again", () => {
    const notes = paper.notes.map(({ lines }) => lines.map(plain).join("\n"));
    const all = notes.join("\n");
    expect(all.indexOf("Ada Marr, The Balance of the Lance (Holm Press, 1998), p. 12.")).toBeGreaterThan(-1);
    expect(all.split("(Holm Press, 1998)")).toHaveLength(2);
    expect(all).toContain("Ibid.");
  });

  test("in a style with author and year there are no notes for sources", () => {
    const inText = appendixOf(small, [circle], { style: "author and year" });
    expect(inText.notes.every(({ id }) => id.startsWith("crux-"))).toBe(true);
    expect(wordsOf(inText)).toContain("A parallel: So it is there. (Marr 1998, p. 40)");
    expect(wordsOf(inText)).toContain("Marr, Ada (1998) The Balance of the Lance, Holm Press.");
  });

  test("the original stands in italics behind its translation, under one reference", () => {
    const rests = stepRowsOf(paper).find(({ element, anchor }) => element === small.steps.ride && anchor === null);
    const spans = (rests?.cells.flat().flat() ?? []).flatMap((span) =>
      span.is === "words" && span.text.trim() !== "" ? [[span.as, span.text]] : [],
    );
    const at = spans.findIndex(([, text]) => text === "A f. 1r, ll. 1–9");
    expect(spans.slice(at, at + 3)).toEqual([
      ["reference", "A f. 1r, ll. 1–9"],
      ["said", "“Let him ride a circle”"],
      ["emphasis", "“Circulum equitet”"],
    ]);
  });

  test("what the plans supply is said once", () => {
    const track = "The court: how far inside the wall the track lies is not said; 1.8 m is supplied.";
    expect(words.split(track)).toHaveLength(2);
    expect(words).toContain("What the plan supplies");
  });

  test("what the plan supplies for several steps is one line, which names them", () => {
    const turns = smallBook((book) => {
      const home = book.exercise("Circles", { label: "4" });
      for (const title of ["Once", "Again", "And again"]) {
        book.action(book.step(title, home), "ride", { figure: supplied("circle") });
      }
    });
    const told = wordsOf(appendixOf(turns, [idOf("Circles")])).split("\n");
    expect(told.filter((line) => line.includes("how large it is") || line.includes("How large it is"))).toEqual([
      expect.stringMatching(
        /^Steps 1–3: to which side the circle goes; .*\. How large it is; 16\.4 m across is supplied\.$/,
      ),
    ]);
  });

  test("notes stand where they are asked for", () => {
    expect(appendixOf(small, [circle], { notesAt: "end" }).notesAt).toBe("end");
  });

  test("the index sends each passage to its steps", () => {
    const [index, things] = blocksThat(paper, "entries").filter(({ as }) => as === "index");
    expect(things?.items.map(({ head, lines }) => [plain(head), ...lines.map(plain)])).toEqual([
      ["upright", "exercise 1, step 2"],
      ["vertit", "A f. 1r, ll. 10–18"],
      ["well", "exercise 1, step 1"],
    ]);
    expect(index?.items.map(({ head, lines }) => [plain(head), ...lines.map(plain)])).toEqual([
      ["A f. 1r", "ll. 1–9: exercise 1, steps 1–3", "ll. 10–18: exercise 2, steps 1, 2"],
    ]);
  });

  test("the glossary tells of a hold what it is, and in which steps it is used", () => {
    const [glossary] = blocksThat(paper, "entries").filter(({ as }) => as === "glossary");
    const upright = glossary?.items.find(({ head }) => plain(head) === "upright");
    expect(upright?.lines.map(plain)).toEqual([
      "one hand; where it is held at the balance; level high.",
      "In exercise 1, step 2",
    ]);
  });

  test.each([
    [12, 1],
    [13, 15],
  ])("of %i exercises has %i breaks: in a long one each exercise begins on a new page", (exercises, breaks) => {
    const made = bigBook({ exercises, steps: 1, cruxes: 0 });
    const long = appendixOf(made, made.exercises);
    expect(blocksThat(long, "page break")).toHaveLength(breaks);
    const heads = long.blocks.flatMap((block, at) =>
      block.is === "heading" && block.of[0]?.kind === "exercises" ? [long.blocks[at - 1]?.is] : [],
    );
    expect(heads.every((before) => (before === "page break") === exercises > 12)).toBe(true);
  });

  test("a choice is said to be one", () => {
    const chosen = appendixOf(small, [circle], { choice: [{ crux: idOf("Once or twice"), reading: idOf("twice") }] });
    expect(wordsOf(chosen)).toContain("] twice (chosen for this paper)");
    expect(wordsOf(chosen)).toContain(
      "once the editor (adopted on 1 March 2026): The first word counts. It is said first.",
    );
  });
});
