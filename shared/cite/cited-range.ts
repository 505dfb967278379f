/** shared/cite/cited-range.ts - references as the attributes of TEI's citedRange, and back without loss.
 *  May import: schema types, siblings in shared/cite. Keeps rule C26 (shared/cite/RULES.md). TEI P5: att.citing (unit, from,
 *  to) takes words without blanks, so whatever a label holds besides letters, digits and signs is written by its code. */
import type { PagePoint, Reference } from "../../schema/reference.ts";
import { folioFromLocus, locusOf } from "./locus.ts";

/** `name` is the witness of a leaf or what is paged; empty where there is none. */
export interface CitedRange {
  unit: string;
  name: string;
  from: string;
  to: string;
}

const LEVEL_MARK = ".";
const LINE_MARK = ":";

/** For one place `from` and `to` are equal. */
export function citedRangeOf(reference: Reference): CitedRange {
  const { kind } = reference;
  if (kind === "folio") return { unit: kind, name: reference.witness, ...locusOf(reference) };
  if (kind === "page") {
    const from = pageText(reference.from);
    return { unit: kind, name: reference.of, from, to: reference.to === undefined ? from : pageText(reference.to) };
  }
  const from = levelsText(reference.from);
  return { unit: kind, name: "", from, to: reference.to === undefined ? from : levelsText(reference.to) };
}

/** Null when the range is of another form. */
export function referenceOfRange({ unit, name, from, to }: CitedRange): Reference | null {
  if (unit === "folio") return folioFromLocus(name, from, to);
  if (unit === "page") {
    const [start, end] = [pageOf(from), pageOf(to)];
    if (start === null || end === null) return null;
    return from === to ? { kind: "page", of: name, from: start } : { kind: "page", of: name, from: start, to: end };
  }
  if (unit !== "section" || from === "" || to === "") return null;
  const [start, end] = [from, to].map((text) => text.split(LEVEL_MARK).map(decoded)) as [string[], string[]];
  return from === to ? { kind: "section", from: start } : { kind: "section", from: start, to: end };
}

/** A word as TEI takes it: whatever is no letter, digit, sign or mark, and the parting signs, by its code. */
export function encodedWord(text: string): string {
  return text.replace(/\p{Cs}/gu, "\uFFFD").replace(/[\p{C}\p{Z}%.:]/gu, codeOf);
}

/** encodeURIComponent leaves the stop as it is. */
const codeOf = (sign: string): string => (sign === "." ? "%2E" : encodeURIComponent(sign));

/** What was encoded; as it stands where it was not. */
export function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const levelsText = (levels: readonly string[]): string => levels.map(encodedWord).join(LEVEL_MARK);

const pageText = ({ page, line }: PagePoint): string =>
  `${encodedWord(page)}${line === undefined ? "" : `${LINE_MARK}${line}`}`;

function pageOf(text: string): PagePoint | null {
  const [page = "", line, ...rest] = text.split(LINE_MARK);
  if (page === "" || rest.length > 0) return null;
  if (line === undefined) return { page: decoded(page) };
  return /^[1-9]\d*$/u.test(line) ? { page: decoded(page), line: Number(line) } : null;
}
