/** server/publish/letter-docx.ts - a letter as a DOCX document: the same words as the plain text.
 *  May import: docx, siblings. */
import { Document, HeadingLevel, Packer, Paragraph, TextRun, UnderlineType } from "docx";
import type { LetterPart } from "./letter.ts";
import { settledArchive } from "./write/docx/settled-archive.ts";
import { xmlCharacters } from "./xml-characters.ts";

/** The text's own words in a book face, the rest in a plain one; Word takes the next it has where these are missing. */
const SAID = "Gentium Plus";
const PLAIN = "Source Sans 3";
/** Twentieths of a point. */
const INDENT = 360;

export async function letterDocx(parts: readonly LetterPart[]): Promise<Uint8Array> {
  const title = parts.find((part) => part.is === "title");
  const document = new Document({
    creator: "Passagework",
    lastModifiedBy: "Passagework",
    title: xmlCharacters(title?.words ?? ""),
    styles: { default: { document: { run: { font: PLAIN, size: 22 }, paragraph: { spacing: { after: 100 } } } } },
    sections: [{ children: parts.map(paragraphOf) }],
  });
  return settledArchive(await Packer.toBuffer(document), { issued: null, language: "en" });
}

function paragraphOf(part: LetterPart): Paragraph {
  switch (part.is) {
    case "to":
      return new Paragraph({ children: [run(`To ${part.words}`)], spacing: { after: 240 } });
    case "title":
      return new Paragraph({ heading: HeadingLevel.TITLE, children: [run(part.words, { font: SAID, size: 32 })] });
    case "note":
      return new Paragraph({ children: [run(part.words, { italics: true })] });
    case "heading":
      return new Paragraph({
        heading: HeadingLevel.HEADING_1,
        spacing: { before: 320, after: 120 },
        keepNext: true,
        children: [run(part.words, { font: SAID, size: 28, italics: true, color: "000000" })],
      });
    case "question":
      return new Paragraph({
        spacing: { before: 240, after: 100 },
        keepNext: true,
        indent: { left: INDENT, hanging: INDENT },
        children: [
          run(`${part.number}. ${part.words}`, { bold: true }),
          ...(part.asked === "" ? [] : [run(` (asked ${part.asked})`)]),
        ],
      });
    case "reference":
      return new Paragraph({
        ...inset,
        keepNext: true,
        spacing: { after: 0 },
        children: [run(part.words, { color: "9E2A2B" })],
      });
    case "said": {
      const said = { font: SAID, size: 24, ...(part.language && { language: { value: part.language } }) };
      return new Paragraph({
        ...inset,
        children: [
          run(`“${part.before}`, said),
          run(part.words, { ...said, underline: { type: UnderlineType.SINGLE } }),
          run(`${part.after}”`, said),
        ],
      });
    }
    case "paragraph":
      return new Paragraph({
        ...inset,
        children: [run(part.lead, { italics: true }), run(part.words && ` ${part.words}`)],
      });
    case "reading":
      return new Paragraph({
        indent: { left: INDENT * 2, hanging: INDENT / 2 },
        children: [run(`– ${part.title}.`, { bold: true }), run(part.words && ` ${part.words}`)],
      });
  }
}

const inset = { indent: { left: INDENT } };

function run(words: string, look: Omit<ConstructorParameters<typeof TextRun>[0] & object, "text"> = {}): TextRun {
  return new TextRun({ ...look, text: xmlCharacters(words) });
}
