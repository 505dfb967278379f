/** tests/papers-written/docx.test.ts - a paper as a letter: parts valid under ECMA-376, the same words read back, named
 *  styles, notes, languages; and opened by a word processor where one is installed. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import mammoth from "mammoth";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Line, Paper } from "../../schema/paper.ts";
import { linesOf, plainBlocks } from "../../server/publish/write/paper-places.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { firstMissing } from "./in-order.ts";
import { heading, paperOf, paragraph, richPaper, w } from "./paper-kit.ts";
import { readPdf, squashed } from "./read-pdf.ts";
import { written } from "./written.ts";

const folder = mkdtempSync(join(tmpdir(), "passagework-letters-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const isInstalled = (program: string): boolean =>
  spawnSync(program, ["--version"], { stdio: "ignore" }).error === undefined;

async function partsOf(paper: Paper): Promise<Record<string, string>> {
  const parts = unzipSync(await written(paper, "docx"));
  return Object.fromEntries(
    Object.entries(parts)
      .filter(([path]) => /\.(xml|rels)$/.test(path))
      .map(([path, bytes]) => [path, strFromU8(bytes)]),
  );
}

const wordsOf = (lines: readonly Line[]): string[] =>
  lines
    .flat()
    .flatMap((span) => (span.is === "words" ? [squashed(span.text)] : []))
    .filter((words) => words !== "");

function wordsOfHtml(page: string): string {
  const plain = page.replace(/<[^>]*>/g, "");
  return plain.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&amp;", "&");
}

describe("a rich paper", () => {
  const paper = richPaper();
  let parts: Record<string, string>;
  let text: string;
  beforeAll(async () => {
    parts = await partsOf(paper);
    const { value: page } = await mammoth.convertToHtml({ buffer: Buffer.from(await written(paper, "docx")) });
    text = squashed(wordsOfHtml(page));
  });

  test("is read back with every word of every line, in order, and the notes after them", () => {
    const lines = plainBlocks(paper.blocks).flatMap(linesOf);
    expect(firstMissing(text, [...wordsOf(lines), ...wordsOf(paper.notes.flatMap((note) => note.lines))])).toBeNull();
  });

  test("has real notes, and says what lines mean in styles", async () => {
    const { value: page } = await mammoth.convertToHtml({ buffer: Buffer.from(await written(paper, "docx")) });
    expect(page.match(/<sup>/g)).toHaveLength(2);
    expect(page.match(/<li id="footnote-/g)).toHaveLength(2);
    for (const style of ["Stated", "Implied", "Supplied", "NotSettled", "SaidWords", "Reference", "CruxSign"]) {
      expect(parts["word/styles.xml"]).toContain(`w:styleId="${style}"`);
    }
    const used = [...(parts["word/document.xml"] ?? "").matchAll(/<w:(?:pStyle|rStyle|tblStyle) w:val="([^"]+)"/g)];
    const known = [...(parts["word/styles.xml"] ?? "").matchAll(/w:styleId="([^"]+)"/g)].map(([, id]) => id);
    expect([...new Set(used.map(([, id]) => id))].filter((id) => !known.includes(id))).toEqual([]);
    expect(new Set(known).size).toBe(known.length);
  });

  test("sets no type but by its styles", () => {
    const runs = [...(parts["word/document.xml"] ?? "").matchAll(/<w:rPr>(.*?)<\/w:rPr>/g)].map(
      ([, held = ""]) => held,
    );
    const direct = runs.filter((held) => /<w:(?:rFonts|sz|b|i|u)\b/.test(held));
    expect(direct).toEqual([]);
  });

  test("has end notes where that is asked", async () => {
    const end = await partsOf(richPaper({ notesAt: "end" }));
    expect(end["word/endnotes.xml"]).toContain("So the translator");
    expect(end["word/document.xml"]).toContain("<w:endnoteReference ");
    expect(end["word/document.xml"]).not.toContain("<w:footnoteReference ");
  });

  test("says in which language words are, and which way they run", () => {
    const body = parts["word/document.xml"] ?? "";
    expect(body).toMatch(/<w:lang w:val="la"\/>/);
    expect(body).toMatch(/<w:rtl\/>.*?<w:lang w:bidi="ar"\/>/);
    expect(body).toMatch(/<w:bidi\/>/);
    expect(parts["word/styles.xml"]).toContain('<w:lang w:val="en-GB"');
  });

  test("repeats the head of a table and keeps rows together", () => {
    const body = parts["word/document.xml"] ?? "";
    expect(body.match(/<w:tblHeader\/>/g)).toHaveLength(2);
    expect(body.match(/<w:cantSplit\/>/g)?.length).toBeGreaterThan(4);
  });

  test("has bookmarks of their own, and links to those there are", () => {
    const body = Object.entries(parts)
      .filter(([path]) => /word\/(?:document|footnotes)\.xml/.test(path))
      .map(([, part]) => part)
      .join("");
    const names = [...body.matchAll(/<w:bookmarkStart w:name="([^"]+)" w:id="(\d+)"/g)];
    expect(new Set(names.map(([, name]) => name)).size).toBe(names.length);
    expect(new Set(names.map(([, , id]) => id)).size).toBe(names.length);
    const links = [...body.matchAll(/w:anchor="([^"]+)"/g)].map(([, name]) => name);
    expect(links.length).toBeGreaterThan(5);
    expect(links.filter((link) => !names.some(([, name]) => name === link))).toEqual([]);
  });

  test("has figures as drawings and as dots, with words for who cannot see them", () => {
    const body = parts["word/document.xml"] ?? "";
    expect(body).toContain('descr="A plan: from the gate once round');
    expect(body).toMatch(/svgBlip/);
    const media =
      Object.values(parts)
        .join("")
        .match(/media\/[0-9a-f]+\.(?:svg|png)/g) ?? [];
    expect(new Set(media.map((path) => path.slice(-3)))).toEqual(new Set(["svg", "png"]));
  });

  test("bears the date of its edition, or none", async () => {
    expect(parts["docProps/core.xml"]).toMatch(/<dcterms:created[^>]*>2026-05-04T00:00:00Z</);
    const draft = await partsOf(richPaper({ edition: null }));
    expect(draft["docProps/core.xml"]).not.toContain("dcterms:created");
    expect(draft["docProps/core.xml"]).toContain("<dc:title>Of the round about the well</dc:title>");
  });
});

/** What is to be left out by who knows nothing of it: attributes and elements of the spaces a part calls ignorable. */
function withoutIgnorable(part: string): string {
  const names = /mc:Ignorable="([^"]*)"/.exec(part)?.[1]?.split(/\s+/) ?? [];
  const plain = part.replace(/ mc:Ignorable="[^"]*"/, "");
  return names.reduce((text, name) => text.replace(new RegExp(` ${name}:[A-Za-z]+="[^"]*"`, "g"), ""), plain);
}

describeWithCheckData("the parts of a letter, under ECMA-376", (path) => {
  const schema = path("ooxml-xsd", "wml.xsd");
  const checked = test.skipIf(!isInstalled("xmllint"));
  const papers: [string, () => Paper][] = [
    ["a rich paper", () => richPaper()],
    ["end notes", () => richPaper({ notesAt: "end" })],
    ["A5", () => richPaper({ size: "A5", kind: "ride sheet" })],
    [
      "a draft without notes",
      () => paperOf({ edition: null, blocks: [heading(1, "Loose leaf"), paragraph("body", w(""))] }),
    ],
  ];
  checked.each(papers)("%s (needs xmllint)", async (name, paper) => {
    const parts = await partsOf(paper());
    const wanted =
      /^word\/(?:document|styles|numbering|settings|footnotes|endnotes|comments|fontTable|header\d|footer\d)\.xml$/;
    const files = Object.keys(parts).filter((part) => wanted.test(part));
    expect(files.length).toBeGreaterThan(8);
    for (const file of files) {
      const place = join(folder, `${name}-${file}`.replaceAll(/[^\w.]/g, "-"));
      writeFileSync(place, withoutIgnorable(parts[file] ?? ""));
      const { status, stderr } = spawnSync("xmllint", ["--noout", "--nonet", "--schema", schema, place], {
        encoding: "utf8",
      });
      expect(`${file}: ${status === 0 ? "valid" : stderr.slice(0, 600)}`).toBe(`${file}: valid`);
    }
  });
});

/** Letters and digits: which shape a bracket has depends on the faces of the machine. */
const lettersOf = (words: string): string => words.normalize("NFC").replace(/[^\p{L}\p{N}]/gu, "");

describe("a word processor", () => {
  test.skipIf(!isInstalled("soffice"))(
    "opens the letter and prints its words (needs LibreOffice)",
    async () => {
      const place = join(folder, "letter.docx");
      const paper = richPaper();
      writeFileSync(place, await written(paper, "docx"));
      const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
      execFileSync("soffice", [profile, "--headless", "--convert-to", "pdf", "--outdir", folder, place], {
        stdio: "ignore",
      });
      const pdf = await readPdf(readFileSync(join(folder, "letter.pdf")));
      const words = lettersOf(pdf.pages.join(""));
      const lines = plainBlocks(paper.blocks).flatMap(linesOf).flat();
      const told = lines.flatMap((span) =>
        span.is === "words" && span.language !== "ar" ? [lettersOf(span.text)] : [],
      );
      expect(told.filter((one) => one.length > 2 && !words.includes(one))).toEqual([]);
      expect(words).toContain("Sothetranslator");
    },
    120_000,
  );
});
