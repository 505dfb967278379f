/** shared/ground/fit.ts - how near a path comes to the wall, exactly.
 *  May import: siblings in shared/ground. Keeps rule G20 (shared/ground/RULES.md). Metres.
 *  The distance to the wall is smooth but for the middle lines, and least where the piece ends, turns over along an axis,
 *  or lies farthest from the centre of a rounded corner. Those few places are all that need looking at. */
import { cornerCentres, distanceToWall, type RidingGround } from "./grounds.ts";
import type { Path } from "./path.ts";
import { arcPointToward, axisExtremes, type Piece } from "./piece.ts";
import { bearing, type Point } from "./plane.ts";

/** The nearest a ride comes to the wall: metres (negative past it), where, and in which piece. */
export type Clearance = { readonly metres: number; readonly at: Point; readonly piece: number };

function critical(ground: RidingGround, piece: Piece): Point[] {
  const places = axisExtremes(piece);
  if (piece.is !== "arc") return places;
  for (const corner of cornerCentres(ground)) {
    if (corner.x === piece.centre.x && corner.y === piece.centre.y) continue;
    const farthest = arcPointToward(piece, bearing(corner, piece.centre));
    if (farthest !== null) places.push(farthest);
  }
  return places;
}

/** The least distance of a path to the wall. */
export function clearanceOf(ground: RidingGround, path: Path): Clearance {
  let least: Clearance | null = null;
  for (const [index, piece] of path.pieces.entries()) {
    for (const at of critical(ground, piece)) {
      const metres = distanceToWall(ground, at);
      if (least === null || metres < least.metres) least = { metres, at: { x: at.x, y: at.y }, piece: index };
    }
  }
  if (least === null) throw new RangeError("A path has at least one piece.");
  return least;
}
