/** shared/ground/piece.ts - the four pieces every ride is made of: a straight line, an arc, a turn on the spot, a halt.
 *  May import: siblings in shared/ground. Keeps rules G6-G9 (shared/ground/RULES.md).
 *  Metres, hundredths of a degree, seconds. A piece gone backward keeps the horse's heading and travels the other way. */
import {
  bearing,
  beside,
  directionOf,
  distance,
  FINEST_TURN,
  FULL_TURN,
  HALF_TURN,
  type Motion,
  mirrorHeading,
  mirrorPoint,
  movePoint,
  type Point,
  type Pose,
  QUARTER_TURN,
  radiansOf,
  turned,
  turnOnGrid,
} from "./plane.ts";

/** From place to place; `heading` is the horse's, the opposite of the way it goes when `back`. */
export type Straight = {
  readonly is: "straight";
  readonly from: Point;
  readonly to: Point;
  readonly back: boolean;
  readonly heading: number;
  readonly length: number;
};
/** Part of a circle. `heading` is the horse's at the start, `sweep` how far it turns, left positive. */
export type Arc = {
  readonly is: "arc";
  readonly centre: Point;
  readonly radius: number;
  readonly heading: number;
  readonly sweep: number;
  readonly back: boolean;
  readonly length: number;
};
/** A turn that stays where it is; `about` says which part of the horse stays, for the drawing. */
export type Turn = {
  readonly is: "turn";
  readonly at: Point;
  readonly heading: number;
  readonly sweep: number;
  readonly about: "middle" | "haunches" | "forehand";
  readonly length: 0;
};
/** Time alone. */
export type Halt = {
  readonly is: "halt";
  readonly at: Point;
  readonly heading: number;
  readonly seconds: number;
  readonly length: 0;
};
export type Piece = Straight | Arc | Turn | Halt;

/** A straight line. Throws RangeError when it has no length: leave it out. */
export function straight(from: Point, to: Point, back = false): Straight {
  const way = back ? bearing(to, from) : bearing(from, to);
  const ends = { from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y } };
  return { is: "straight", ...ends, back, heading: way, length: distance(from, to) };
}

/** The arc with its centre given: it starts where a horse of this heading touches the circle.
 *  Throws RangeError for a radius that is not above 0 and finite, and for no sweep. */
export function arcAbout(centre: Point, radius: number, heading: number, sweep: number, back = false): Arc {
  if (!(radius > 0 && Number.isFinite(radius))) throw new RangeError(`An arc has a radius above 0 m, not ${radius}.`);
  const turn = turnOnGrid(sweep);
  if (!(Number.isFinite(turn) && turn !== 0)) throw new RangeError(`An arc turns by some hundredths, not ${sweep}.`);
  const length = radius * radiansOf(Math.abs(turn));
  return { is: "arc", centre: { x: centre.x, y: centre.y }, radius, heading, sweep: turn, back, length };
}

/** The arc from a pose, to the left when `sweep` is positive. Throws as `arcAbout`. */
export function arcFrom(pose: Pose, radius: number, sweep: number): Arc {
  return arcAbout(beside(pose, 0, sweep > 0 ? radius : -radius), radius, pose.heading, sweep);
}

/** A turn on the spot. Throws RangeError for no sweep. */
export function turnOnSpot(pose: Pose, sweep: number, about: Turn["about"] = "middle"): Turn {
  const turn = turnOnGrid(sweep);
  if (!(Number.isFinite(turn) && turn !== 0)) throw new RangeError(`A turn has some hundredths, not ${sweep}.`);
  return { is: "turn", at: { x: pose.x, y: pose.y }, heading: pose.heading, sweep: turn, about, length: 0 };
}

/** A halt. Throws RangeError unless it lasts some time. */
export function halt(pose: Pose, seconds: number): Halt {
  if (!(seconds > 0 && Number.isFinite(seconds))) throw new RangeError(`A halt lasts above 0 s, not ${seconds}.`);
  return { is: "halt", at: { x: pose.x, y: pose.y }, heading: pose.heading, seconds, length: 0 };
}

/** The pose at a part of the piece: 0 its start, 1 its end. Parts outside 0 to 1 are the caller's own concern. */
export function poseOn(piece: Piece, part: number): Pose {
  switch (piece.is) {
    case "straight": {
      const { from, to, heading } = piece;
      if (part === 1) return { x: to.x, y: to.y, heading };
      return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part, heading };
    }
    case "arc": {
      const by = piece.sweep * part;
      const { x, y } = pointOnArc(piece, by);
      return { x, y, heading: turned(piece.heading, by) };
    }
    case "turn":
      return { x: piece.at.x, y: piece.at.y, heading: turned(piece.heading, piece.sweep * part) };
    case "halt":
      return { x: piece.at.x, y: piece.at.y, heading: piece.heading };
  }
}

/** Where the arc is after a turn of `by` hundredths. The centre lies to the left of the way it goes when that is left. */
function pointOnArc(arc: Arc, by: number): Point {
  const way = directionOf(arc.heading, by);
  const reach = arc.sweep > 0 === arc.back ? -arc.radius : arc.radius;
  return { x: arc.centre.x + reach * way.y, y: arc.centre.y - reach * way.x };
}

/** Where on the arc a line from its centre along `toward` meets it; null when the arc does not come there. */
export function arcPointToward(arc: Arc, toward: number): Point | null {
  const outward = arc.sweep > 0 === arc.back ? QUARTER_TURN : -QUARTER_TURN;
  const start = turned(arc.heading, outward);
  const by = arc.sweep > 0 ? turned(toward, -start) : turned(start, -toward);
  const near = FULL_TURN - by < 0.001 ? 0 : by;
  if (near > Math.abs(arc.sweep)) return null;
  return pointOnArc(arc, arc.sweep > 0 ? near : -near);
}

/** What a fraction of a path counts: metres on the move, a metre for a radian on the spot, a metre for a second of halt. */
export function extentOf(piece: Piece): number {
  if (piece.is === "turn") return radiansOf(Math.abs(piece.sweep));
  return piece.is === "halt" ? piece.seconds : piece.length;
}

/** How much of a sweep lies before a cut: on the grid, and at least its finest step from either end. */
function sweepBefore(sweep: number, part: number): number {
  const finest = Math.min(FINEST_TURN, Math.abs(sweep) / 2);
  const before = Math.min(Math.abs(sweep) - finest, Math.max(finest, Math.abs(turnOnGrid(sweep * part))));
  return Math.sign(sweep) * before;
}

/** The two pieces that together are this one, cut at a part of it above 0 and below 1. Throws RangeError elsewhere. */
export function cutPiece(piece: Piece, part: number): [Piece, Piece] {
  if (!(part > 0 && part < 1)) throw new RangeError(`A piece is cut between its ends, not at ${part} of it.`);
  const middle = poseOn(piece, part);
  switch (piece.is) {
    case "straight":
      // The heading is kept as it is: a short rest must not pick up the rounding of its ends.
      return [
        { ...piece, to: { x: middle.x, y: middle.y }, length: piece.length * part },
        { ...piece, from: { x: middle.x, y: middle.y }, length: piece.length * (1 - part) },
      ];
    case "arc": {
      const first = sweepBefore(piece.sweep, part);
      const { centre, radius, heading, sweep, back } = piece;
      return [
        arcAbout(centre, radius, heading, first, back),
        arcAbout(centre, radius, turned(heading, first), sweep - first, back),
      ];
    }
    case "turn": {
      const first = sweepBefore(piece.sweep, part);
      return [
        { ...piece, sweep: first },
        { ...piece, heading: middle.heading, sweep: piece.sweep - first },
      ];
    }
    case "halt":
      return [
        { ...piece, seconds: piece.seconds * part },
        { ...piece, seconds: piece.seconds * (1 - part) },
      ];
  }
}

/** The piece with time running back: the same poses in the other order, so the horse goes backward over it. */
export function reversePiece(piece: Piece): Piece {
  switch (piece.is) {
    case "straight":
      return { ...piece, from: piece.to, to: piece.from, back: !piece.back };
    case "arc":
      return { ...piece, heading: turned(piece.heading, piece.sweep), sweep: -piece.sweep, back: !piece.back };
    case "turn":
      return { ...piece, heading: turned(piece.heading, piece.sweep), sweep: -piece.sweep };
    case "halt":
      return piece;
  }
}

/** The same line ridden the other way, the horse looking the other way too. */
export function ridePieceTheOtherWay(piece: Piece): Piece {
  const reversed = reversePiece(piece);
  const heading = turned(reversed.heading, HALF_TURN);
  return "back" in reversed ? { ...reversed, heading, back: !reversed.back } : { ...reversed, heading };
}

/** The piece in the mirrored world, exactly. */
export function mirrorPiece(piece: Piece): Piece {
  const heading = mirrorHeading(piece.heading);
  switch (piece.is) {
    case "straight":
      return { ...piece, from: mirrorPoint(piece.from), to: mirrorPoint(piece.to), heading };
    case "arc":
      return { ...piece, centre: mirrorPoint(piece.centre), heading, sweep: -piece.sweep };
    case "turn":
      return { ...piece, at: mirrorPoint(piece.at), heading, sweep: -piece.sweep };
    case "halt":
      return { ...piece, at: mirrorPoint(piece.at), heading };
  }
}

/** The piece after a rigid motion; its length is kept as it is. */
export function movePiece(piece: Piece, motion: Motion): Piece {
  const heading = turned(piece.heading, motion.turn);
  switch (piece.is) {
    case "straight":
      return { ...piece, from: movePoint(piece.from, motion), to: movePoint(piece.to, motion), heading };
    case "arc":
      return { ...piece, centre: movePoint(piece.centre, motion), heading };
    default:
      return { ...piece, at: movePoint(piece.at, motion), heading };
  }
}

/** The smallest upright box, in metres. */
export type Box = { readonly left: number; readonly right: number; readonly foot: number; readonly head: number };

/** Places among which lie the farthest of the piece in each direction of the axes: its ends, and where it turns over. */
export function axisExtremes(piece: Piece): Point[] {
  const ends: Point[] = [poseOn(piece, 0), poseOn(piece, 1)];
  if (piece.is !== "arc") return ends;
  const turning = [0, QUARTER_TURN, HALF_TURN, 3 * QUARTER_TURN].map((toward) => arcPointToward(piece, toward));
  return [...ends, ...turning.filter((point) => point !== null)];
}

/** The smallest upright box round a piece. */
export function boxOfPiece(piece: Piece): Box {
  switch (piece.is) {
    case "straight": {
      const { from, to } = piece;
      return {
        left: Math.min(from.x, to.x),
        right: Math.max(from.x, to.x),
        foot: Math.min(from.y, to.y),
        head: Math.max(from.y, to.y),
      };
    }
    case "arc":
      return boxAround(axisExtremes(piece));
    default:
      return { left: piece.at.x, right: piece.at.x, foot: piece.at.y, head: piece.at.y };
  }
}

/** The box round places; exact for a piece's `axisExtremes`. Throws RangeError for none. */
export function boxAround(points: readonly Point[]): Box {
  if (points.length === 0) throw new RangeError("There is no box round no places.");
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return { left: Math.min(...xs), right: Math.max(...xs), foot: Math.min(...ys), head: Math.max(...ys) };
}
