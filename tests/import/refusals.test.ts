/** tests/import/refusals.test.ts - [I2] bad input: each kind has its own code and a sentence that says what to do. */
import { describe, expect, test } from "vitest";
import { IMPORT_LIMIT_BYTES, ImportRefusal } from "../../schema/imported.ts";
import { readImport } from "../../server/import/read-import.ts";
import { imported, losses, refusalOf, tei } from "./shown.ts";

const bytes = (...values: number[]) => new Uint8Array(values);
const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const utf16 = (text: string) =>
  new Uint8Array([
    0xff,
    0xfe,
    ...[...text].flatMap((letter) => [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8]),
  ]);

const bomb = (depth: number, fan: number) => {
  const levels = Array.from({ length: depth }, (_, at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(fan)}">`);
  return `<!DOCTYPE TEI [<!ENTITY e0 "neigh">${levels.join("")}]>${tei(`<p>&e${depth};</p>`)}`;
};

describe("[I2] refusals", () => {
  const cases: [name: string, source: string | Uint8Array, code: string, place: string][] = [
    ["empty", "", "file_empty", ""],
    ["blank", " \n\t", "file_empty", ""],
    ["a PDF", "%PDF-1.7 and so on", "file_binary", ""],
    ["zero bytes", bytes(65, 0, 66), "file_binary", ""],
    ["broken XML", tei("<p>Walk\non</q>"), "broken_xml", "2:"],
    ["XML that ends early", "<TEI><text>", "broken_xml", "1:"],
    ["wrong bytes in XML", latin(`<?xml version="1.0"?>\n<TEI>caf\u00e9</TEI>`), "wrong_encoding", "2:9"],
    ["an unknown encoding", `<?xml version="1.0" encoding="horse-8"?><TEI/>`, "unknown_encoding", "1:1"],
    ["an entity bomb by depth", bomb(9, 2), "entity_bomb", "1:"],
    ["an entity bomb by growth", bomb(7, 20), "entity_bomb", "1:"],
    [
      "an entity in itself",
      `<!DOCTYPE TEI [<!ENTITY a "&b;"><!ENTITY b "&a;">]>${tei("<p>&a;</p>")}`,
      "entity_bomb",
      "1:",
    ],
    ["XML that is no TEI", "<html><body/></html>", "xml_not_tei", "1:1"],
    ["TEI without a text", "<TEI><teiHeader/></TEI>", "tei_without_text", "1:1"],
    ["TEI without words", tei("<p> </p>"), "tei_without_text", "1:1"],
    ["elements too deep", tei("<seg>".repeat(300)), "nested_too_deep", "1:"],
  ];
  test.each(cases)("%s", (_name, source, code, place) => {
    const format = code.startsWith("file") ? undefined : "tei";
    const refusal = ImportRefusal.parse(refusalOf(source, format, "reins"));
    expect(refusal.code).toBe(code);
    expect(refusal.sentence).toContain("“reins”");
    const told = refusal.place === undefined ? "" : `${refusal.place.line}:${refusal.place.column}`;
    expect(told.startsWith(place)).toBe(true);
    // It says what to do.
    expect(refusal.sentence).toMatch(/Save|Mend|Bring|Export|check|Write/);
  });

  test("many uses of one long entity are a bomb too", () => {
    const document = `<!DOCTYPE TEI [<!ENTITY a "${"neigh ".repeat(20_000)}">]>${tei(`<p>${"&a;".repeat(2_000)}</p>`)}`;
    expect(refusalOf(document, "tei").code).toBe("entity_bomb");
  });

  test("a file over the limit", () => {
    expect(refusalOf(new Uint8Array(IMPORT_LIMIT_BYTES + 1).fill(65)).sentence).toBe(
      "“trial” has 65 MB; at most 64 MB are read at once. Bring it in by parts, a book at a time.",
    );
  });

  test("[I5] texts that are all line ends, all passages, or one endless paragraph", () => {
    expect(refusalOf("a\n".repeat(3_000_001), "plain").code).toBe("too_many_lines");
    const many = Array.from({ length: 250_001 }, (_, at) => `${at + 1}. a`).join("\n\n");
    expect(refusalOf(many, "plain").code).toBe("too_many_passages");
    expect(refusalOf(`# 7.1\n\n${"*a **b ".repeat(20_000)}`, "markdown")).toMatchObject({
      code: "paragraph_too_long",
      place: { line: 3, column: 1 },
    });
    expect(refusalOf(tei("<lb/>".repeat(1_500_001)), "tei").code).toBe("too_many_elements");
  });

  test("no passages: only a notice", () => {
    expect(refusalOf("*** START OF THIS COPY ***\n\n*** END OF THIS COPY ***\n", "plain").code).toBe("no_passages");
    expect(refusalOf("7.13\n\n7.14\n", "plain").code).toBe("no_passages");
    expect(refusalOf("<div>x</div>", "markdown").code).toBe("no_passages");
  });

  test("the words of a sentence", () => {
    expect(refusalOf("<TEI>\n<p>Walk</q></TEI>", "tei", "reins.xml").sentence).toMatch(
      /^“reins\.xml” is not well-formed XML: .+ at line 2, column \d+\. Mend that place and bring the file in again\.$/,
    );
  });
});

describe("[I3] encodings", () => {
  const words = (source: Uint8Array, format: "tei" | "plain") => {
    const file = imported(source, format);
    return [file.encoding, file.texts[0]?.passages[0]?.text];
  };
  const utf8 = new TextEncoder();

  test("UTF-8 with a byte order mark", () => {
    expect(words(new Uint8Array([0xef, 0xbb, 0xbf, ...utf8.encode("1. Café")]), "plain")).toEqual(["UTF-8", "Café"]);
  });
  test("UTF-16 with a byte order mark", () => {
    expect(words(utf16("1. Café"), "plain")).toEqual(["UTF-16 (little-endian)", "Café"]);
  });
  test("as the XML declaration says", () => {
    const document = `<?xml version="1.0" encoding="ISO-8859-1"?>${tei("<p>caf\u00e9</p>")}`;
    expect(words(latin(document), "tei")).toEqual(["windows-1252", "café"]);
  });
  test("plain text that is no UTF-8 is read as windows-1252, and that is reported", () => {
    const file = imported(latin("1. Walk\n\n2. caf\u00e9"), "plain");
    expect([file.encoding, file.texts[0]?.passages[1]?.text]).toEqual(["windows-1252 (guessed)", "café"]);
    expect(losses(file)).toEqual(["3:7 encoding: not UTF-8 (1)"]);
  });
});

describe("the format is told by name, then by content", () => {
  test.each([
    ["reins.xml", tei("<p>x</p>"), "tei-p5"],
    ["reins.md", "# 7.1\n\nx", "markdown"],
    ["reins.txt", "7.1\nx", "plain"],
    ["paste", tei("<p>x</p>"), "tei-p5"],
    ["paste", "<x> marks the spot", "plain"],
  ])("%s", (name, source, format) => {
    const result = readImport(new TextEncoder().encode(source), { name });
    expect(result.ok && result.file.format).toBe(format);
  });

  test("a bare number is a page when the person says so", () => {
    const result = readImport(new TextEncoder().encode("[12]\nWalk."), { name: "paste", referenceKind: "page" });
    expect(result.ok && result.file.texts[0]?.passages[0]?.references).toEqual([
      { kind: "page", of: "", from: { page: "12" } },
    ]);
  });
});
