/** shared/ground/track.ts - the track along the wall as a closed path, its corners rounded as quarters of a volte.
 *  May import: siblings in shared/ground. Keeps rules G24-G26 (shared/ground/RULES.md). Metres. */
import { type RidingGround, roundedFrame } from "./grounds.ts";
import { cutPath, lengthOf, mirrorPath, type Path, pathOf, poseAtLength } from "./path.ts";
import { arcAbout, arcPointToward, type Piece, poseOn, straight } from "./piece.ts";
import {
  bearing,
  distance,
  type Point,
  type Pose,
  QUARTER_TURN,
  radiansOf,
  type Side,
  type Tolerance,
} from "./plane.ts";
import { nearestOnLine } from "./stations.ts";

/** The whole track, from the middle of the foot. *On the left rein* it turns left all the way round, so it goes
 *  counter-clockwise from above. Corners of a rectangular ground are quarters of a circle of `cornerDiameter`; where the
 *  ground is too small for that, of the largest that goes in. */
export function trackOf(ground: RidingGround, rein: Side, cornerDiameter: number, tolerance: Tolerance): Path {
  if (rein === "right") return mirrorPath(trackOf(ground, "left", cornerDiameter, tolerance));
  const frame = roundedFrame(ground, ground.trackOffset);
  const corner = ground.shape === "rectangular" ? Math.min(cornerDiameter / 2, frame.x, frame.y) : frame.corner;
  const x = frame.x - corner;
  const y = frame.y - corner;
  const pieces: Piece[] = [];
  const line = (from: Point, to: Point): void => {
    if (distance(from, to) > 0) pieces.push(straight(from, to));
  };
  const quarter = (centre: Point, heading: number): void => {
    if (corner > 0) pieces.push(arcAbout(centre, corner, heading, QUARTER_TURN));
  };
  line({ x: 0, y: -frame.y }, { x, y: -frame.y });
  quarter({ x, y: -y }, 0);
  line({ x: frame.x, y: -y }, { x: frame.x, y });
  quarter({ x, y }, QUARTER_TURN);
  line({ x, y: frame.y }, { x: -x, y: frame.y });
  quarter({ x: -x, y }, 2 * QUARTER_TURN);
  line({ x: -frame.x, y }, { x: -frame.x, y: -y });
  quarter({ x: -x, y: -y }, 3 * QUARTER_TURN);
  line({ x: -x, y: -frame.y }, { x: 0, y: -frame.y });
  return pathOf(pieces, tolerance);
}

/** The place of a path nearest to a point: metres along it, the pose there, and how far off it is. The first of equals. */
export type Foot = { readonly along: number; readonly pose: Pose; readonly off: number };

export function footOn(path: Path, point: Point): Foot {
  let best: Foot | null = null;
  for (const [index, piece] of path.pieces.entries()) {
    const part = nearestPart(piece, point);
    const pose = poseOn(piece, part);
    const off = distance(pose, point);
    const along = (path.lengths[index] as number) + piece.length * part;
    if (best === null || off < best.off) best = { along, pose, off };
  }
  if (best === null) throw new RangeError("A path has at least one piece.");
  return best;
}

function nearestPart(piece: Piece, point: Point): number {
  if (piece.is === "straight") return distance(piece.from, nearestOnLine(point, piece.from, piece.to)) / piece.length;
  if (piece.is !== "arc") return 0;
  const start = poseOn(piece, 0);
  if (distance(point, piece.centre) === 0) return 0;
  const toward = arcPointToward(piece, bearing(piece.centre, point));
  if (toward === null) return distance(point, start) <= distance(point, poseOn(piece, 1)) ? 0 : 1;
  const way = arcTurn(bearing(piece.centre, start), bearing(piece.centre, toward), piece.sweep > 0);
  return Math.min(1, (piece.radius * way) / piece.length);
}

/** Radians from one direction to another, turning left or right. */
function arcTurn(from: number, to: number, left: boolean): number {
  const hundredths = left ? to - from : from - to;
  return radiansOf(hundredths < 0 ? hundredths + 36_000 : hundredths);
}

/** The pieces of a closed path from `along` for `metres`, going round as often as it takes. */
export function roundFrom(closed: Path, along: number, metres: number): Piece[] {
  const whole = lengthOf(closed);
  const pieces: Piece[] = [];
  let at = along % whole;
  let left = metres;
  while (left > 0) {
    const here = Math.min(left, whole - at);
    pieces.push(...slice(closed, at, at + here));
    left -= here;
    at = 0;
    // What is left of rounding is no ride of its own.
    if (left < 1e-9) break;
  }
  return pieces;
}

function slice(path: Path, from: number, to: number): readonly Piece[] {
  const whole = lengthOf(path);
  if (to - from < 1e-9) return [];
  const head = to >= whole - 1e-9 ? path : cutPath(path, to)[0];
  return from < 1e-9 ? head.pieces : cutPath(head, from)[1].pieces;
}

/** The pose of a closed path after `along` metres, going round. */
export function poseRound(closed: Path, along: number): Pose {
  const whole = lengthOf(closed);
  const rest = along % whole;
  return poseAtLength(closed, rest < 0 ? rest + whole : rest);
}
