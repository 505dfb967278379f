/** tests/papers-written/bad-input.test.ts - papers nobody would wish for: titles of 500 letters, steps with 40 cruxes, empty
 *  exercises, characters no face has, links that lead nowhere. All are printed, or refused in a sentence. */
import mammoth from "mammoth";
import { describe, expect, test } from "vitest";
import type { Paper } from "../../schema/paper.ts";
import { writePaper } from "../../server/publish/write/write-paper.ts";
import { call, heading, lined, PLAN_SVG, paperOf, paragraph, ref, sign, silent, steps, w } from "./paper-kit.ts";
import { readPdf, squashed } from "./read-pdf.ts";
import { written } from "./written.ts";

const FORMS = ["pdf", "docx", "html"] as const;

/** The words of a paper in a form, squashed. */
async function wordsIn(paper: Paper, form: (typeof FORMS)[number]): Promise<string> {
  const bytes = await written(paper, form);
  if (form === "pdf") return squashed((await readPdf(bytes)).pages.join(""));
  if (form === "docx") return squashed((await mammoth.extractRawText({ buffer: Buffer.from(bytes) })).value);
  const page = new TextDecoder().decode(bytes);
  return squashed(page.slice(page.indexOf("<body>")).replace(/<[^>]*>/g, ""));
}

describe.each(FORMS)("as %s", (form) => {
  test("a title of 500 letters is printed whole, and cut at the head of pages", async () => {
    const title = "Of the round about the well and of the second round about the same well, "
      .repeat(7)
      .slice(0, 500)
      .trim();
    const blocks = [heading(1, title), { is: "page break" as const }, paragraph("body", w("After it."))];
    const words = await wordsIn(paperOf({ title, blocks }), form);
    expect(words).toContain(squashed(title));
  });

  test("a title of 500 letters in one word is printed whole", async () => {
    const title = "a".repeat(500);
    expect(await wordsIn(paperOf({ title, blocks: [heading(1, title)] }), form)).toContain(title);
  });

  test("a step with 40 cruxes has the sign of each, and each is explained", async () => {
    const letters = Array.from({ length: 40 }, (_, index) => `c${index + 1}`);
    const horse = letters.map((letter) => [lined(`words of ${letter}`, "not settled"), sign(letter)]);
    const items = letters.map((letter) => ({
      anchor: `crux-${letter}`,
      head: [w(`†${letter}`)],
      lines: [[w(`the reading of ${letter} is not settled`)]],
      of: [],
    }));
    const blocks = [
      heading(1, "Many doubts"),
      steps([{ horse, hands: [[silent]], shaft: [] }]),
      { is: "entries" as const, as: "apparatus" as const, items },
    ];
    for (const kind of ["ride sheet", "appendix"] as const) {
      const words = await wordsIn(paperOf({ kind, blocks }), form);
      for (const letter of letters) {
        expect(words).toContain(`wordsof${letter}†${letter}`);
        expect(words).toContain(`thereadingof${letter}isnotsettled`);
      }
    }
  });

  test("an exercise without steps, blocks without words, and a paper without blocks", async () => {
    const empty = [
      steps([]),
      paragraph("body"),
      paragraph("open", w("No step is written down yet.")),
      { is: "list" as const, ordered: true, items: [] },
      { is: "facts" as const, rows: [] },
      { is: "calls" as const, items: [] },
      { is: "entries" as const, as: "index" as const, items: [] },
      { is: "entries" as const, as: "apparatus" as const, items: [{ anchor: null, head: [], lines: [], of: [] }] },
      { is: "beside" as const, left: [], right: [] },
      { is: "contents" as const, depth: 2 },
    ];
    expect(await wordsIn(paperOf({ blocks: empty }), form)).toContain("Nostepiswrittendownyet.");
    await written(paperOf({ blocks: [] }), form);
  });

  test("characters no face has are named, and never a silent box", async () => {
    const words = await wordsIn(paperOf({ blocks: [paragraph("body", w("the horse 🐎 and 馬, twice 馬"))] }), form);
    expect(words).toContain("U+1F40E");
    expect(words).toContain("U+99AC");
    expect(words.split("U+99AC")).toHaveLength(2);
    expect(words.includes("馬")).toBe(form !== "pdf");
    if (form === "pdf") expect(words).toContain("thehorse\ufffdand\ufffd,twice\ufffd");
  });

  test("nothing is said of faces where all is well", async () => {
    const well = "Ḥāshiya ⸗ ꝛ ȝ ẓ α ж ؤ † · – — “quoted” e\u0301 \u00ad \u200b\u200d";
    expect(await wordsIn(paperOf({ blocks: [paragraph("body", w(well))] }), form)).not.toMatch(/U\+[0-9A-F]{4}/);
  });

  test("control characters, halves of pairs and no characters become one visible sign", async () => {
    const words = await wordsIn(
      paperOf({ title: "a\u0000b", blocks: [paragraph("body", w("x\u0001y\ud800z\uffff\u0085w\u000bv"))] }),
      form,
    );
    expect(words).toContain("x\ufffdy\ufffdz\ufffd");
  });

  test("line ends within words are spaces", async () => {
    const words = await written(paperOf({ blocks: [paragraph("body", w("one\ntwo\r\nthree\tfour"))] }), form);
    expect(words.length).toBeGreaterThan(0);
  });

  test("a word longer than a narrow column stays on the paper", async () => {
    const long = `urn:cts:invented:${"x".repeat(300)}`;
    const blocks = [steps([{ horse: [[w(long)]], hands: [], shaft: [], where: [[ref(long)]] }])];
    expect(await wordsIn(paperOf({ size: "A5", blocks }), form)).toContain(long);
  });

  test("a language nobody knows is passed over", async () => {
    const blocks = [paragraph("body", w("strange", { as: "said", language: "not a tag!" }), w("x", { language: "" }))];
    expect(await wordsIn(paperOf({ blocks }), form)).toContain("strange");
  });

  test("a figure wider than the paper, and one taller, stay on it", async () => {
    const tall = PLAN_SVG.replace('viewBox="0 0 120 60"', 'viewBox="0 0 20 400"');
    const figure = (svg: string) => ({
      is: "figure" as const,
      anchor: null,
      svg,
      width: 2000,
      caption: [],
      alternative: "a plan",
      of: [],
    });
    await written(paperOf({ blocks: [figure(PLAN_SVG), figure(tall)] }), form);
  });

  test("links that lead nowhere stop the print, and all are listed", async () => {
    const lost = paperOf({ blocks: [paragraph("body", ref("step 9", "#step-9"), sign("x"), call("n7"))] });
    const made = await writePaper(lost, form);
    expect(made.ok ? "printed" : made.refusal.error).toMatchObject({ code: "citation_dangling" });
    const sentence = made.ok ? "" : made.refusal.error.sentence;
    for (const part of ["“step 9” (to #step-9)", "†x (to #crux-x)", "the note n7", "3 do not"])
      expect(sentence).toContain(part);
  });
});

describe("what is no paper", () => {
  const note = (id: string) => ({ id, lines: [[w("a note")]], of: [] });
  const cases: [string, Paper, RegExp][] = [
    ["two places of one name", paperOf({ blocks: [heading(1, "a", "x"), heading(2, "b", "x")] }), /named x/],
    ["a note nobody calls", paperOf({ blocks: [], notes: [note("n")] }), /calls the note n/],
    [
      "a note called twice",
      paperOf({ blocks: [paragraph("body", call("n"), call("n"))], notes: [note("n")] }),
      /called twice/,
    ],
    [
      "a note in a note",
      paperOf({ blocks: [paragraph("body", call("n"))], notes: [{ id: "n", lines: [[call("n")]], of: [] }] }),
      /calls a note itself/,
    ],
  ];
  test.each(cases)("%s is the caller's bug", async (_, paper, message) => {
    await expect(writePaper(paper, "html")).rejects.toThrow(message);
  });
});
