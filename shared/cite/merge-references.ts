/** shared/cite/merge-references.ts - many places as few: ff. 12r–13v for four pages one after another; 7.13–14.
 *  May import: schema types, siblings in shared/cite. Keeps rules C20-C22 (shared/cite/RULES.md). */
import type { FolioPoint, Reference } from "../../schema/reference.ts";
import { formatReference } from "./format-reference.ts";
import { compareReferences, containsReference } from "./order-references.ts";

/** Whether `second` comes right behind `first` in the book, with nothing between. */
export type IsNext = (first: Reference, second: Reference) => boolean;

/** Each place once, in the order of `compareReferences`; what lies within another or comes right behind it becomes one
 *  range with it. What comes right behind is known by its numbers, and by `isNext` where the book's own order is known. */
export function mergeReferences(references: readonly Reference[], isNext: IsNext = () => false): Reference[] {
  const merged: Reference[] = [];
  for (const reference of [...references].sort(compareReferences)) {
    const last = merged.at(-1);
    if (last !== undefined && containsReference(last, reference)) continue;
    const joins =
      last !== undefined && (overlaps(last, reference) || followsByNumber(last, reference) || isNext(last, reference));
    if (joins) merged[merged.length - 1] = joined(last, reference);
    else merged.push(reference);
  }
  return merged;
}

/** The merged places as they are written: "A ff. 2v–3v; 7.13–14". Those of one witness or paper after the first are written
 *  without its name: "A f. 3r; f. 5v". */
export function formatMerged(references: readonly Reference[], isNext?: IsNext): string {
  let named = "";
  return mergeReferences(references, isNext)
    .map((reference) => {
      const name = nameOf(reference);
      const withName = name !== named;
      named = name;
      return formatReference(reference, { withName });
    })
    .join("; ");
}

/** What comes right behind what, by the places of passages in the order of the book. */
export function nextInBook(passages: readonly (readonly Reference[])[]): IsNext {
  const starts = new Map<string, number[]>();
  const ends = new Map<string, number[]>();
  const note = (map: Map<string, number[]>, key: string, index: number): void => {
    map.set(key, [...(map.get(key) ?? []), index]);
  };
  for (const [index, references] of passages.entries())
    for (const reference of references) {
      note(starts, pointKey(reference, reference.from), index);
      note(ends, pointKey(reference, reference.to ?? reference.from), index);
    }
  return (first, second) => {
    const before = ends.get(pointKey(first, first.to ?? first.from)) ?? [];
    const behind = starts.get(pointKey(second, second.from)) ?? [];
    return before.some((index) => behind.includes(index + 1));
  };
}

function nameOf(reference: Reference): string {
  return reference.kind === "folio" ? reference.witness : reference.kind === "page" ? reference.of : "";
}

function pointKey(reference: Reference, point: unknown): string {
  const fields = Object.entries(point as object).filter(([, held]) => held !== undefined);
  fields.sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([reference.kind, nameOf(reference), fields]);
}

/** `first` comes before `second` or begins with it, and does not hold it. */
function overlaps(first: Reference, second: Reference): boolean {
  const { to: _to, ...start } = second;
  return containsReference(first, start as Reference);
}

function joined(first: Reference, second: Reference): Reference {
  return { ...first, to: second.to ?? second.from } as Reference;
}

function followsByNumber(first: Reference, second: Reference): boolean {
  if (first.kind === "section" && second.kind === "section") {
    const end = first.to ?? first.from;
    const { from } = second;
    const parents = end.length === from.length && end.slice(0, -1).every((level, index) => level === from[index]);
    return parents && isNextNumber(end.at(-1) ?? "", from.at(-1) ?? "");
  }
  if (first.kind === "page" && second.kind === "page") {
    const end = first.to ?? first.from;
    if (first.of !== second.of) return false;
    return end.page === second.from.page
      ? end.line !== undefined && end.line + 1 === second.from.line
      : end.line === undefined && second.from.line === undefined && isNextNumber(end.page, second.from.page);
  }
  if (first.kind === "folio" && second.kind === "folio") {
    return first.witness === second.witness && leafFollows(first.to ?? first.from, second.from);
  }
  return false;
}

/** Whole sides one after another, or lines of one side or column. How many lines a side has is not known. */
function leafFollows(end: FolioPoint, from: FolioPoint): boolean {
  if (end.line !== undefined || from.line !== undefined) {
    const sameSide = end.leaf === from.leaf && end.side === from.side && end.column === from.column;
    return sameSide && end.line !== undefined && end.line + 1 === from.line;
  }
  if (end.column !== undefined || from.column !== undefined) return false;
  return end.side === "r"
    ? end.leaf === from.leaf && from.side === "v"
    : end.leaf + 1 === from.leaf && from.side === "r";
}

function isNextNumber(first: string, second: string): boolean {
  return /^\d{1,9}$/.test(first) && /^\d{1,9}$/.test(second) && Number(first) + 1 === Number(second);
}
