/** shared/cite/citation-line.ts - the short citation that stands under every step on paper.
 *  May import: schema types, siblings in shared/cite. Keeps rules C17 and C18 (shared/cite/RULES.md). */
import type { Reference } from "../../schema/reference.ts";
import { formatReference } from "./format-reference.ts";

export type Citation = {
  /** Short title of the work as cited; empty when the paper has one work and names it at its head. */
  readonly work: string;
  /** The form the work uses stands first; the others follow in brackets. */
  readonly references: readonly Reference[];
  /** The quoted words, or empty. */
  readonly quote: string;
  /** CTS URN, or empty. */
  readonly urn: string;
};

/** Longest quotation in a line, in characters; longer ones lose their middle, where "…" then stands. */
export const LONGEST_QUOTE = 90;

/** For instance: On the Spear 7.13 (A f. 7r, l. 10; tr. p. 21): “let the rider turn” [urn:cts:…]. Parts that are empty
 *  are left out with their signs. */
export function citationLine({ work, references, quote, urn }: Citation): string {
  const [first, ...others] = references.map((reference) => formatReference(reference));
  const place = [work, first].filter((part) => part !== undefined && part !== "").join(" ");
  const also = others.length === 0 ? "" : ` (${others.join("; ")})`;
  const words = shortenQuote(quote);
  const said = words === "" ? "" : `${place + also === "" ? "" : ": "}“${words}”`;
  const link = urn === "" ? "" : ` [${urn}]`;
  return `${place}${also}${said}${link}`.trim();
}

/** The words on one line, with block breaks as spaces; of a long quotation its beginning and its end. */
export function shortenQuote(quote: string, longest = LONGEST_QUOTE): string {
  const words = quote.replace(/\s+/gu, " ").trim().split(" ");
  const whole = words.join(" ");
  if ([...whole].length <= longest || words.length < 3) return whole;
  const head: string[] = [];
  const tail: string[] = [];
  let left = longest - 3;
  for (let index = 0; index < words.length; index += 1) {
    // Two words from the beginning for each one from the end: the beginning is what one looks for.
    const fromEnd = index % 3 === 2;
    const word = (fromEnd ? words[words.length - 1 - tail.length] : words[head.length]) ?? "";
    left -= [...word].length + 1;
    if (left < 0 && head.length > 0 && tail.length > 0) break;
    if (fromEnd) tail.unshift(word);
    else head.push(word);
    if (left < 0 && tail.length > 0) break;
  }
  return head.length + tail.length >= words.length ? whole : `${head.join(" ")} … ${tail.join(" ")}`;
}
