/** shared/ground/figures/onto.ts - the supplied line by which a horse comes onto the track or onto a circle.
 *  May import: siblings in shared/ground. Keeps rules G27, G35 (shared/ground/RULES.md). */
import { clearanceOf } from "../fit.ts";
import { type Join, shortestJoin } from "../join.ts";
import { lengthOf, type Path, pathOf } from "../path.ts";
import type { Piece } from "../piece.ts";
import { type Pose, samePose } from "../plane.ts";
import { footOn, poseRound } from "../track.ts";
import { joinRadii } from "../usual.ts";
import { type FigureRefusal, inWords, type Manege, placeWords, refuse } from "./figure.ts";

/** Metres between the places on a closed line that are tried as the end of a supplied line. */
const STEP = 0.5;
/** On a very long line they are tried farther apart, so that there are no more than this. */
const MOST_TRIED = 1_000;

/** The shortest way onto a closed line that stays on the ground, and the metres along it there; no pieces when the
 *  horse is on it already. `onto` is said: "onto the track". */
export function ontoClosed(
  manege: Manege,
  start: Pose,
  closed: Path,
  onto: string,
): { readonly pieces: readonly Piece[]; readonly along: number } | FigureRefusal {
  const { usual } = manege;
  const foot = footOn(closed, start);
  if (samePose(foot.pose, start, usual.tolerance)) return { pieces: [], along: foot.along };
  for (const radius of joinRadii(usual)) {
    const best = shortestOnto(manege, start, closed, foot.along, radius);
    if (best !== null) return { pieces: best.join.pieces, along: best.along };
  }
  return refuse(
    "cannot-reach",
    `A way from ${placeWords(start)} ${onto} was expected, but none stays on the ground with bends of at least ${inWords(usual.leastRadius)} m radius. Turn the horse first, or allow tighter bends.`,
  );
}

function shortestOnto(
  manege: Manege,
  start: Pose,
  closed: Path,
  foot: number,
  radius: number,
): { join: Join; along: number } | null {
  const whole = lengthOf(closed);
  let best: { join: Join; along: number } | null = null;
  const step = Math.max(STEP, whole / MOST_TRIED);
  for (let tried = 0; tried * step < whole; tried += 1) {
    const along = (foot + tried * step) % whole;
    const limit = best === null ? Number.POSITIVE_INFINITY : best.join.length - 1e-9;
    const join = shortestJoin(
      start,
      poseRound(closed, along),
      radius,
      (way) => way.length < limit && staysInside(manege, way.pieces),
    );
    if (join !== null && join.pieces.length > 0) best = { join, along };
  }
  return best;
}

/** Whether pieces keep the margin from the wall. */
export function staysInside(manege: Manege, pieces: readonly Piece[]): boolean {
  if (pieces.length === 0) return true;
  const { margin, tolerance } = manege.usual;
  return clearanceOf(manege.ground, pathOf(pieces, tolerance)).metres >= margin - tolerance.distance;
}

/** The words of a supplied line to `where`. */
export function joinWords(where: string, pieces: readonly Piece[]): string {
  const metres = pieces.reduce((sum, piece) => sum + piece.length, 0);
  return `The text does not say how the horse comes to ${where}: a line of ${inWords(metres)} m is supplied.`;
}
