/** server/publish/write/printable.ts - words as they can be printed: no character that would break a file, or that no
 *  face has a shape for, goes through unseen.
 *  May import: server/publish, siblings. */
import { xmlCharacters } from "../xml-characters.ts";
import type { CodePoints } from "./face-coverage.ts";

/** What stands in the place of a character that cannot be printed; every family has it. */
export const REPLACEMENT = "\u{fffd}";

/** A word longer than this many characters may be broken, so that it does not run off the paper. */
const LONG_WORD = 32;
/** Where a long word is broken when nothing in it invites a break. */
const PIECE = 12;
const BREAK = "\u{200b}";

/** Code points that are never drawn and need no shape: joiners, directions, breaks, selectors. */
const UNDRAWN = /\p{Default_Ignorable_Code_Point}/u;

/** Control characters that XML would allow, and what is no character at all. */
const NO_CHARACTER = /[\u007f-\u009f\ufdd0-\ufdef]/gu;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

/** Cleans words one after another and remembers what had no shape. One for each paper. */
export class Printable {
  readonly #families: readonly CodePoints[];
  readonly #missing = new Set<string>();

  constructor(families: readonly CodePoints[]) {
    this.#families = families;
  }

  /** Whole characters without a shape in any one family, in the order of their code points. */
  get missing(): string[] {
    return [...this.#missing].sort((a, b) => (a < b ? -1 : 1));
  }

  /** For paper, where the faces are fixed: what none of them has is replaced. */
  forFaces(text: string): string {
    const lawful = this.lawful(text);
    if (!this.#hasGap(lawful)) return withBreaks(lawful);
    const parts = Array.from(graphemes.segment(lawful), ({ segment }) =>
      this.#drawn(segment) ? segment : REPLACEMENT,
    );
    return withBreaks(parts.join(""));
  }

  /** For files that are opened with other faces too: every character stays, and what ours lack is remembered. */
  forAnyFaces(text: string): string {
    const lawful = this.lawful(text);
    if (this.#hasGap(lawful)) for (const { segment } of graphemes.segment(lawful)) this.#drawn(segment);
    return lawful;
  }

  /** Line ends become spaces; what no file may hold is replaced. */
  lawful(text: string): string {
    const oneLine = text.replace(/\r\n?|[\n\t\u0085\u2028\u2029]/gu, " ");
    return xmlCharacters(oneLine).replace(NO_CHARACTER, REPLACEMENT);
  }

  #hasGap(text: string): boolean {
    for (const character of text) if (!this.#hasShape(character)) return true;
    // A sign that is put on a letter must be in the same family as the letter.
    return /\p{M}/u.test(text);
  }

  #hasShape(character: string): boolean {
    const point = character.codePointAt(0) ?? 0;
    return this.#families.some((points) => points.has(point)) || UNDRAWN.test(character);
  }

  #drawn(segment: string): boolean {
    const needed = [...segment].filter((character) => !UNDRAWN.test(character)).map((one) => one.codePointAt(0) ?? 0);
    const found = this.#families.some((points) => needed.every((point) => points.has(point)));
    if (!found) this.#missing.add(segment);
    return found;
  }
}

/** Invites a break in words that are longer than any line of a narrow column. */
function withBreaks(text: string): string {
  if (text.length <= LONG_WORD) return text;
  return text.replace(/\S{33,}/gu, (word) => {
    const inviting = word.replace(/[/:;,._?=&-](?=.)/gu, (sign) => sign + BREAK);
    return inviting
      .split(BREAK)
      .map((part) => (part.length <= LONG_WORD ? part : inPieces(part)))
      .join(BREAK);
  });
}

function inPieces(word: string): string {
  const letters = Array.from(graphemes.segment(word), ({ segment }) => segment);
  return letters.map((letter, index) => (index > 0 && index % PIECE === 0 ? BREAK + letter : letter)).join("");
}

/** What a paper says of characters it cannot show: each as itself where that helps, always by its number. */
export function missingSentence(missing: readonly string[], replaced: boolean): string {
  const told = missing.slice(0, 40).map((character) => {
    const numbers = [...character].map(
      (one) => `U+${(one.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`,
    );
    return numbers.join(" ");
  });
  const more = missing.length > told.length ? ` and ${missing.length - told.length} more` : "";
  const list = `${told.join(", ")}${more}`;
  return replaced
    ? `Not printed: the faces of this paper have no shape for ${list}. Each stands as ${REPLACEMENT} in its place.`
    : `Whether these characters show depends on the machine that opens this: ${list}.`;
}
