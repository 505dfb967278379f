/** shared/ground/join.ts - the shortest way from one pose to another that never turns more tightly than a least radius.
 *  May import: siblings in shared/ground. Keeps rules G27-G29 (shared/ground/RULES.md). Metres, hundredths of a degree.
 *  The shortest is always arc, line, arc or arc, arc, arc, all arcs of the least radius: L. E. Dubins, "On curves of
 *  minimal length with a constraint on average curvature", American Journal of Mathematics 79 (1957), 497-516. */
import { arcAbout, arcFrom, type Piece, poseOn, straight } from "./piece.ts";
import {
  bearing,
  beside,
  directionOf,
  distance,
  FULL_TURN,
  type Point,
  type Pose,
  QUARTER_TURN,
  turnBetween,
  turned,
} from "./plane.ts";

/** One way to get there; no pieces when the poses are one. L is an arc to the left, R to the right, S a straight line. */
export type Join = { readonly word: JoinWord; readonly pieces: readonly Piece[]; readonly length: number };
export type JoinWord = "LSL" | "RSR" | "LSR" | "RSL" | "LRL" | "RLR";

type Sense = 1 | -1;

/** A turn this near a full one, in hundredths, is rounding of none. */
const NO_TURN = 0.01;
/** A line shorter than this many metres is rounding. */
const NO_LINE = 1e-9;
/** Metres: how far past its end the tangent of two circles may lie and still count as touching. */
const TOUCHING = 1e-9;

/** How far to turn in one sense, in [0, 36000). */
function sweepTo(from: number, to: number, sense: Sense): number {
  const turn = sense > 0 ? turned(to, -from) : turned(from, -to);
  return FULL_TURN - turn < NO_TURN || turn < NO_TURN ? 0 : turn;
}

function centreOf(pose: Pose, sense: Sense, radius: number): Point {
  return beside(pose, 0, sense * radius);
}

/** The place where a horse of this heading touches the circle, its centre to the left for 1. */
function touch(centre: Point, radius: number, heading: number, sense: Sense): Point {
  const way = directionOf(heading);
  return { x: centre.x + sense * radius * way.y, y: centre.y - sense * radius * way.x };
}

/** An arc, unless it turns by nothing. */
function bend(centre: Point, radius: number, from: number, to: number, sense: Sense): Piece[] {
  const sweep = sweepTo(from, to, sense);
  return sweep === 0 ? [] : [arcAbout(centre, radius, from, sense * sweep)];
}

function lineArcs(from: Pose, to: Pose, radius: number, first: Sense, last: Sense): Piece[] | null {
  const start = centreOf(from, first, radius);
  const end = centreOf(to, last, radius);
  const apart = distance(start, end);
  if (first === last && apart < NO_LINE) return bend(start, radius, from.heading, to.heading, first);
  if (first !== last && apart < 2 * radius - TOUCHING) return null;
  const lean = first === last ? 0 : Math.asin(Math.min(1, (2 * radius) / apart));
  const heading = turned(bearing(start, end), (first * lean * 18_000) / Math.PI);
  const a = touch(start, radius, heading, first);
  const b = touch(end, radius, heading, last);
  const line = distance(a, b) < NO_LINE ? [] : [straight(a, b)];
  return [
    ...bend(start, radius, from.heading, heading, first),
    ...line,
    ...bend(end, radius, heading, to.heading, last),
  ];
}

/** The two ways of three arcs, the middle circle to either side of the line between the outer two. */
function threeArcs(from: Pose, to: Pose, radius: number, sense: Sense): Piece[][] {
  const start = centreOf(from, sense, radius);
  const end = centreOf(to, sense, radius);
  const apart = distance(start, end);
  if (apart < NO_LINE || apart > 4 * radius) return [];
  const spread = (Math.acos(apart / (4 * radius)) * 18_000) / Math.PI;
  const other: Sense = sense === 1 ? -1 : 1;
  return [spread, -spread].map((turn) => {
    const toMiddle = turned(bearing(start, end), turn);
    const way = directionOf(toMiddle);
    const middle = { x: start.x + 2 * radius * way.x, y: start.y + 2 * radius * way.y };
    const first = turned(toMiddle, sense * QUARTER_TURN);
    const second = turned(bearing(middle, end), -sense * QUARTER_TURN);
    return [
      ...bend(start, radius, from.heading, first, sense),
      ...bend(middle, radius, first, second, other),
      ...bend(end, radius, second, to.heading, sense),
    ];
  });
}

function join(word: JoinWord, pieces: Piece[]): Join {
  return { word, pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
}

/** Every way of the six kinds, shortest first; of equals, in the order LSL, RSR, LSR, RSL, LRL, RLR.
 *  Throws RangeError for a radius that is not above 0 and finite. */
export function allJoins(from: Pose, to: Pose, radius: number): Join[] {
  if (!(radius > 0 && Number.isFinite(radius))) throw new RangeError(`A least radius is above 0 m, not ${radius}.`);
  const kinds: [JoinWord, (Piece[] | null)[]][] = [
    ["LSL", [lineArcs(from, to, radius, 1, 1)]],
    ["RSR", [lineArcs(from, to, radius, -1, -1)]],
    ["LSR", [lineArcs(from, to, radius, 1, -1)]],
    ["RSL", [lineArcs(from, to, radius, -1, 1)]],
    ["LRL", threeArcs(from, to, radius, 1)],
    ["RLR", threeArcs(from, to, radius, -1)],
  ];
  return kinds
    .flatMap(([word, ways]) => ways.filter((way) => way !== null).map((way) => join(word, way)))
    .sort((a, b) => a.length - b.length);
}

/** The shortest way, or the shortest that `accepts` says yes to; null when it says yes to none. */
export function shortestJoin(
  from: Pose,
  to: Pose,
  radius: number,
  accepts: (way: Join) => boolean = () => true,
): Join | null {
  return allJoins(from, to, radius).find(accepts) ?? null;
}

/** From a pose to a place, with whatever heading it comes there: an arc, then straight on; both senses, the shorter
 *  first. Within the turning circle of one side only the other side is left. Empty when the place is the pose's own. */
export function waysToPlace(from: Pose, to: Point, radius: number, aligned: number): Piece[][] {
  const apart = distance(from, to);
  if (apart < NO_LINE) return [];
  // A line that leaves the heading by less than two poses may differ needs no arc of its own.
  if (Math.abs(turnBetween(from.heading, bearing(from, to))) <= aligned) return [[straight(from, to)]];
  const ways = ([1, -1] as const).flatMap((sense) => {
    const centre = centreOf(from, sense, radius);
    const reach = distance(centre, to);
    if (reach < radius) return [];
    const lean = (Math.acos(Math.min(1, radius / reach)) * 18_000) / Math.PI;
    // The place where the line leaves the circle, seen from its centre; there it heads a quarter further round.
    const heading = turned(bearing(centre, to), sense * (QUARTER_TURN - lean));
    const sweep = sweepTo(from.heading, heading, sense);
    const first = sweep === 0 ? [] : [arcFrom(from, radius, sense * sweep)];
    const leaves = first[0] === undefined ? from : poseOn(first[0], 1);
    return [[...first, ...(distance(leaves, to) < NO_LINE ? [] : [straight(leaves, to)])]];
  });
  const length = (pieces: Piece[]): number => pieces.reduce((sum, piece) => sum + piece.length, 0);
  return ways.sort((a, b) => length(a) - length(b));
}
