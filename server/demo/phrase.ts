/** server/demo/phrase.ts - words of a passage named by quoting them, and where they stand.
 *  May import: shared/text. Offsets: UTF-16 units of the projection from 0, half-open. */
import { anchorRange } from "../../shared/text/anchor-range.ts";
import { quoteAt } from "../../shared/text/quote.ts";

/** A text of a passage, as far as quoting from it goes. */
export interface QuotedText {
  passage: string;
  /** The passage text the offsets count in. */
  text: string;
  words: string;
  /** For messages: which passage and which layer. */
  name: string;
}

/** One place in one text. */
export interface Phrase {
  in: QuotedText;
  from: number;
  to: number;
}

/** A phrase that stands once; or one with the number of the occurrence meant, from 1. */
export type Quoted = string | { phrase: string; nth: number };

/** The `nth` occurrence of a phrase that stands more than once. */
export const nth = (phrase: string, count: number): Quoted => ({ phrase, nth: count });

/** Where the phrase stands. Throws RangeError when it is not there, or stands more than once and no occurrence is
 *  named: a mark must never land on the wrong words. */
export function findPhrase(text: QuotedText, quoted: Quoted): Phrase {
  const phrase = typeof quoted === "string" ? quoted : quoted.phrase;
  const places = placesOf(text.words, phrase);
  const at = typeof quoted === "string" ? places[0] : places[quoted.nth - 1];
  if (at === undefined) {
    const asked = typeof quoted === "string" ? "" : ` a ${quoted.nth}th time`;
    throw new RangeError(`"${phrase}" does not stand${asked} in ${text.name}: "${text.words}"`);
  }
  if (typeof quoted === "string" && places.length > 1) {
    throw new RangeError(`"${phrase}" stands ${places.length} times in ${text.name}: say which with nth(phrase, 1).`);
  }
  return { in: text, from: at, to: at + phrase.length };
}

/** The anchor of a phrase but for its id, mark and rank. */
export function phraseAnchor({ in: text, from, to }: Phrase) {
  return {
    is: "text" as const,
    passage: text.passage,
    text: text.text,
    ...anchorRange(from, to),
    ...quoteAt(text.words, from, to),
    fate: "same" as const,
  };
}

function placesOf(words: string, phrase: string): number[] {
  if (phrase === "") throw new RangeError("An empty phrase stands everywhere; quote the words that are meant.");
  const places: number[] = [];
  for (let at = words.indexOf(phrase); at !== -1; at = words.indexOf(phrase, at + 1)) places.push(at);
  return places;
}
