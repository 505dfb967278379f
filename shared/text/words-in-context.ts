/** shared/text/words-in-context.ts - words that were found, with some of what stands before and after them.
 *  May import: siblings in shared/text. Keeps rule T32 (shared/text/RULES.md). Offsets: UTF-16 units from 0, half-open. */
import { isGraphemeBoundary } from "./graphemes.ts";

export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface WordsInContext {
  readonly quote: string;
  /** Where the quote begins in the text. */
  readonly at: number;
  /** Where the words stand in the quote: all of the given ones that lie whole within it. */
  readonly hits: readonly Span[];
  /** Whether the text goes on before and after. */
  readonly cutBefore: boolean;
  readonly cutAfter: boolean;
}

/** How much is shown, in units: before the words, and from their beginning on. */
export interface ContextSize {
  readonly before: number;
  readonly after: number;
}

/** The text around `spans[around]`, cut between words where there are blanks, never inside a character, and never inside
 *  the words themselves. Spans are in order and apart. Without any, the beginning of the text. */
export function wordsInContext(
  text: string,
  spans: readonly Span[],
  { before, after }: ContextSize,
  around = 0,
): WordsInContext {
  const middle = spans[around] ?? { from: 0, to: 0 };
  const from = cutForward(text, Math.max(0, middle.from - before), middle.from);
  const to = cutBack(text, Math.min(text.length, Math.max(middle.to, middle.from + after)), middle.to);
  return {
    quote: text.slice(from, to),
    at: from,
    hits: spans
      .filter((span) => span.from >= from && span.to <= to)
      .map((span) => ({ from: span.from - from, to: span.to - from })),
    cutBefore: text.slice(0, from).trim() !== "",
    cutAfter: text.slice(to).trim() !== "",
  };
}

/** The first beginning of a word from `start` on; where the whole stretch is one word, the next whole character. */
function cutForward(text: string, start: number, limit: number): number {
  if (start === 0) return 0;
  for (let at = start; at < limit; at += 1) {
    if (/\s/u.test(text.charAt(at - 1)) && !/\s/u.test(text.charAt(at))) return at;
  }
  let at = start;
  while (at < limit && !isGraphemeBoundary(text, at)) at += 1;
  return at;
}

/** The last end of a word up to `end`; where the whole stretch is one word, the whole character before. */
function cutBack(text: string, end: number, limit: number): number {
  if (end === text.length) return end;
  for (let at = end; at > limit; at -= 1) {
    if (/\s/u.test(text.charAt(at)) && !/\s/u.test(text.charAt(at - 1))) return at;
  }
  let at = end;
  while (at > limit && !isGraphemeBoundary(text, at)) at -= 1;
  return at;
}

/** Which of the hits to show where not all can be: the first of those with the most different things within `reach`
 *  units of their beginning. 0 when there are none. */
export function densestHit(hits: readonly (Span & { readonly wanted: number })[], reach: number): number {
  let best = 0;
  let most = 0;
  hits.forEach((hit, index) => {
    const near = new Set<number>();
    for (let at = index; at < hits.length; at += 1) {
      const other = hits[at];
      if (other === undefined || other.to > hit.from + reach) break;
      near.add(other.wanted);
    }
    if (near.size > most) {
      most = near.size;
      best = index;
    }
  });
  return best;
}
