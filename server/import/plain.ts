/** server/import/plain.ts - a plain text: lines to paragraphs, with reference lines, numbers, chapter headings, notes and
 *  _emphasis_. May import: schema types, siblings. Throws RefusedError when there are no passages. Keeps rules I11-I13. */
import type { ImportedFile } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";
import { cutFlow, type FlowBlock, type FlowPiece, type FlowRole, refuseTooManyLines } from "./flow.ts";
import { attachNotes, type PlainParagraph } from "./plain-notes.ts";
import { cutNotices } from "./plain-notices.ts";
import { type BareNumber, readChapterHeading, readLeadingNumber, readReferenceLine } from "./reference-line.ts";
import { RefusedError, refuse } from "./refusals.ts";
import { languageTag } from "./tei-language.ts";

interface Paragraph extends PlainParagraph {
  role: FlowRole;
}

const isBlank = (line: string) => !/\S/.test(line);

/** A short paragraph without a small letter is set as a heading. */
const isCapitals = (text: string) => text.length <= 160 && /\p{Lu}.*\p{Lu}/u.test(text) && !/\p{Ll}/u.test(text);

const roleOf = (lines: readonly string[], text: string): { role: FlowRole; text: string } => {
  const number = readLeadingNumber(text);
  if (number !== null) {
    return { role: { is: "number", ...number }, text: text.slice(number.mark.length) };
  }
  const chapter = lines.length === 1 ? readChapterHeading(text) : null;
  if (chapter !== null) return { role: { is: "chapter", ...chapter }, text };
  return { role: isCapitals(text) ? { is: "title", title: text, depth: 0 } : { is: "text" }, text };
};

/** A numbered line may follow another without a blank line between: it begins a paragraph when the sentence before has
 *  ended and it is the next number. */
const beginsNext = (line: string, open: readonly string[]): boolean => {
  const number = readLeadingNumber(line.trim());
  const first = readLeadingNumber((open[0] ?? "").trim());
  return (
    number !== null &&
    first !== null &&
    number.number === first.number + 1 &&
    /[.!?:;)\]"'’”_]\s*$/.test(open.at(-1) ?? "")
  );
};

const paragraphsOf = (lines: readonly string[], from: number, to: number, bare: BareNumber): Paragraph[] => {
  const paragraphs: Paragraph[] = [];
  let open: string[] = [];
  let firstLine = 0;
  const firstWords = lines.findIndex((line, index) => index >= from && !isBlank(line));
  const pagesCite = readReferenceLine(lines[firstWords] ?? "", bare)?.[0]?.kind === "page";
  const close = () => {
    const first = open[0];
    if (first === undefined) return;
    const joined = open.map((line) => line.trim()).join(" ");
    const { role, text } = roleOf(open, joined);
    const indent = first.length - first.trimStart().length;
    const boundary = role.is === "chapter";
    const place = { line: firstLine + 1, column: indent + 1 };
    paragraphs.push({ text, place, indented: indent > 0, boundary, notes: [], role });
    open = [];
  };
  for (let at = from; at < to; at += 1) {
    const line = lines[at] ?? "";
    if (isBlank(line)) {
      close();
      continue;
    }
    const found = readReferenceLine(line, bare);
    // "p. 212" may as well be the last words of a wrapped paragraph; it cites only where it cannot be that.
    const mayCite = open.length === 0 || pagesCite || found?.some(({ kind }) => kind !== "page") === true;
    const references = mayCite ? found : null;
    const leading = references === null ? /^\s*\[(\d+(?:\.\d+)+[^\]\s]*)\]\s+(.+)$/.exec(line) : null;
    const ahead = leading === null ? references : readReferenceLine(leading[1] ?? "", bare);
    if (ahead !== null) {
      close();
      const place = { line: at + 1, column: line.length - line.trimStart().length + 1 };
      paragraphs.push({
        text: "",
        place,
        indented: false,
        boundary: true,
        notes: [],
        role: { is: "reference", references: ahead },
      });
      if (leading === null) continue;
    } else if (beginsNext(line, open)) close();
    if (open.length === 0) firstLine = at;
    open.push(ahead !== null && leading !== null ? (leading[2] ?? "") : line);
  }
  close();
  return paragraphs;
};

const EMPHASIS = /(?<![\p{L}\p{N}_])_(?=[^\s_])([^_]*[^\s_])_(?![\p{L}\p{N}_])/gu;

/** Words, emphasis and notes of a paragraph, in order. The marks of notes and of emphasis are not among the words. */
const piecesOf = (paragraph: PlainParagraph): FlowPiece[] => {
  const pieces: FlowPiece[] = [];
  const notes = paragraph.notes.toSorted((a, b) => a.start - b.start);
  const { text } = paragraph;
  const add = (from: number, to: number, emphasis: boolean) => {
    let start = from;
    for (const note of notes) {
      if (note.start < start || note.start >= to) continue;
      pieces.push({ text: text.slice(start, note.start).trimEnd(), emphasis }, { note: note.text, label: note.label });
      start = note.end;
    }
    if (start < to) pieces.push({ text: text.slice(start, to), emphasis });
  };
  let done = 0;
  for (const match of text.includes("_") ? text.matchAll(EMPHASIS) : []) {
    add(done, match.index, false);
    add(match.index + 1, match.index + match[0].length - 1, true);
    done = match.index + match[0].length;
  }
  add(done, text.length, false);
  return pieces;
};

/** Reads a plain text. `bare` says what a number without a label means. Throws RefusedError. */
export const readPlain = (
  source: string,
  name: string,
  bare: BareNumber,
  dropped: DroppedList,
): Omit<ImportedFile, "encoding" | "dropped"> => {
  refuseTooManyLines(source, name);
  const lines = source.split(/\r\n|\n|\r/);
  const { from, to, fields } = cutNotices(lines, dropped);
  const paragraphs = paragraphsOf(lines, from, to, bare);
  const kept = attachNotes(paragraphs, dropped);
  const blocks = kept.map(
    (paragraph): FlowBlock => ({
      kind: "paragraph",
      pieces: piecesOf(paragraph),
      place: paragraph.place,
      role: paragraph.role,
    }),
  );
  const cut = cutFlow(name, blocks, bare, dropped);
  if (cut.passages.length === 0) throw new RefusedError(refuse.noPassages(name));
  const title = fields.title || name.replace(/^.*[\\/]/, "").replace(/\.[A-Za-z0-9]{1,8}$/, "");
  return {
    format: "plain",
    texts: [
      {
        number: 1,
        title,
        author: fields.author,
        translator: fields.translator,
        language: languageTag(fields.language),
        urn: "",
        ...cut,
      },
    ],
  };
};
