/** server/import/reference-line.ts - which lines of plain text and Markdown cite what follows, and which begin with a number.
 *  May import: schema types, shared/cite. A line counts only when all of it is a reference (I11). */
import type { Reference } from "../../schema/reference.ts";
import { romanValue } from "../../shared/cite/order-references.ts";
import { parseReferences } from "../../shared/cite/parse-reference.ts";

export type BareNumber = "section" | "page";

const LONGEST_LINE = 120;
// A dotted number, a section sign, or the label of a leaf or page: anything else is words. Each looks at the start only.
const MAY_BE_REFERENCE = /^(?:\d+\.\d|§|(?:\S{1,20} )?(?:ff?|foll?|fols|folios?|pp?|pages?)\.? ?(?:\d|[ivxlc]+$))/i;
const BARE = /^(\d{1,6})$/;

/** The references of a line that is nothing but references ("7.13", "[7.13]", "§ 12", "f. 12v; p. 212", "# 7.13"), else null.
 *  A bare number counts only inside brackets or behind `#`, as `bare`. */
export const readReferenceLine = (line: string, bare: BareNumber): Reference[] | null => {
  if (line.length > LONGEST_LINE) return null;
  const trimmed = line.trim();
  const inner = /^\[([^[\]]+)\]$/.exec(trimmed)?.[1] ?? /^#{1,6}\s+(.+)$/.exec(trimmed)?.[1];
  const text = (inner ?? trimmed).trim();
  const number = BARE.exec(text)?.[1];
  if (number !== undefined) {
    if (inner === undefined) return null;
    return [bare === "page" ? { kind: "page", of: "", from: { page: number } } : { kind: "section", from: [number] }];
  }
  if (!MAY_BE_REFERENCE.test(text) || !/[\p{L}\p{N}]$/u.test(text)) return null;
  const read = parseReferences(text);
  return read.ok ? read.references : null;
};

export interface LeadingNumber {
  number: number;
  /** What stood there, with the blank behind it: "782. ". */
  mark: string;
}

/** The number a paragraph begins with ("782. ", "12) ", "§ 12 "), or null. */
export const readLeadingNumber = (line: string): LeadingNumber | null => {
  const match = /^(?:§\s*(\d{1,6})[.)]?|(\d{1,6})[.)])(?:\s+|$)/.exec(line);
  const digits = match?.[1] ?? match?.[2];
  return match === null || digits === undefined ? null : { number: Number(digits), mark: match[0] };
};

/** A heading that is a chapter's number: "VII", "Chapter 7.", "BOOK II". The number as figures and any words behind it. */
export const readChapterHeading = (line: string): { number: number; title: string } | null => {
  const named = /^(?:chapter|book|part|cap\.|ch\.)\s+([IVXLC]+|\d{1,4})\b[.:]?(?:\s*[-–—:]?\s+(.{1,120}))?$/i.exec(
    line,
  );
  const roman = named?.[1] ?? /^([IVXLC]{1,8})\.?$/.exec(line)?.[1];
  if (roman === undefined) return null;
  const number = /^\d/.test(roman) ? Number(roman) : (romanValue(roman) ?? LONE_LETTERS.get(roman) ?? 0);
  return number === 0 ? null : { number, title: named?.[2]?.trim() ?? "" };
};

/** Alone on a line these are numerals, though one letter elsewhere is a letter. */
const LONE_LETTERS: ReadonlyMap<string, number> = new Map([
  ["C", 100],
  ["L", 50],
]);
