/** shared/text/anchor-range.ts - the range of words a mark is tied to, and which neighbour each end clings to.
 *  May import: nothing. Keeps rules T7 and T8 (shared/text/RULES.md).
 *  Offsets: UTF-16 units of the projection, from 0; ranges are half-open. */

/** "before": the end stays after the character that precedes it; "after": it moves with the character that follows. */
export type AnchorSide = "before" | "after";

/** `from` = `to` is a gap between two characters: a place where something is missing. */
export type AnchorRange = {
  readonly from: number;
  readonly to: number;
  readonly fromSide: AnchorSide;
  readonly toSide: AnchorSide;
};

/** A range whose ends cling to its own words, so that what is written at its edges stays outside. A gap clings to the
 *  character before it. Throws RangeError when the offsets are not whole, are negative, or end before they begin. */
export function anchorRange(from: number, to: number): AnchorRange {
  const sides = from === to ? ({ fromSide: "before", toSide: "before" } as const) : INWARD;
  const range = { from, to, ...sides };
  requireRange(range);
  return range;
}

/** Throws RangeError when the offsets are not whole, are negative, end before they begin, or pass `length`. */
export function requireRange(range: { from: number; to: number }, length = Number.MAX_SAFE_INTEGER): void {
  const { from, to } = range;
  if (!Number.isInteger(from) || !Number.isInteger(to) || from < 0 || to < from || to > length) {
    const limit = length === Number.MAX_SAFE_INTEGER ? "" : ` and a text of ${length} units`;
    throw new RangeError(`A range needs whole offsets 0 <= from <= to${limit}; got ${from} to ${to}.`);
  }
}

const INWARD = { fromSide: "after", toSide: "before" } as const;
