/** server/import/plain-notes.ts - footnotes of a plain text go to their marks: "(1) Lit. ..." to the "(1)" before it.
 *  May import: siblings. A note whose mark cannot be told stays a paragraph and is reported; no word is lost (I13). */
import type { FilePlace } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";

export interface PlainParagraph {
  /** Lines joined by a blank, indentation taken off. */
  text: string;
  place: FilePlace;
  /** The first line is set in. */
  indented: boolean;
  /** Headings and reference lines end the search for marks. */
  boundary: boolean;
  /** Marks of notes in the text, half-open, with their notes. */
  notes: { start: number; end: number; label: string; text: string }[];
}

/** How many paragraphs back a mark is looked for. */
const REACH = 40;
const NOTE = /^\((\d{1,4}|\*{1,3})\)\s+(?=\S)/;
const WRITTEN_OUT = /^\[(?:Foot)?note:?\s+(\w{1,4})\s*[:.]\s*([\s\S]*)\]$/i;

const readNote = (paragraph: PlainParagraph): { label: string; mark: string; text: string } | null => {
  const written = WRITTEN_OUT.exec(paragraph.text);
  if (written !== null) return { label: written[1] ?? "", mark: `[${written[1]}]`, text: written[2]?.trim() ?? "" };
  const match = paragraph.indented ? NOTE.exec(paragraph.text) : null;
  if (match === null) return null;
  return { label: match[1] ?? "", mark: `(${match[1]})`, text: paragraph.text.slice(match[0].length).trim() };
};

const freeMarks = (paragraph: PlainParagraph, mark: string): number[] => {
  const places: number[] = [];
  for (let at = paragraph.text.indexOf(mark); at >= 0; at = paragraph.text.indexOf(mark, at + mark.length)) {
    if (at > 0 && !paragraph.notes.some(({ start }) => start === at)) places.push(at);
  }
  return places;
};

/** Takes the notes out of the list and hangs them on the paragraphs of their marks. */
export const attachNotes = <Paragraph extends PlainParagraph>(
  paragraphs: readonly Paragraph[],
  dropped: DroppedList,
): Paragraph[] => {
  const kept: Paragraph[] = [];
  const unplaced: PlainParagraph[] = [];
  const doubtful: Paragraph[] = [];
  let placed = 0;
  let afterNote = false;
  for (const paragraph of paragraphs) {
    const note = paragraph.boundary ? null : readNote(paragraph);
    if (note === null) {
      afterNote &&= !paragraph.boundary && !/^[^\p{L}\p{N}{]*[\p{Lu}\p{N}]/u.test(paragraph.text);
      if (afterNote) doubtful.push(paragraph);
      kept.push(paragraph);
      continue;
    }
    afterNote = true;
    let target: Paragraph | null = null;
    let marks: number[] = [];
    for (let back = kept.length - 1; back >= Math.max(0, kept.length - REACH); back -= 1) {
      const candidate = kept[back];
      if (candidate === undefined || candidate.boundary) break;
      marks = freeMarks(candidate, note.mark);
      target = candidate;
      if (marks.length > 0) break;
    }
    const start = marks[0];
    if (target === null || start === undefined || marks.length > 1) {
      kept.push(paragraph);
      unplaced.push(paragraph);
      continue;
    }
    placed += 1;
    target.notes.push({ start, end: start + note.mark.length, label: note.label, text: note.text });
  }
  if (placed === 0) return kept;
  for (const paragraph of doubtful) {
    dropped.add(
      "paragraph after a note",
      "It may belong to the note above; it was kept among the words of the text.",
      paragraph.place,
      paragraph.text,
    );
  }
  for (const paragraph of unplaced) {
    dropped.add(
      "note without a place",
      "Its mark could not be found once and once only, so it stays as a paragraph.",
      paragraph.place,
      paragraph.text,
    );
  }
  return kept;
};
