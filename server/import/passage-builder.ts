/** server/import/passage-builder.ts - a stream of words, blocks, notes and references becomes passages.
 *  May import: schema, shared/text, siblings. All formats end here, so blanks are treated alike (I6): runs of blanks are
 *  one, none at either end of a block. Page and line beginnings wait for the next word, so none is left dangling. */
import { docFromJson } from "../../schema/editor.ts";
import type { FilePlace, ImportedPassage } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import { formatReference, formatReferences } from "../../shared/cite/format-reference.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import type { DroppedList } from "./dropped-list.ts";
import { type PageMoment, PageTracker, pageReferences } from "./page-tracker.ts";
import { RefusedError, refuse } from "./refusals.ts";

export type BlockKind = "paragraph" | "heading" | "verse";

export type TextMark =
  | { type: "emphasis" }
  | { type: "supplied" }
  | { type: "unclear" }
  | { type: "foreign"; attrs: { lang: string } };

type TextPiece = { type: "text"; text: string; marks?: TextMark[] };
type Atom =
  | { type: "note"; attrs: { text: string; label: string } }
  | { type: "milestone"; attrs: { unit: string; n: string } }
  | { type: "gap"; attrs: { reason: string } };
type Block = { type: BlockKind; content: (TextPiece | Atom)[] };

export interface PassageStart {
  /** At least one. */
  references: Reference[];
  division?: { label: string; title: string };
  place: FilePlace;
  /** True when a passage without words is worth a report: it was cited, and nothing stands there. */
  expectsWords: boolean;
}

interface OpenPassage {
  start: PassageStart;
  blocks: Block[];
  firstPage: PageMoment | null;
  lastPage: PageMoment | null;
}

const sameMarks = (a: readonly TextMark[], b: readonly TextMark[]) =>
  a.length === b.length && a.every((mark, index) => JSON.stringify(mark) === JSON.stringify(b[index]));

/** More cannot be shown or stored in one go. */
export const PASSAGE_LIMIT = 250_000;

export class PassageBuilder {
  readonly pages = new PageTracker();
  readonly passages: ImportedPassage[] = [];
  /** The kind of block that words open when none is open. */
  kind: BlockKind = "paragraph";
  readonly #dropped: DroppedList;
  readonly #fallback: (place: FilePlace) => PassageStart;
  readonly #name: string;
  #passage: OpenPassage | null = null;
  #block: Block | null = null;
  #blank = false;
  #joined = false;
  #waiting: Atom[] = [];

  /** `name` is the file's, for refusals; `fallback` cites words that stand before the first reference. */
  constructor(name: string, dropped: DroppedList, fallback: (place: FilePlace) => PassageStart) {
    this.#name = name;
    this.#dropped = dropped;
    this.#fallback = fallback;
  }

  startPassage(start: PassageStart): void {
    this.#finishPassage();
    this.#passage = { start, blocks: [], firstPage: null, lastPage: null };
  }

  /** What follows stands under no reference until another passage starts. */
  endPassage(): void {
    this.#finishPassage();
  }

  /** Ends the block that is open, if any; the next words open one of this kind. */
  block(kind: BlockKind): void {
    this.#block = null;
    this.#blank = false;
    this.#joined = false;
    this.kind = kind;
  }

  #openBlock(place: FilePlace): Block {
    if (this.#passage === null) this.startPassage(this.#fallback(place));
    if (this.#block === null) {
      this.#block = { type: this.kind, content: [] };
      this.#passage?.blocks.push(this.#block);
    }
    return this.#block;
  }

  #markPage(): void {
    if (this.#passage === null) return;
    this.#passage.firstPage ??= this.pages.now;
    this.#passage.lastPage = this.pages.now;
  }

  #push(block: Block, text: string, marks: readonly TextMark[]): void {
    const last = block.content.at(-1);
    if (last?.type === "text" && sameMarks(last.marks ?? [], marks)) last.text += text;
    else block.content.push(marks.length === 0 ? { type: "text", text } : { type: "text", text, marks: [...marks] });
  }

  text(run: string, marks: readonly TextMark[], place: FilePlace): void {
    const folded = run.replace(/[ \t\r\n]+/g, " ");
    const words = folded.startsWith(" ") ? folded.slice(1) : folded;
    if (folded.startsWith(" ")) this.#blank = true;
    if (words === "") return;
    const block = this.#openBlock(place);
    const last = block.content.at(-1);
    const hasWords = block.content.some((piece) => piece.type === "text");
    if (this.#blank && !this.#joined && hasWords) {
      this.#push(block, " ", last?.type === "text" && sameMarks(last.marks ?? [], marks) ? marks : []);
    }
    block.content.push(...this.#waiting);
    this.#waiting = [];
    this.#blank = words.endsWith(" ");
    this.#joined = false;
    this.#push(block, this.#blank ? words.slice(0, -1) : words, marks);
    this.#markPage();
  }

  /** A page, column, line or other beginning; it stands before the next word. */
  milestone(unit: string, n: string): void {
    this.#waiting.push({ type: "milestone", attrs: { unit, n } });
  }

  /** The words on both sides are apart even where no blank was written. */
  part(): void {
    this.#blank = true;
  }

  /** The next words go on with the word before, whatever blanks stand between. */
  join(): void {
    this.#joined = true;
  }

  gap(reason: string, place: FilePlace): void {
    const block = this.#openBlock(place);
    if (this.#blank && !this.#joined && block.content.some((piece) => piece.type === "text"))
      this.#push(block, " ", []);
    this.#blank = false;
    block.content.push(...this.#waiting, { type: "gap", attrs: { reason } });
    this.#waiting = [];
    this.#markPage();
  }

  /** A note clings to the word before it; between blocks, to the end of the last one of the passage. */
  note(text: string, label: string, place: FilePlace): void {
    const atom: Atom = { type: "note", attrs: { text, label } };
    const before = this.#block ?? this.#passage?.blocks.at(-1);
    if (before === undefined) this.#openBlock(place).content.push(atom);
    else before.content.push(atom);
  }

  #finishPassage(): void {
    const passage = this.#passage;
    this.#passage = null;
    this.#block = null;
    this.#blank = false;
    this.#joined = false;
    if (passage === null) return;
    const { start } = passage;
    for (const block of passage.blocks) trimEnd(block);
    const blocks = passage.blocks.filter((block) => block.content.length > 0);
    if (blocks.length === 0) {
      const label = formatReferences(start.references);
      if (start.expectsWords) this.#dropped.add(`reference ${label}`, "No words stand there.", start.place);
      return;
    }
    if (this.passages.length >= PASSAGE_LIMIT) {
      throw new RefusedError(refuse.tooManyPassages(this.#name, PASSAGE_LIMIT, start.place));
    }
    const first = passage.firstPage ?? this.pages.now;
    const json = { type: "doc", content: blocks };
    const references = [...start.references, ...pageReferences(first, passage.lastPage ?? first)];
    this.passages.push({
      references,
      ...(start.division === undefined ? {} : { division: start.division }),
      doc: json,
      text: projectDoc(docFromJson(json)),
      place: start.place,
    });
  }

  /** Ends the text. Beginnings that still wait for a word stand at the end of the last passage. */
  finish(): ImportedPassage[] {
    const last = this.#passage?.blocks.at(-1);
    if (last !== undefined) last.content.push(...this.#waiting);
    this.#waiting = [];
    this.#finishPassage();
    reportRepeats(this.passages, this.#dropped);
    return this.passages;
  }
}

/** A gap may be preceded by a blank and followed by nothing. Only then is there something to trim. */
const trimEnd = (block: Block): void => {
  const lastText = block.content.findLast((piece): piece is TextPiece => piece.type === "text");
  if (lastText?.text.endsWith(" ") !== true) return;
  lastText.text = lastText.text.slice(0, -1);
  if (lastText.text === "") block.content.splice(block.content.indexOf(lastText), 1);
};

/** Two passages with one section reference are both kept: the file says so, and a person decides. */
const reportRepeats = (passages: readonly ImportedPassage[], dropped: DroppedList): void => {
  const seen = new Set<string>();
  for (const passage of passages) {
    const own = passage.references[0];
    if (own?.kind !== "section") continue;
    const label = formatReference(own);
    if (seen.has(label))
      dropped.add(`reference ${label}`, "It stands more than once; each passage is kept.", passage.place);
    seen.add(label);
  }
};
