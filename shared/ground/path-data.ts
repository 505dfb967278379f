/** shared/ground/path-data.ts - a path as SVG path data, in the frame of the ground (y toward the head, as it is ridden).
 *  May import: siblings in shared/ground. The drawing flips y once, in the client. */
import type { Path } from "./path.ts";
import { type Arc, type Piece, poseOn } from "./piece.ts";
import { type Point, QUARTER_TURN } from "./plane.ts";

/** A number as SVG reads it: no exponent, no more digits than a tenth of a micrometre. */
function number(value: number): string {
  return String(Number(value.toFixed(7)) + 0);
}

function place(point: Point): string {
  return `${number(point.x)} ${number(point.y)}`;
}

/** An arc in strokes of at most a quarter: SVG gives ends and radius, not the centre, and near half a circle the last
 *  digit of an end moves the centre by its square root. */
function arcStrokes(arc: Arc): string[] {
  const count = Math.ceil(Math.abs(arc.sweep) / QUARTER_TURN);
  // The drawing's own frame: with y up as on the ground, a turn to the left runs toward larger angles.
  const flag = arc.sweep > 0 ? 1 : 0;
  const radius = number(arc.radius);
  return Array.from(
    { length: count },
    (_, index) => `A ${radius} ${radius} 0 0 ${flag} ${place(poseOn(arc, (index + 1) / count))}`,
  );
}

/** One piece as a path of its own; "" for a turn on the spot and a halt, which have no line. */
export function pieceData(piece: Piece): string {
  const strokes = strokesOf(piece);
  return strokes.length === 0 ? "" : [`M ${place(poseOn(piece, 0))}`, ...strokes].join(" ");
}

function strokesOf(piece: Piece): string[] {
  if (piece.is === "straight") return [`L ${place(piece.to)}`];
  return piece.is === "arc" ? arcStrokes(piece) : [];
}

/** The whole path in one stroke, beginning with a move to its start. */
export function pathData(path: Path): string {
  return [`M ${place(path.start)}`, ...path.pieces.flatMap(strokesOf)].join(" ");
}
