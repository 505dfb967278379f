/** shared/rank.ts - the order of rows: a rank between two ranks, and the one comparison everybody sorts by.
 *  May import: schema types, fractional-indexing. Ranks compare by code unit; rows of equal rank by id. */
import { generateKeyBetween, generateNKeysBetween } from "fractional-indexing";
import type { Rank } from "../schema/id.ts";

/** A rank after `before` and before `after`; null is the open end on that side.
 *  Two writers may have given the same rank to two rows: between equal ranks the same rank is given back, so that the
 *  new row stands among them and its id decides. Throws RangeError when `before` comes after `after`. */
export function rankBetween(before: Rank | null, after: Rank | null): Rank {
  if (isTie(before, after)) return before;
  return generateKeyBetween(before, after);
}

/** `count` ranks in ascending order between two ranks; see `rankBetween`. */
export function ranksBetween(before: Rank | null, after: Rank | null, count: number): Rank[] {
  if (!Number.isInteger(count) || count < 0) {
    throw new RangeError(`How many ranks must be a whole number from 0; got ${count}.`);
  }
  if (isTie(before, after)) return Array.from({ length: count }, () => before);
  return generateNKeysBetween(before, after, count);
}

/** For sorting: by rank, then by id. Total, so that the order rows come in never shows. */
export function compareRanked(first: { rank: string; id: string }, second: { rank: string; id: string }): number {
  return compareCodeUnits(first.rank, second.rank) || compareCodeUnits(first.id, second.id);
}

/** By UTF-16 code unit: the same on every machine and in every language. */
export function compareCodeUnits(first: string, second: string): number {
  if (first === second) return 0;
  return first < second ? -1 : 1;
}

function isTie(before: Rank | null, after: Rank | null): before is Rank {
  if (before === null || after === null || before < after) return false;
  if (before === after) return true;
  throw new RangeError(`A rank can only be made between two ranks in order; got "${before}" before "${after}".`);
}
