/** shared/text/coverage.ts - how much of a text its marks cover, however they overlap.
 *  May import: nothing. Keeps rule T23 (shared/text/RULES.md). Offsets: UTF-16 units from 0, half-open. */

type Stretch = { readonly from: number; readonly to: number };

/** Units of 0 to `length` that lie in at least one range. Parts outside the text, and gaps, count nothing. */
export function coverage(length: number, ranges: readonly Stretch[]): number {
  return unionOf(length, ranges).reduce((sum, { from, to }) => sum + to - from, 0);
}

/** The share of the characters other than white space that lie in at least one range: 0 to 1, and 1 for a text without
 *  any, since nothing of it is left to work on. */
export function coveredShare(text: string, ranges: readonly Stretch[]): number {
  const total = countInk(text);
  if (total === 0) return 1;
  const covered = unionOf(text.length, ranges).reduce((sum, { from, to }) => sum + countInk(text.slice(from, to)), 0);
  return covered / total;
}

/** The same places as `ranges`, in order and apart from each other. */
export function unionOf(length: number, ranges: readonly Stretch[]): Stretch[] {
  const inside = ranges
    .map(({ from, to }) => ({ from: Math.max(0, from), to: Math.min(length, to) }))
    .filter(({ from, to }) => from < to)
    .sort((first, second) => first.from - second.from);
  const union: { from: number; to: number }[] = [];
  for (const range of inside) {
    const last = union.at(-1);
    if (last !== undefined && range.from <= last.to) last.to = Math.max(last.to, range.to);
    else union.push({ ...range });
  }
  return union;
}

function countInk(text: string): number {
  return text.replace(/\s+/gu, "").length;
}
