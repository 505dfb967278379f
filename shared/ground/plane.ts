/** shared/ground/plane.ts - points, headings and poses of the riding ground, and the two motions that keep lengths.
 *  May import: nothing. Keeps rules G1-G5 (shared/ground/RULES.md).
 *  Metres; x to the right seen from the foot, y toward the head, from the centre. Headings count hundredths of a degree
 *  counter-clockwise from +x, in [0, 36000). Everything is worked out from the y axis outward, so that mirroring the
 *  ground negates numbers and nothing else: a mirrored ride ends on the mirrored place to the last bit. */

/** A place in metres. */
export type Point = { readonly x: number; readonly y: number };
/** A place with the way the horse looks, in hundredths of a degree. */
export type Pose = { readonly x: number; readonly y: number; readonly heading: number };
export type Side = "left" | "right";

/** When two poses count as one: metres between places, hundredths of a degree between headings. */
export type Tolerance = { readonly distance: number; readonly heading: number };

/** A step ends on whole millimetres, up to 0.71 mm from where its last line ended; on a circle of 6 m that alone bends
 *  the heading by 1.4 hundredths. Hence 1 mm and 5 hundredths. */
export const TOLERANCE: Tolerance = Object.freeze({ distance: 0.001, heading: 5 });

/** Turns in hundredths of a degree. */
export const FULL_TURN = 36_000;
export const HALF_TURN = 18_000;
export const QUARTER_TURN = 9_000;

/** Headings lie on this grid (about a hundred-millionth of a degree), so that sums and mirrors of headings are exact. */
const GRID = 2 ** 20;
/** The smallest turn that is one. */
export const FINEST_TURN = 1 / GRID;
const RADIANS = Math.PI / HALF_TURN;

/** The nearest whole number, halves away from zero. */
export function roundAway(value: number): number {
  return Math.sign(value) * Math.round(Math.abs(value)) + 0;
}

/** On the grid of headings; for turns, which may be negative or more than a full one. */
export function turnOnGrid(hundredths: number): number {
  return roundAway(hundredths * GRID) / GRID;
}

function intoOneTurn(hundredths: number): number {
  const rest = hundredths % FULL_TURN;
  return rest < 0 ? rest + FULL_TURN : rest + 0;
}

/** Hundredths from the y axis, in [-18000, 18000]. Straight toward the foot is either end: the one on the side the horse
 *  goes on turning to, so that its mirror is the other. */
function fromHead(heading: number, turning = 0): number {
  const angle = heading - QUARTER_TURN;
  if (angle === HALF_TURN && turning < 0) return -HALF_TURN;
  return angle > HALF_TURN ? angle - FULL_TURN : angle;
}

/** `heading` turned by `by` hundredths, left positive. Throws RangeError for what is not a finite number. */
export function turned(heading: number, by: number): number {
  if (!Number.isFinite(heading) || !Number.isFinite(by))
    throw new RangeError(`A heading and a turn are finite hundredths of a degree, not ${heading} and ${by}.`);
  return intoOneTurn(QUARTER_TURN + turnOnGrid(fromHead(intoOneTurn(heading), by) + by));
}

/** The heading in [0, 36000) that is the same as any number of hundredths. Throws RangeError when it is not finite. */
export function headingOf(hundredths: number): number {
  return turned(hundredths, 0);
}

/** The point in metres. Throws RangeError for NaN and infinities. */
export function pointAt(x: number, y: number): Point {
  if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError(`A place is two finite metres, not ${x}, ${y}.`);
  return { x, y };
}

/** The pose at metres and hundredths of a degree. Throws RangeError for NaN and infinities. */
export function poseAt(x: number, y: number, heading: number): Pose {
  pointAt(x, y);
  return { x, y, heading: headingOf(heading) };
}

const AXES: readonly Point[] = [
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
  { x: 1, y: 0 },
];

/** The unit vector along `heading` turned by `by` (left positive, not rounded). Exact along the axes. */
export function directionOf(heading: number, by = 0): Point {
  const angle = fromHead(heading, by) + by;
  if (angle % QUARTER_TURN === 0) return AXES[(((angle / QUARTER_TURN) % 4) + 4) % 4] as Point;
  return { x: -Math.sin(angle * RADIANS), y: Math.cos(angle * RADIANS) };
}

/** Radians in a turn of so many hundredths, with its sign. */
export function radiansOf(hundredths: number): number {
  return hundredths * RADIANS;
}

/** The heading from one place to another. Throws RangeError when they are the same place. */
export function bearing(from: Point, to: Point): number {
  if (from.x === to.x && from.y === to.y) throw new RangeError(`There is no way from ${from.x}, ${from.y} to itself.`);
  return intoOneTurn(QUARTER_TURN + turnOnGrid(Math.atan2(from.x - to.x, to.y - from.y) / RADIANS));
}

/** The shortest turn from one heading to another, in (-18000, 18000], left positive. */
export function turnBetween(from: number, to: number): number {
  const turn = intoOneTurn(to - from);
  return turn > HALF_TURN ? turn - FULL_TURN : turn;
}

/** The heading toward a clock position from the rider: 12 ahead, 3 right. Throws RangeError outside 1 to 12. */
export function headingOfClock(heading: number, hour: number): number {
  if (!Number.isInteger(hour) || hour < 1 || hour > 12)
    throw new RangeError(`The clock goes from 1 to 12, not ${hour}.`);
  return turned(heading, -hour * 3_000);
}

/** Metres between two places. */
export function distance(a: Point, b: Point): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  return Math.sqrt(x * x + y * y);
}

/** The place `ahead` metres in front of a pose and `left` metres to its left; negative is behind and right. */
export function beside(pose: Pose, ahead: number, left = 0): Point {
  const way = directionOf(pose.heading);
  return { x: pose.x + ahead * way.x - left * way.y, y: pose.y + ahead * way.y + left * way.x };
}

/** Whether two poses are one within the tolerance, both bounds included. */
export function samePose(a: Pose, b: Pose, tolerance: Tolerance): boolean {
  return distance(a, b) <= tolerance.distance && Math.abs(turnBetween(a.heading, b.heading)) <= tolerance.heading;
}

/** The point on whole millimetres, halves away from zero. */
export function settledPoint(point: Point): Point {
  return { x: roundAway(point.x * 1_000) / 1_000, y: roundAway(point.y * 1_000) / 1_000 };
}

/** The pose as a step keeps it at its end: whole millimetres, whole hundredths of a degree. */
export function settled(pose: Pose): Pose {
  return { ...settledPoint(pose), heading: intoOneTurn(QUARTER_TURN + roundAway(fromHead(pose.heading))) };
}

/** The point in the mirrored world: x to -x, exactly. */
export function mirrorPoint(point: Point): Point {
  return { x: 0 - point.x, y: point.y };
}

/** The heading in the mirrored world: 180 degrees less the heading, exactly. */
export function mirrorHeading(heading: number): number {
  return intoOneTurn(HALF_TURN - heading);
}

/** The pose in the mirrored world. */
export function mirrorPose(pose: Pose): Pose {
  return { ...mirrorPoint(pose), heading: mirrorHeading(pose.heading) };
}

/** The other side. */
export function otherSide(side: Side): Side {
  return side === "left" ? "right" : "left";
}

/** 1 for left, since turns to the left are positive; -1 for right. */
export function signOf(side: Side): 1 | -1 {
  return side === "left" ? 1 : -1;
}

/** A rigid motion: turn about the centre of the ground by `turn` hundredths, then shift by metres. */
export type Motion = { readonly turn: number; readonly x: number; readonly y: number };

/** The rigid motion that carries one pose to another. */
export function motionBetween(from: Pose, to: Pose): Motion {
  const turn = turnBetween(from.heading, to.heading);
  const rotated = movePoint(from, { turn, x: 0, y: 0 });
  return { turn, x: to.x - rotated.x, y: to.y - rotated.y };
}

/** The point after a rigid motion. */
export function movePoint(point: Point, motion: Motion): Point {
  const way = directionOf(headingOf(motion.turn));
  return { x: point.x * way.x - point.y * way.y + motion.x, y: point.x * way.y + point.y * way.x + motion.y };
}

/** The pose after a rigid motion. */
export function movePose(pose: Pose, motion: Motion): Pose {
  return { ...movePoint(pose, motion), heading: turned(pose.heading, motion.turn) };
}
