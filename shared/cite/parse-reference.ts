/** shared/cite/parse-reference.ts - reads a reference as scholars write it: 7.13–17; A f. 7r, ll. 10–17; pp. 212–214.
 *  May import: schema types, siblings in shared/cite. Keeps rules C1-C6 (shared/cite/RULES.md). */
import type { FolioPoint, PagePoint, Reference } from "../../schema/reference.ts";
import { compareReferences, endsBeforeItBegins } from "./order-references.ts";
import { BARE_FOLIO, FOLIO_FORM, FOLLOWING_FORM, PAGE_FORM, SECTION_NAME, tidyReference } from "./reference-forms.ts";

export type ParsedReference = { readonly ok: true; readonly reference: Reference } | ReferenceRefusal;

export type ParsedReferences = { readonly ok: true; readonly references: Reference[] } | ReferenceRefusal;

export type ReferenceRefusal = { readonly ok: false; readonly code: ReferenceRefusalCode; readonly sentence: string };

export type ReferenceRefusalCode =
  | "reference_empty"
  | "reference_too_long"
  | "reference_several"
  | "reference_following"
  | "reference_bare_folio"
  | "reference_side_missing"
  | "reference_backwards"
  | "reference_unreadable";

/** Longest reference that is read, in UTF-16 units. */
const LONGEST = 300;

/** Reads one reference. */
export function parseReference(text: string): ParsedReference {
  const tidy = tidyReference(text);
  if (tidy === "") return refuse("reference_empty", `A reference is needed, such as ${EXAMPLES}.`);
  if (tidy.length > LONGEST) {
    return refuse("reference_too_long", `A reference has at most ${LONGEST} characters; this one has ${tidy.length}.`);
  }
  if (tidy.includes(";")) {
    return refuse("reference_several", `"${text.trim()}" holds several references: give them one by one.`);
  }
  if (FOLLOWING_FORM.test(tidy)) {
    return refuse(
      "reference_following",
      `"${tidy}" does not say where the passage ends: write its last place, as in 7.13–17.`,
    );
  }
  const folio = FOLIO_FORM.exec(tidy);
  if (folio !== null) return finish(tidy, readFolio(folio[1] ?? "", folio[3] ?? ""));
  const page = PAGE_FORM.exec(tidy);
  if (page !== null)
    return finish(tidy, readPage(page[1] ?? "", (page[2] ?? page[3] ?? "").toLowerCase(), page[4] ?? ""));
  if (BARE_FOLIO.test(tidy)) {
    return refuse("reference_bare_folio", `"${tidy}" may be a leaf or a section: write "f. ${tidy}" or "§ ${tidy}".`);
  }
  return finish(tidy, readSection(tidy));
}

/** Reads a list: references parted by ";", and by "," where a number follows, as in "ff. 1–12v, 18–24r". Refused whole
 *  when one of them cannot be read. */
export function parseReferences(text: string): ParsedReferences {
  const references: Reference[] = [];
  for (const part of text.split(";").map(tidyReference)) {
    const place = FOLIO_FORM.exec(part)?.[3] ?? PAGE_FORM.exec(part)?.[4];
    const label = place === undefined ? "" : part.slice(0, part.length - place.length);
    const [first = "", ...others] = part.split(/, ?(?=\d)/u);
    for (const one of [first, ...others.map((other) => label + other)]) {
      const read = parseReference(one);
      if (!read.ok) return read;
      references.push(read.reference);
    }
  }
  return { ok: true, references };
}

const EXAMPLES = "7.13–17 (sections), f. 7r, ll. 10–17 (a leaf) or pp. 212–214 (pages)";

/** What a reader of one kind gives: a reference, a refusal of its own, or null when it cannot make anything of it. */
type Read = Reference | ReferenceRefusal | null;

function finish(text: string, read: Read): ParsedReference {
  if (read === null) {
    return refuse(
      "reference_unreadable",
      `"${text}" cannot be read as a reference: write ${EXAMPLES}, without the title of the work.`,
    );
  }
  if ("ok" in read) return read;
  if (endsBeforeItBegins(read)) {
    return refuse(
      "reference_backwards",
      `"${text}" ends before it begins: write the first place first, and the last in full.`,
    );
  }
  return { ok: true, reference: withoutEqualEnd(read) };
}

/** "7–7" is "7": one place has one form. */
function withoutEqualEnd(reference: Reference): Reference {
  const { to: _to, ...single } = reference;
  const start = single as Reference;
  if (reference.to === undefined) return reference;
  const end = { ...single, from: reference.to } as Reference;
  return compareReferences(start, end) === 0 ? start : reference;
}

function readSection(text: string): Read {
  const [first = "", last, ...rest] = text.replace(/(?<=\d)\. (?=\d)/gu, ".").split("-");
  if (rest.length > 0) return null;
  const from = levelsOf(first.replace(/^[§¶]{1,2} ?/u, ""));
  if (from === null) return null;
  if (last === undefined) return { kind: "section", from };
  const named = levelsOf(last.replace(/^[§¶] ?/u, ""));
  if (named === null) return null;
  // 7.13–17: what is left out is shared with the beginning. With the sign it is counted from the widest level.
  const shared = /^[§¶]/u.test(last) ? 0 : Math.max(0, from.length - named.length);
  return { kind: "section", from, to: [...from.slice(0, shared), ...named] };
}

function levelsOf(text: string): string[] | null {
  const levels = text.split(".");
  return levels.length <= 6 && levels.every((level) => level.length <= 40 && SECTION_NAME.test(level)) ? levels : null;
}

/** A leaf as it is written; the side may be missing, for whole leaves. */
const LEAF =
  /^(?<leaf>\d{1,9}) ?(?<side>r|v|recto|verso|ʳ|ᵛ)?[°º]?(?: ?(?<column>[a-d]))?(?:(?:, ?| )(?:ll?|lines?)(?:\. ?| )?(?<line>\d{1,9})|: ?(?<row>\d{1,9}))?$/iu;

type WrittenPoint = { leaf: number; side?: "r" | "v"; column?: FolioPoint["column"]; line?: number };

function readFolio(witness: string, text: string): Read {
  const [first = "", last, ...rest] = text.split("-");
  if (rest.length > 0 || witness.length > 20) return null;
  const from = leafOf(first);
  if (from === null) return null;
  const to = last === undefined ? from : endOf(last, from);
  if (to === null) return null;
  for (const point of [from, to]) {
    if (point.side === undefined && (point.line !== undefined || point.column !== undefined)) {
      const { leaf } = point;
      return refuse(
        "reference_side_missing",
        `Leaf ${leaf} needs its side here: write ${leaf}r (recto) or ${leaf}v (verso).`,
      );
    }
  }
  const start: FolioPoint = { ...from, side: from.side ?? "r" };
  if (last === undefined && from.side !== undefined) return { kind: "folio", witness, from: start };
  return { kind: "folio", witness, from: start, to: { ...to, side: to.side ?? "v" } };
}

/** The end of a range, with what it shares with the beginning left out: 7r–v, 3va–b, 7r, ll. 10–17, 112r–14v. */
function endOf(text: string, from: WrittenPoint): WrittenPoint | null {
  if (from.line !== undefined && /^\d{1,9}$/u.test(text)) return { ...from, line: atLeastOne(text) };
  const { line: _line, column: _column, ...side } = from;
  if (/^[a-d]$/u.test(text) && from.column !== undefined) return { ...side, column: text as FolioPoint["column"] };
  const turned = /^[rv]/u.test(text) ? leafOf(`${from.leaf}${text}`) : leafOf(text);
  if (turned === null) return null;
  return { ...turned, leaf: Number(completed(String(from.leaf), String(turned.leaf))) };
}

function leafOf(text: string): WrittenPoint | null {
  const found = LEAF.exec(text)?.groups;
  if (found === undefined) return null;
  const point: WrittenPoint = { leaf: Number(found.leaf) };
  const line = found.line ?? found.row;
  if (found.side !== undefined) point.side = /^[rʳ]/iu.test(found.side) ? "r" : "v";
  if (found.column !== undefined) point.column = found.column.toLowerCase() as FolioPoint["column"];
  if (line !== undefined) point.line = Number(line);
  return point.leaf < 1 || point.line === 0 ? null : point;
}

/** A page with its line: "212", "xii, l. 3". */
const PAGE = /^(?<page>[^\s,-]{1,40})(?:,? ?(?<!\S)(?<label>ll?|lines?)(?:\. ?| )?(?<line>\d{1,9}))?$/iu;

function readPage(of: string, label: string, text: string): Read {
  const [first = "", last, ...rest] = text.split("-");
  if (rest.length > 0 || of.length > 40) return null;
  const written = PAGE.exec(first)?.groups;
  const from = pageOf(first);
  if (from === null || written === undefined) return null;
  if (last === undefined) return { kind: "page", of, from };
  // "p. 212, ll. 3–7" is a range of lines; "pp. 212, l. 3–214" ends with a page.
  const inLines = from.line !== undefined && (written.label !== "l" || label === "p" || label === "page");
  if (inLines && /^\d{1,9}$/u.test(last)) {
    return { kind: "page", of, from, to: { page: from.page, line: atLeastOne(last) } };
  }
  const to = pageOf(last);
  return to === null ? null : { kind: "page", of, from, to: { ...to, page: completed(from.page, to.page) } };
}

function pageOf(text: string): PagePoint | null {
  const found = PAGE.exec(text)?.groups;
  if (found?.page === undefined) return null;
  if (found.line === undefined) return { page: found.page };
  return found.line === "0" ? null : { page: found.page, line: Number(found.line) };
}

/** A shortened last number made whole: 212–14 is 212–214. Any other comes back as it is. */
function completed(first: string, last: string): string {
  const shortened = /^\d+$/u.test(first) && /^\d+$/u.test(last) && last.length < first.length;
  return shortened ? first.slice(0, first.length - last.length) + last : last;
}

/** Line 0 is given back as 1: as the end of a range it is then refused as backwards, or is the line it begins with. */
function atLeastOne(digits: string): number {
  return Math.max(1, Number(digits));
}

function refuse(code: ReferenceRefusalCode, sentence: string): ReferenceRefusal {
  return { ok: false, code, sentence };
}
