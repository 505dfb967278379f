/** shared/cite/order-references.ts - the order of references in a work, and whether one lies within another.
 *  May import: schema types. Keeps rules C7-C9 (shared/cite/RULES.md). */
import type { FolioPoint, PagePoint, Reference } from "../../schema/reference.ts";

/** Negative when `first` comes first, 0 when both name the same place, else positive. Total: sections before folios
 *  before pages; folios by witness, pages by what is paged; then by where they begin; of those that begin together the
 *  wider comes first. */
export function compareReferences(first: Reference, second: Reference): number {
  if (first.kind !== second.kind) return KINDS.indexOf(first.kind) - KINDS.indexOf(second.kind);
  const [a, b] = [spanOf(first), spanOf(second)];
  return compareNames(a.of, b.of) || compareStarts(a.from, b.from) || compareEnds(b.to, a.to);
}

/** Whether all of `point` lies in `range`, both ends counted: 7 holds 7.13, and f. 7r holds f. 7r, l. 3. False for
 *  different kinds, witnesses or papers. */
export function containsReference(range: Reference, point: Reference): boolean {
  if (range.kind !== point.kind) return false;
  const [outer, inner] = [spanOf(range), spanOf(point)];
  return outer.of === inner.of && compareStarts(outer.from, inner.from) <= 0 && compareEnds(outer.to, inner.to) >= 0;
}

/** Whether a range runs backwards. False where that cannot be told: names in letters have an order of their own, and
 *  front matter and text are counted apart. */
export function endsBeforeItBegins(reference: Reference): boolean {
  const { from, to } = spanOf(reference);
  for (const [index, key] of from.entries()) {
    const other = to[index];
    if (other === undefined) return false;
    const order = compareKeys(key, other);
    if (order !== 0) return order > 0 && key.rank === other.rank && key.rank !== LETTERED;
  }
  return false;
}

const KINDS: readonly Reference["kind"][] = ["section", "folio", "page"];

/** Levels from the widest to the narrowest. A shorter list names the whole of what longer ones lie in. */
type Span = { of: string; from: readonly Key[]; to: readonly Key[] };

/** Compared by `rank`, then `number`, then `rest`. */
type Key = { rank: number; number: number; rest: string };

const ROMAN_NUMBERED = 0;
const LETTERED = 1;
const NUMBERED = 2;

function spanOf(reference: Reference): Span {
  switch (reference.kind) {
    case "section": {
      const keys = (levels: readonly string[]) => levels.map(nameKey);
      return { of: "", from: keys(reference.from), to: keys(reference.to ?? reference.from) };
    }
    case "folio":
      return { of: reference.witness, from: folioKeys(reference.from), to: folioKeys(reference.to ?? reference.from) };
    case "page":
      return { of: reference.of, from: pageKeys(reference.from), to: pageKeys(reference.to ?? reference.from) };
  }
}

function folioKeys({ leaf, side, column, line }: FolioPoint): Key[] {
  const keys = [numberKey(leaf), numberKey(side === "r" ? 0 : 1)];
  // A line without a column is a line of the whole side: it comes before the columns.
  if (column !== undefined || line !== undefined) keys.push(numberKey(" abcd".indexOf(column ?? " ")));
  if (line !== undefined) keys.push(numberKey(line));
  return keys;
}

function pageKeys({ page, line }: PagePoint): Key[] {
  const keys = [nameKey(page)];
  if (line !== undefined) keys.push(numberKey(line));
  return keys;
}

function numberKey(number: number): Key {
  return { rank: NUMBERED, number, rest: "" };
}

/** Roman numerals first (front matter), by value; then names in letters; then numbers by value, "12" before "12a". */
function nameKey(name: string): Key {
  const [, digits, rest = ""] = /^(\d+)(.*)$/su.exec(name) ?? [];
  if (digits !== undefined) return { rank: NUMBERED, number: Number(digits), rest };
  const value = romanValue(name);
  return value === null
    ? { rank: LETTERED, number: 0, rest: name }
    : { rank: ROMAN_NUMBERED, number: value, rest: name };
}

/** The value of a roman numeral in small or capital letters, four equal strokes allowed as in old prints; else null.
 *  A single c, d, l or m is taken for a letter of the alphabet. */
export function romanValue(name: string): number | null {
  const numeral = name.toLowerCase();
  if (name !== numeral && name !== name.toUpperCase()) return null;
  if (!/^(?=.)m{0,4}(cm|cd|d?c{0,4})(xc|xl|l?x{0,4})(ix|iv|v?i{0,4})$/u.test(numeral)) return null;
  if (/^[cdlm]$/u.test(numeral)) return null;
  let value = 0;
  let next = 0;
  for (const letter of [...numeral].reverse()) {
    const worth = ROMAN[letter] ?? 0;
    value += worth < next ? -worth : worth;
    next = Math.max(next, worth);
  }
  return value;
}

const ROMAN: Readonly<Record<string, number>> = { i: 1, v: 5, x: 10, l: 50, c: 100, d: 500, m: 1000 };

/** Names of witnesses and papers: by code unit, so that every machine gives the same order. */
function compareNames(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0;
}

function compareKeys(first: Key, second: Key): number {
  return first.rank - second.rank || first.number - second.number || compareNames(first.rest, second.rest);
}

/** A shorter list begins where the first of what lies in it begins, and comes before it. */
function compareStarts(first: readonly Key[], second: readonly Key[]): number {
  return compareCommon(first, second) || first.length - second.length;
}

/** A shorter list ends where the last of what lies in it ends, and comes after it. */
function compareEnds(first: readonly Key[], second: readonly Key[]): number {
  return compareCommon(first, second) || second.length - first.length;
}

function compareCommon(first: readonly Key[], second: readonly Key[]): number {
  for (const [index, key] of first.entries()) {
    const other = second[index];
    if (other === undefined) return 0;
    const order = compareKeys(key, other);
    if (order !== 0) return order;
  }
  return 0;
}
