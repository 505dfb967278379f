/** tests/papers-written/hostile-words.test.ts - whatever stands in a field comes out as itself and runs nothing: markup of
 *  Typst, XML, HTML, fields of letters, style sheets. Every field of every block is filled with it. */

import fc from "fast-check";
import { strFromU8, unzipSync } from "fflate";
import mammoth from "mammoth";
import { describe, expect, test } from "vitest";
import { type Line, Paper } from "../../schema/paper.ts";
import { linesOf, plainBlocks } from "../../server/publish/write/paper-places.ts";
import { richPaper } from "./paper-kit.ts";
import { readPdf, squashed } from "./read-pdf.ts";
import { written } from "./written.ts";

const PIECES = [
  "#panic(1)",
  '#read("/etc/passwd")',
  '#import "x.typ": *',
  "$x^2$",
  "*a* _b_ `c` ~d~",
  "= e",
  "- f",
  "+ g",
  "/ h: i",
  "<label>",
  "@ref",
  "//j",
  "/*k*/",
  "\\u{41}",
  "\\",
  "[l]",
  "{m}",
  "<script>alert(1)</script>",
  "<b onload=x>",
  "</style>",
  "</w:t>",
  "&amp;",
  "&#65;",
  "&lt;",
  "]]>",
  "<!--",
  "-->",
  "<?xml?>",
  "%1.",
  "{{n}}",
  '"',
  "'",
  "HYPERLINK x",
  "a -- b --- c ...",
];

const word = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...PIECES) },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme-ascii", minLength: 1, maxLength: 12 }) },
);
const hostile = fc
  .array(word, { minLength: 1, maxLength: 3 })
  .map((parts) => parts.join(" ").trim())
  .filter((words) => words !== "");

/** The rich paper with `words` in every field that holds words. */
function filled(words: string): Paper {
  const fill = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((one) => fill(one, ""));
    if (value !== null && typeof value === "object") {
      return Object.fromEntries(Object.entries(value).map(([name, held]) => [name, fill(held, name)]));
    }
    const told = ["text", "name", "alternative", "title", "author", "left", "right", "sign", "shown", "check"];
    return typeof value === "string" && told.includes(key) ? words : value;
  };
  return Paper.parse(fill(richPaper(), ""));
}

const lettersOfLines = (lines: readonly Line[], words: string): number =>
  lines.flat().filter((span) => span.is === "words" && span.text === words).length;

/** How often the words stand in a text. */
const countIn = (text: string, words: string): number => text.split(words).length - 1;

describe("words with markup in them", () => {
  test("come out of every field as themselves, in every form", async () => {
    await fc.assert(
      fc.asyncProperty(hostile, async (words) => {
        const paper = filled(words);
        const lines = [...plainBlocks(paper.blocks).flatMap(linesOf), ...paper.notes.flatMap((note) => note.lines)];
        const least = lettersOfLines(lines, words);
        const plain = squashed(words);

        const pdf = await readPdf(await written(paper, "pdf"));
        expect(countIn(squashed(pdf.pages.join("")), plain)).toBeGreaterThanOrEqual(least);
        expect(pdf.scripts).toBe(false);
        expect(pdf.title).toBe(words);
        expect(pdf.outline.map(({ title }) => squashed(title))).toContain(plain);

        const letter = await written(paper, "docx");
        const { value } = await mammoth.convertToHtml({ buffer: Buffer.from(letter) });
        expect(countIn(squashed(wordsOf(value)), plain)).toBeGreaterThanOrEqual(least);
        const fields = strFromU8(unzipSync(letter)["word/document.xml"] ?? new Uint8Array()).match(
          /<w:instrText[^>]*>[^<]*/g,
        );
        expect((fields ?? []).filter((field) => !/> ?PAGEREF place_\d+ ?$/.test(field))).toEqual([]);

        const page = new TextDecoder().decode(await written(paper, "html"));
        const body = page.slice(page.indexOf("<body>"));
        expect(countIn(squashed(wordsOf(body)), plain)).toBeGreaterThanOrEqual(least);
        expect(page).not.toMatch(/<script|<b onload/i);
        expect(page.match(/<\/style>/g)).toHaveLength(1);
      }),
      { numRuns: 12 },
    );
  }, 120_000);
});

/** The words of HTML, as a reader has them. */
function wordsOf(page: string): string {
  const plain = page.replace(/<[^>]*>/g, "");
  return plain.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&amp;", "&");
}
