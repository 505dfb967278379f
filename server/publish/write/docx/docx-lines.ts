/** server/publish/write/docx/docx-lines.ts - lines of a paper as runs: words with their style, language and direction.
 *  May import: docx, schema types, siblings, the room above. Keeps the bookmarks of a paper, numbered in the order they are
 *  written, since two runs of the program must give the same bytes. */
import {
  BookmarkEnd,
  BookmarkStart,
  EndnoteReferenceRun,
  ExternalHyperlink,
  FootnoteReferenceRun,
  InternalHyperlink,
  type IRunOptions,
  type ParagraphChild,
  TextRun,
} from "docx";
import type { Line, Paper, Span } from "../../../../schema/paper.ts";
import { languageTag, runsRightToLeft } from "../language-tag.ts";
import { linkTarget } from "../link-target.ts";
import { bare, type PaperPlaces } from "../paper-places.ts";
import type { Printable } from "../printable.ts";
import { bound } from "../unbroken.ts";
import { NOTHING_STYLE, SIGN_STYLE, SILENT_STYLE, type UsedRuns } from "./run-styles.ts";

type Child = ParagraphChild | BookmarkStart | BookmarkEnd;

/** The silence of the text: three spaced dots that stay together. */
const SILENT_DOTS = "\u00a0·\u00a0·\u00a0·\u00a0";
const NOTHING_RULE = "——";

export class DocxLines {
  readonly #paper: Paper;
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #names = new Map<string, string>();
  readonly #printable: Printable;
  readonly #used: UsedRuns;
  #bookmarks = 0;

  constructor(paper: Paper, { notes, anchors }: PaperPlaces, printable: Printable, used: UsedRuns) {
    this.#paper = paper;
    this.#printable = printable;
    this.#used = used;
    this.#numbers = new Map(notes.map(({ id, number }) => [id, number]));
    // Names of bookmarks may hold letters and digits alone, and 40 of them.
    for (const anchor of anchors) this.#names.set(anchor, `place_${this.#names.size + 1}`);
  }

  words(text: string): string {
    return this.#printable.forAnyFaces(text);
  }

  /** Runs of a line; `place` names it for links. */
  runs(line: Line, place: string | null = null): Child[] {
    const runs = line.flatMap((span) => this.#span(span));
    return place === null ? runs : this.marked(place, runs);
  }

  /** Runs with a bookmark around them. */
  marked(place: string, runs: readonly Child[]): Child[] {
    const name = this.#names.get(place);
    if (name === undefined) throw new RangeError(`No place of the paper is named ${place}.`);
    this.#bookmarks += 1;
    return [new BookmarkStart(name, this.#bookmarks), ...runs, new BookmarkEnd(this.#bookmarks)];
  }

  /** The name of the bookmark of a place. */
  nameOf(place: string): string | null {
    return this.#names.get(place) ?? null;
  }

  /** A bookmark for a place that no link of the paper leads to, such as a heading in the contents. */
  namePlace(place: string): void {
    if (!this.#names.has(place)) this.#names.set(place, `place_${this.#names.size + 1}`);
  }

  /** Whether a line as a whole runs from right to left. */
  isRightToLeft(line: Line): boolean {
    return runsRightToLeft(line.map((span) => (span.is === "words" ? span.text : "")).join(""));
  }

  #span(span: Span): Child[] {
    switch (span.is) {
      case "words":
        return this.#words(span);
      case "silent":
        return [new TextRun({ text: SILENT_DOTS, style: SILENT_STYLE })];
      case "nothing":
        return [new TextRun({ text: NOTHING_RULE, style: NOTHING_STYLE })];
      case "sign": {
        const run = new TextRun({ text: this.words(span.sign), style: SIGN_STYLE });
        return span.to === null ? [run] : this.#linked(bare(span.to), run);
      }
      case "note": {
        const number = this.#numbers.get(span.note);
        if (number === undefined) throw new RangeError(`The paper has no note ${span.note}.`);
        return this.marked(span.note, [
          this.#paper.notesAt === "end" ? new EndnoteReferenceRun(number) : new FootnoteReferenceRun(number),
        ]);
      }
    }
  }

  #words(span: Extract<Span, { is: "words" }>): Child[] {
    const style = this.#used.styleOf(span);
    const run = new TextRun({
      text: span.as === "said" ? this.words(span.text) : bound(this.words(span.text)),
      ...(style === null ? {} : { style }),
      ...this.#languageOf(span.text, span.language),
    });
    const target = linkTarget(span.to);
    // A room of the window cannot be gone to from a letter.
    if (target === null || target.to === "window") return [run];
    if (target.to === "place") return this.#linked(target.name, run);
    return [new ExternalHyperlink({ children: [run], link: target.address })];
  }

  #linked(place: string, run: TextRun): Child[] {
    const anchor = this.#names.get(place);
    return anchor === undefined ? [run] : [new InternalHyperlink({ children: [run], anchor })];
  }

  #languageOf(text: string, tag: string | null): Pick<IRunOptions, "language" | "rightToLeft"> {
    const read = tag === this.#paper.language ? null : languageTag(tag);
    const value = read === null ? null : [read.language, read.region].filter((part) => part !== null).join("-");
    if (runsRightToLeft(text)) return { rightToLeft: true, language: { bidirectional: value ?? "ar-SA" } };
    return value === null ? {} : { language: { value } };
  }
}
