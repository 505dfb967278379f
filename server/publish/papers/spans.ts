/** server/publish/papers/spans.ts - the stretches that lines of a paper are made of.
 *  May import: schema types. Whatever is put in is words: a writer escapes it for its own form. */
import type { DrillStanding } from "../../../schema/drill.ts";
import type { Block, Line, PlainBlock, Span } from "../../../schema/paper.ts";

export type WordsSpan = Extract<Span, { is: "words" }>;
export type Of = Extract<Block, { is: "heading" }>["of"];
export type ParagraphAs = Extract<PlainBlock, { is: "paragraph" }>["as"];

/** The program's words, or words with a role. */
export function words(text: string, as: WordsSpan["as"] = null): WordsSpan {
  return { is: "words", text, as, language: null, standing: null, to: null };
}

/** Words of a text, in their own language; "" where that is not known. */
export function said(text: string, language: string): WordsSpan {
  return { ...words(text, "said"), language: language === "" ? null : language };
}

export function reference(text: string): WordsSpan {
  return words(text, "reference");
}

export function soft(text: string): WordsSpan {
  return words(text, "soft");
}

export function strong(text: string): WordsSpan {
  return words(text, "strong");
}

export function emphasis(text: string): WordsSpan {
  return words(text, "emphasis");
}

/** Words on the line of their warrant. */
export function lined(text: string, standing: DrillStanding): WordsSpan {
  return { ...words(text), standing };
}

export const SILENT: Span = { is: "silent" };
export const NOTHING: Span = { is: "nothing" };

/** Lines one after another with something between them; empty ones are passed over. */
export function joinedLines(lines: readonly Line[], between: string): Line {
  const full = lines.filter((line) => line.length > 0);
  return full.flatMap((line, index) => (index === 0 ? line : [words(between), ...line]));
}

export function paragraph(as: ParagraphAs, line: Line, of: Of = []): PlainBlock {
  return { is: "paragraph", as, words: line, of };
}

export function heading(level: number, line: Line, { anchor = null, of = [] }: HeadingPlace = {}): PlainBlock {
  return { is: "heading", level, anchor, words: line, of };
}

export interface HeadingPlace {
  anchor?: string | null;
  of?: Of;
}
