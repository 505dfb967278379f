/** shared/ride/join-gait.ts - supplied lines that can be ridden at their gait: wide enough bends, else a slower gait.
 *  May import: shared/ground, siblings in shared/ride. Keeps rule R37 (shared/ride/RULES.md). Metres, metres a second. */
import type { Manege } from "../ground/figures/figure.ts";
import { type HorseGait, speedOf } from "../ground/gaits.ts";
import { leanDegrees, radiusOfLean } from "../ground/lean.ts";
import type { Piece } from "../ground/piece.ts";
import type { PieceGait } from "./gait-of.ts";
import { MOST_LEAN } from "./rules/bends.ts";

/** A little more than the very bound, so that rounding never passes it. */
const MORE = 1.001;

/** The ground with bends of supplied lines as wide as the speed asks, where there is room. */
export function manegeAt(manege: Manege, speed: number): Manege {
  const joinRadius = Math.max(manege.usual.joinRadius, radiusOfLean(speed, MOST_LEAN) * MORE);
  return { ...manege, usual: { ...manege.usual, joinRadius } };
}

/** The gait of a supplied line. Where its bend is too tight for one that the text does not name, the fastest of canter, trot
 *  and walk that suits it; a gait that is stated stays, and is told (rule V34). */
export function joinGait(gait: PieceGait, pieces: readonly Piece[], horse: readonly HorseGait[]): PieceGait {
  if (!gait.gaitSupplied || isEasy(gait.speed, pieces)) return gait;
  for (const called of ["canter", "trot", "walk"] as const) {
    const { speed, strideLength } = speedOf(called, null, horse);
    if (isEasy(speed, pieces)) return { gait: called, pace: null, gaitSupplied: true, speed, strideLength };
  }
  return gait;
}

function isEasy(speed: number, pieces: readonly Piece[]): boolean {
  return pieces.every((piece) => piece.is !== "arc" || leanDegrees(speed, piece.radius) <= MOST_LEAN);
}
