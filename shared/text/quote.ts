/** shared/text/quote.ts - the words a mark quotes with what stands before and after, and finding them again.
 *  May import: siblings in shared/text. Keeps rules T9-T12 (shared/text/RULES.md).
 *  Offsets: UTF-16 units from 0, half-open. W3C selectors count code points: convert with the two functions below. */
import { requireRange } from "./anchor-range.ts";
import { isGraphemeBoundary } from "./graphemes.ts";

/** Most units kept before and after the quoted words. */
export const QUOTE_CONTEXT = 32;

export type Quote = { readonly quote: string; readonly prefix: string; readonly suffix: string };

export type QuoteFound = {
  readonly from: number;
  readonly to: number;
  /** Units of the prefix and suffix that agree at this place, counted from the quoted words outward. */
  readonly agreement: number;
  /** Whether another place agrees as well; then nearness, or being first, decided. */
  readonly tied: boolean;
};

/** The exact words from `from` to `to`, with up to 32 units on each side, cut so that no grapheme is split.
 *  Throws RangeError when the range is not within the text. */
export function quoteAt(text: string, from: number, to: number): Quote {
  requireRange({ from, to }, text.length);
  let start = Math.max(0, from - QUOTE_CONTEXT);
  while (start < from && !isGraphemeBoundary(text, start)) start += 1;
  let end = Math.min(text.length, to + QUOTE_CONTEXT);
  while (end > to && !isGraphemeBoundary(text, end)) end -= 1;
  return { quote: text.slice(from, to), prefix: text.slice(start, from), suffix: text.slice(to, end) };
}

/** The place where the exact words stand, or null. Among several, the one that splits no grapheme, then the one whose
 *  neighbours agree best with prefix and suffix, then the nearest to `near`, then the first. An empty quote (a gap) is
 *  found only where prefix and suffix meet. */
export function findQuote(text: string, wanted: Quote, near?: number): QuoteFound | null {
  const { quote, prefix, suffix } = wanted;
  const needle = quote === "" ? prefix + suffix : quote;
  if (needle === "") return text === "" ? { from: 0, to: 0, agreement: 0, tied: false } : null;
  const shift = quote === "" ? prefix.length : 0;
  let best: Candidate | null = null;
  for (let at = text.indexOf(needle); at !== -1; at = text.indexOf(needle, at + 1)) {
    const from = at + shift;
    const to = from + quote.length;
    const candidate: Candidate = {
      from,
      to,
      whole: isGraphemeBoundary(text, from) && isGraphemeBoundary(text, to),
      agreement: commonEnd(text, from, prefix) + commonStart(text, to, suffix),
      distance: near === undefined ? 0 : Math.abs(from - near),
      tied: false,
    };
    best = best === null ? candidate : better(best, candidate);
  }
  return best === null ? null : { from: best.from, to: best.to, agreement: best.agreement, tied: best.tied };
}

type Candidate = QuoteFound & { readonly whole: boolean; readonly distance: number };

/** The better of two places; `first` stands earlier in the text and wins when all else is equal. */
function better(first: Candidate, second: Candidate): Candidate {
  const lead = Number(second.whole) - Number(first.whole) || second.agreement - first.agreement;
  if (lead !== 0) return lead > 0 ? second : first;
  return { ...(second.distance < first.distance ? second : first), tied: true };
}

/** How often the exact words stand in the text, overlapping places counted; 0 for an empty quote. */
export function countQuote(text: string, quote: string): number {
  if (quote === "") return 0;
  let count = 0;
  for (let at = text.indexOf(quote); at !== -1; at = text.indexOf(quote, at + 1)) count += 1;
  return count;
}

/** The number of code points before UTF-16 offset `offset`. Throws RangeError outside the text or inside a pair. */
export function toCodePoints(text: string, offset: number): number {
  requireRange({ from: offset, to: offset }, text.length);
  if (isLowSurrogate(text.charCodeAt(offset)) && isHighSurrogate(text.charCodeAt(offset - 1))) {
    throw new RangeError(`Offset ${offset} is inside one character: snap the range to graphemes first.`);
  }
  let count = 0;
  for (let at = 0; at < offset; count += 1) at += (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  return count;
}

/** The UTF-16 offset before which `count` code points stand; null when the text has fewer, or `count` is no count. */
export function fromCodePoints(text: string, count: number): number | null {
  if (!Number.isInteger(count) || count < 0) return null;
  let at = 0;
  for (let seen = 0; seen < count; seen += 1) {
    if (at >= text.length) return null;
    at += (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  }
  return at;
}

function commonEnd(text: string, end: number, prefix: string): number {
  let same = 0;
  while (same < prefix.length && same < end && text[end - 1 - same] === prefix[prefix.length - 1 - same]) same += 1;
  return same;
}

function commonStart(text: string, start: number, suffix: string): number {
  let same = 0;
  while (same < suffix.length && start + same < text.length && text[start + same] === suffix[same]) same += 1;
  return same;
}

function isHighSurrogate(unit: number): boolean {
  return unit >= 0xd800 && unit < 0xdc00;
}

function isLowSurrogate(unit: number): boolean {
  return unit >= 0xdc00 && unit < 0xe000;
}
