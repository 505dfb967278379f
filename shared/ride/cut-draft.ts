/** shared/ride/cut-draft.ts - places on the way of a stage by fractions of it, and the gait changed at one.
 *  May import: shared/ground, siblings in shared/ride. Keeps rule R23 (shared/ride/RULES.md). A fraction is of the way the text
 *  gives: a supplied line that comes first is not part of it. */
import { pathOf, placeOfFraction } from "../ground/path.ts";
import { cutPiece } from "../ground/piece.ts";
import { type Drafted, RIDE_TOLERANCE } from "./course.ts";
import type { PieceGait } from "./gait-of.ts";

/** A piece of a stage and the part of it, 0 to 1. */
export interface DraftPlace {
  index: number;
  part: number;
}

/** How many pieces at the beginning only join. */
export function joinedOf(drafted: readonly Drafted[]): number {
  const first = drafted.findIndex(({ ridden }) => !ridden.joins);
  return first === -1 ? drafted.length : first;
}

/** The piece and the part of it at a fraction; null where there is no way to have one. */
export function fractionOf(drafted: readonly Drafted[], over: number, of: number): DraftPlace | null {
  const joined = joinedOf(drafted);
  const pieces = drafted.slice(joined).map(({ piece }) => piece);
  if (pieces.length === 0) return null;
  const { index, part } = placeOfFraction(pathOf(pieces, RIDE_TOLERANCE), Math.min(over, of), of);
  return { index: index + joined, part };
}

/** The same pieces with another gait from a place on; what stands or turns on the spot is left as it is. */
export function cutAt(drafted: readonly Drafted[], at: DraftPlace, gait: () => PieceGait): Drafted[] {
  const held = drafted[at.index] as Drafted;
  // So near an end that only rounding is left of the piece.
  const whole = at.part < 1e-9 ? "after" : at.part > 1 - 1e-9 ? "before" : null;
  const halves = whole === null ? cutPiece(held.piece, at.part).map((piece) => ({ ...held, piece })) : [held];
  const kept = whole === "after" ? at.index : at.index + 1;
  const all = [...drafted.slice(0, at.index), ...halves, ...drafted.slice(at.index + 1)];
  const changed = gait();
  return all.map((one, index) => {
    const moves = one.piece.is === "straight" || one.piece.is === "arc";
    return index < kept || !moves ? one : { ...one, ridden: { ...one.ridden, ...changed } };
  });
}
