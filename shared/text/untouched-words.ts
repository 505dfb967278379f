/** shared/text/untouched-words.ts - the words of a text that no mark touches, in stretches.
 *  May import: siblings. Keeps rule T33 (shared/text/RULES.md). Offsets: UTF-16 units from 0, half-open. */
import { unionOf } from "./coverage.ts";

export interface WordStretch {
  /** Where its first word begins. */
  from: number;
  /** Where its last word ends. */
  to: number;
  /** Its words in order, without what stands between them. */
  words: string[];
}

/** Letters and figures, with what joins them within a word: "horse’s", "boar-spear". */
const WORD = /[\p{L}\p{M}\p{N}]+(?:[’'‐-][\p{L}\p{M}\p{N}]+)*/gu;

/** How many words the text has, and those that no range touches; neighbours without a touched word between them are one
 *  stretch. A range that holds a part of a word touches it, an empty one touches nothing. */
export function untouchedWords(
  text: string,
  ranges: readonly { readonly from: number; readonly to: number }[],
): { words: number; stretches: WordStretch[] } {
  const touched = unionOf(text.length, ranges);
  const stretches: WordStretch[] = [];
  let words = 0;
  let next = 0;
  let open: WordStretch | null = null;
  for (const { index: from, 0: word } of text.matchAll(WORD)) {
    words += 1;
    const to = from + word.length;
    while ((touched[next]?.to ?? Number.POSITIVE_INFINITY) <= from) next += 1;
    if ((touched[next]?.from ?? Number.POSITIVE_INFINITY) < to) {
      open = null;
      continue;
    }
    if (open === null) {
      open = { from, to, words: [] };
      stretches.push(open);
    }
    open.to = to;
    open.words.push(word);
  }
  return { words, stretches };
}
