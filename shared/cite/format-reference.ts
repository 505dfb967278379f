/** shared/cite/format-reference.ts - writes a reference as a scholar would: 7.13–17; f. 7r, ll. 10–17; pp. 212–214.
 *  May import: schema types, siblings in shared/cite. Keeps rules C1-C6 (shared/cite/RULES.md). The forms are read back by parse-reference. */
import type {
  FolioPoint,
  FolioReference,
  PagePoint,
  PageReference,
  Reference,
  SectionReference,
} from "../../schema/reference.ts";
import { BARE_FOLIO, FOLIO_FORM, PAGE_FORM, tidyReference } from "./reference-forms.ts";

export type ReferenceFormat = {
  /** Whether to name the witness or the paper that is paged, where the reference has one. Default true. */
  readonly withName?: boolean;
};

/** The short form. A range whose ends are equal is written as one place. */
export function formatReference(reference: Reference, options: ReferenceFormat = {}): string {
  const withName = options.withName ?? true;
  switch (reference.kind) {
    case "section":
      return formatSection(reference);
    case "folio":
      return named(withName ? reference.witness : "", formatFolio(reference));
    case "page":
      return named(withName ? reference.of : "", formatPage(reference));
  }
}

/** Several references of one passage, in the order given. */
export function formatReferences(references: readonly Reference[], options: ReferenceFormat = {}): string {
  return references.map((reference) => formatReference(reference, options)).join("; ");
}

const DASH = "–";

function named(name: string, text: string): string {
  return name === "" ? text : `${name} ${text}`;
}

function formatSection(reference: SectionReference): string {
  const plain = sectionText(reference);
  // Without the sign these would be read as a leaf or a page.
  const sign = [FOLIO_FORM, PAGE_FORM, BARE_FOLIO].some((form) => form.test(tidyReference(plain))) ? "§ " : "";
  return sign + plain;
}

function sectionText({ from, to }: SectionReference): string {
  const first = from.join(".");
  if (to === undefined || same(from, to)) return first;
  if (to.length > from.length) return `${first}${DASH}${to.join(".")}`;
  // Of fewer levels than the beginning: counted from the widest level, and said so.
  if (to.length < from.length) return `${first}${DASH}§ ${to.join(".")}`;
  const shared = from.findIndex((level, index) => level !== to[index]);
  return `${first}${DASH}${to.slice(shared).join(".")}`;
}

function formatFolio({ from, to }: FolioReference): string {
  if (to === undefined || same(from, to)) return `f. ${folioPoint(from)}`;
  const sameLeaf = from.leaf === to.leaf;
  const label = sameLeaf ? "f." : "ff.";
  const sameColumn = sameLeaf && from.side === to.side && from.column === to.column;
  if (sameColumn && from.line !== undefined && to.line !== undefined) {
    return `${label} ${side(from)}, ll. ${from.line}${DASH}${to.line}`;
  }
  const plain =
    from.column === undefined && from.line === undefined && to.column === undefined && to.line === undefined;
  if (plain && sameLeaf) return `${label} ${side(from)}${DASH}${to.side}`;
  // Whole leaves need no side: 1–12v begins on 1r, and 7–9 ends on 9v.
  const first = plain && from.side === "r" ? String(from.leaf) : folioPoint(from);
  return `${label} ${first}${DASH}${folioPoint(to)}`;
}

function side(point: FolioPoint): string {
  return `${point.leaf}${point.side}${point.column ?? ""}`;
}

function folioPoint(point: FolioPoint): string {
  return point.line === undefined ? side(point) : `${side(point)}, l. ${point.line}`;
}

function formatPage({ from, to }: PageReference): string {
  if (to === undefined || same(from, to)) return `p. ${pagePoint(from)}`;
  if (from.page === to.page && from.line !== undefined && to.line !== undefined) {
    return `p. ${from.page}, ll. ${from.line}${DASH}${to.line}`;
  }
  return `pp. ${pagePoint(from)}${DASH}${pagePoint(to)}`;
}

function pagePoint(point: PagePoint): string {
  return point.line === undefined ? point.page : `${point.page}, l. ${point.line}`;
}

function same(first: unknown, second: unknown): boolean {
  return JSON.stringify(keysInOrder(first)) === JSON.stringify(keysInOrder(second));
}

/** Two points are the same whatever the order of their keys, and a key left out is the same as an undefined one. */
function keysInOrder(value: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.entries(value)
    .filter(([, held]) => held !== undefined)
    .sort(([first], [second]) => (first < second ? -1 : 1));
}
