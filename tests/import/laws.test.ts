/** tests/import/laws.test.ts - laws of the import: no word is lost or made, for generated texts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { docFromJson } from "../../schema/editor.ts";
import type { ImportedFile } from "../../schema/imported.ts";
import { readImport } from "../../server/import/read-import.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import { imported, tei } from "./shown.ts";

const word = fc.constantFrom("walk", "on", "halt", "tūrn", "ṣūrah", "rein,", "hand.", "🐎", "e\u0301");
/** A piece of mixed content: its markup, the words a reader sees, the words that must be reported as lost. */
type Piece = { xml: string; seen: string[]; lost: string[] };

const plain = (seen: string[]): Piece => ({ xml: ` ${seen.join(" \n ")} `, seen, lost: [] });
const words = fc.array(word, { minLength: 1, maxLength: 3 });
const inline: fc.Arbitrary<Piece> = fc.oneof(
  words.map(plain),
  fc
    .tuple(fc.constantFrom("hi", "supplied", "unclear", "placeName", "quote"), words)
    .map(([name, inner]): Piece => ({ xml: `<${name}>${inner.join(" ")}</${name}> `, seen: inner, lost: [] })),
  words.map((inner): Piece => ({ xml: `<del>${inner.join(" ")}</del> `, seen: [], lost: inner })),
  fc.tuple(words, words).map(
    ([lem, rdg]): Piece => ({
      xml: `<app><lem>${lem.join(" ")}</lem><rdg wit="#B">${rdg.join(" ")}</rdg></app> `,
      seen: lem,
      lost: rdg,
    }),
  ),
  fc.tuple(words, words).map(
    ([sic, corr]): Piece => ({
      xml: `<choice><sic>${sic.join(" ")}</sic><corr>${corr.join(" ")}</corr></choice> `,
      seen: corr,
      lost: sic,
    }),
  ),
  fc
    .constantFrom("<lb/>", "<pb n='3v'/> ", "<milestone unit='para'/>", "<gap reason='torn'/> ")
    .map((xml): Piece => ({ xml, seen: [], lost: [] })),
);
const paragraph = fc.array(inline, { minLength: 1, maxLength: 6 });
const section = fc.array(paragraph, { minLength: 1, maxLength: 3 });
const book = fc.array(fc.array(section, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 });

const teiOf = (chapters: Piece[][][][]) =>
  tei(
    chapters
      .map((sections, c) => {
        const inner = sections.map(
          (paragraphs, s) =>
            `<div n="${s + 1}">${paragraphs.map((pieces) => `<p>${pieces.map(({ xml }) => xml).join("")}</p>`).join("\n")}</div>`,
        );
        return `<div n="${c + 1}">${inner.join("")}</div>`;
      })
      .join(""),
  );

const split = (text: string) => text.split(/\s+/).filter((part) => part !== "");
const seenIn = (file: ImportedFile) =>
  file.texts.flatMap(({ passages }) => passages.flatMap(({ text }) => split(text)));

describe("[I1] the words of the passages are the words of the file", () => {
  test("TEI: all that is not reported, each in its own section, in order", () => {
    fc.assert(
      fc.property(book, (chapters) => {
        const pieces = chapters.flat(3);
        const seen = pieces.flatMap((piece) => piece.seen);
        const result = readImport(new TextEncoder().encode(teiOf(chapters)), { name: "trial", format: "tei" });
        if (!result.ok) {
          expect([result.refusal.code, seen]).toEqual(["tei_without_text", []]);
          return;
        }
        expect(seenIn(result.file)).toEqual(seen);
        for (const passage of result.file.texts[0]?.passages ?? []) {
          const [own] = passage.references;
          if (own?.kind !== "section") throw new Error("a passage has no section");
          const inside = chapters[Number(own.from[0]) - 1]?.[Number(own.from[1]) - 1] ?? [];
          expect(split(passage.text)).toEqual(inside.flat().flatMap((piece) => piece.seen));
        }
        // Samples are of the first loss of each kind: every one must be lost words, and none is missing.
        const lost = pieces.filter((piece) => piece.lost.length > 0);
        const counted = result.file.dropped.filter(({ what }) => /<del>|reading of|<sic>/.test(what));
        expect(counted.reduce((sum, { count }) => sum + count, 0)).toBe(lost.length);
      }),
    );
  });

  test("plain text: every word, under its number", () => {
    const line = fc.array(word, { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(
        fc.array(fc.array(line, { minLength: 1, maxLength: 3 }), { minLength: 2, maxLength: 6 }),
        fc.integer({ min: 1, max: 900 }),
        (paragraphs, first) => {
          const source = paragraphs
            .map((lines, at) => `${first + at}. ${lines.map((parts) => parts.join(" ")).join("\n")}`)
            .join("\n\n");
          const [text] = imported(source, "plain").texts;
          expect(text?.passages.map((passage) => split(passage.text))).toEqual(paragraphs.map((lines) => lines.flat()));
          expect(text?.passages.map(({ references }) => references)).toEqual(
            paragraphs.map((_, at) => [{ kind: "section", from: [String(first + at)] }]),
          );
        },
      ),
    );
  });
});

describe("[I2] [I6] for any input", () => {
  const shape = (file: ImportedFile) => {
    for (const passage of file.texts.flatMap(({ passages }) => passages)) {
      expect(projectDoc(docFromJson(passage.doc))).toBe(passage.text);
      expect(passage.text).not.toMatch(/(^|\n)[ \t\r]|[ \t\r](\n|$)| {2}/);
    }
  };
  const soup = fc
    .array(
      fc.constantFrom(
        "<p>",
        "</p>",
        "<div n='1'>",
        "</div>",
        "<l>",
        "</l>",
        "<note>",
        "</note>",
        " ",
        "x",
        "&a;",
        "&amp;",
        "<lb/>",
        "<app><lem>",
        "</lem></app>",
        "7.13\n",
        "1. ",
        "\n\n",
        "# ",
        "_",
        "(1) ",
        "[^1]",
        "VII\n\n",
        "<!--",
        "-->",
      ),
      { maxLength: 30 },
    )
    .map((parts) => parts.join(""));

  test.each(["tei", "plain", "markdown"] as const)("%s: it is read or refused, and never thrown", (format) => {
    fc.assert(
      fc.property(soup, (body) => {
        const source = format === "tei" ? tei(body) : body;
        const result = readImport(new TextEncoder().encode(source), { name: "trial", format });
        if (result.ok) shape(result.file);
        else expect(result.refusal.sentence.length).toBeGreaterThan(40);
      }),
    );
  });

  test("any bytes at all", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const result = readImport(bytes, { name: "trial" });
        if (result.ok) shape(result.file);
      }),
    );
  });
});
