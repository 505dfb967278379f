/** shared/ground/distances.ts - the least distance between riders over a whole ride, with its moment and place.
 *  May import: siblings in shared/ground. Keeps rules G65-G69 (shared/ground/RULES.md). Metres, seconds.
 *  Samples alone would miss a near miss between two of them. Each stretch of time has a lower bound: what the closing
 *  speed allows from its ends, and what lies between two bodies seen along one direction when both moved straight, less
 *  what their bends can stray. A stretch whose bound could still beat the least found is halved; the rest is dropped. */
import { type BoxedPiece, boxedPieces, type Mover, type Stretch, stretchesOf } from "./moving-span.ts";
import { type NearestPlaces, nearestPlaces, type Span } from "./nearest.ts";
import type { Box } from "./piece.ts";
import type { Point } from "./plane.ts";
import type { CarriedPoint, Rider } from "./riders.ts";

/** The least distance between the outsides of two movers, 0 when they touch; when, and the nearest place on each (on the
 *  middle line of a body). No moment has less than `metres - within`. */
export type Nearest = {
  readonly metres: number;
  readonly seconds: number;
  readonly onA: Point;
  readonly onB: Point;
  readonly within: number;
};

/** `within`: how exact, in metres, above 0. `care`: distances above this are only known to be above it, which is quicker;
 *  absent, every distance is found exactly. */
export type SearchOptions = { readonly within: number; readonly care?: number };

export const USUAL_SEARCH: SearchOptions = Object.freeze({ within: 0.01 });

/** A mover made ready: its stretches in its own time, and how thick it is to either side. */
type Ready = { readonly stretches: readonly Stretch[]; readonly thickness: number };
/** `metres` is between the outsides, below 0 by as much as they overlap. */
type Sample = { seconds: number; spanA: Span; spanB: Span; nearest: NearestPlaces; metres: number };
/** What two movers have throughout: the time they share and how thick both are together. All is in the time of the first;
 *  the second begins `later`. */
type Pair = { readonly first: number; readonly last: number; readonly later: number; readonly thickness: number };
/** A stretch of time without a break in either motion. `bound`: by their boxes alone, they are at least so far apart.
 *  When it begins and ends is asked of it, since most are never looked at. */
type Overlap = { pair: Pair; motionA: Stretch; motionB: Stretch; bound: number };
type Interval = { from: Sample; to: Sample; overlap: Overlap };

function ready({ rider, point }: Mover, pieces?: readonly BoxedPiece[]): Ready {
  const own = { rider: rider.starts === 0 ? rider : { ...rider, starts: 0 }, point };
  return { stretches: stretchesOf(own, pieces), thickness: point === null ? rider.body.halfWidth : 0 };
}

function beginOf({ pair, motionA, motionB }: Overlap): number {
  return Math.max(pair.first, motionA.from, motionB.from + pair.later);
}

function sampleAt({ pair, motionA, motionB }: Overlap, seconds: number): Sample {
  const spanA = motionA.at(seconds);
  const spanB = motionB.at(seconds - pair.later);
  const nearest = nearestPlaces(spanA, spanB);
  return { seconds, spanA, spanB, nearest, metres: nearest.metres - pair.thickness };
}

function sampled(overlap: Overlap): Interval {
  const { pair, motionA, motionB } = overlap;
  const to = Math.min(pair.last, motionA.to, motionB.to + pair.later);
  return { from: sampleAt(overlap, beginOf(overlap)), to: sampleAt(overlap, to), overlap };
}

function boxesApart(a: Box, b: Box): number {
  const x = Math.max(0, b.left - a.right, a.left - b.right);
  const y = Math.max(0, b.foot - a.head, a.foot - b.head);
  return Math.sqrt(x * x + y * y);
}

function finite(value: number, otherwise: number): number {
  return Number.isFinite(value) ? value : otherwise;
}

/** From the first start of a mover to its last end, in its own time. Before it and after it nothing moves. */
function ownTime({ stretches }: Ready): { first: number; last: number } {
  const [start, end] = [stretches[0], stretches[stretches.length - 1]];
  if (start === undefined || end === undefined) return { first: 0, last: 0 };
  return { first: finite(start.from, start.to), last: finite(end.to, end.from) };
}

/** The stretches of time both share, from the first start to the last end, in order of time: the first of all, and those
 *  whose bound is at most `nearer`. */
function overlapsOf(a: Ready, b: Ready, later: number, nearer: number): Overlap[] {
  const [timeA, timeB] = [ownTime(a), ownTime(b)];
  const first = Math.min(timeA.first, timeB.first + later);
  const last = Math.max(timeA.last, timeB.last + later);
  const pair: Pair = { first, last, later, thickness: a.thickness + b.thickness };
  const overlaps: Overlap[] = [];
  for (let i = 0, j = 0; i < a.stretches.length && j < b.stretches.length; ) {
    const motionA = a.stretches[i] as Stretch;
    const motionB = b.stretches[j] as Stretch;
    const endA = motionA.to;
    const endB = motionB.to + later;
    const from = Math.max(first, motionA.from, motionB.from + later);
    const to = Math.min(last, endA, endB);
    if (to > from) {
      const bound = boxesApart(motionA.box, motionB.box) - pair.thickness;
      if (bound <= nearer || overlaps.length === 0) overlaps.push({ pair, motionA, motionB, bound });
    }
    if (endA <= endB) i += 1;
    if (endB <= endA) j += 1;
  }
  return overlaps;
}

/** No moment of the interval has less: the two could close only so fast from its ends. */
function closingBound({ from, to, overlap }: Interval): number {
  const closing = overlap.motionA.speed + overlap.motionB.speed;
  return (from.metres + to.metres - closing * (to.seconds - from.seconds)) / 2;
}

/** From the foremost of a to the hindmost of b along a direction; negative when they overlap along it. */
function gapAlong(sample: Sample, x: number, y: number): number {
  let farthestA = Number.NEGATIVE_INFINITY;
  let nearestB = Number.POSITIVE_INFINITY;
  for (const end of sample.spanA) farthestA = Math.max(farthestA, end.x * x + end.y * y);
  for (const end of sample.spanB) nearestB = Math.min(nearestB, end.x * x + end.y * y);
  return nearestB - farthestA;
}

/** No moment of the interval has less: seen along the line between the nearest places in the middle. */
function separationBound({ from, to, overlap }: Interval, middle: Sample): number {
  const { onA, onB, metres } = middle.nearest;
  if (metres === 0) return -overlap.pair.thickness;
  const x = (onB.x - onA.x) / metres;
  const y = (onB.y - onA.y) / metres;
  // A curve of acceleration b strays at most b h²/8 from the chord of h seconds.
  const stray = ((overlap.motionA.bend + overlap.motionB.bend) * (to.seconds - from.seconds) ** 2) / 8;
  return Math.min(gapAlong(from, x, y), gapAlong(to, x, y)) - stray - overlap.pair.thickness;
}

function checkOptions(options: SearchOptions): void {
  if (!(options.within > 0))
    throw new RangeError(`Distances are found within some metres above 0, not ${options.within}.`);
}

/** The least distance between two movers; null when it is above `care`, and when the two never count at one time. Throws RangeError for `within`
 *  not above 0. When they touch, the first moment they do. */
export function leastDistance(a: Mover, b: Mover, options: SearchOptions = USUAL_SEARCH): Nearest | null {
  checkOptions(options);
  return onClock(a.rider, leastBetween(ready(a), ready(b), b.rider.starts - a.rider.starts, options));
}

/** What was found in the time of a rider, on the common clock. */
function onClock({ starts }: Rider, nearest: Nearest | null): Nearest | null {
  return nearest === null ? null : { ...nearest, seconds: nearest.seconds + starts };
}

/** In the time of the first; the second begins `later`. */
function leastBetween(a: Ready, b: Ready, later: number, options: SearchOptions): Nearest | null {
  const { within, care = Number.POSITIVE_INFINITY } = options;
  const inTime = overlapsOf(a, b, later, Math.max(0, care - within));
  const first = inTime[0];
  if (first === undefined) return null;
  let best = sampleAt(first, beginOf(first));
  const hopeless = (bound: number): boolean => bound >= Math.min(best.metres, care) - within;
  // The nearest boxes first: what they find drops most of the rest unlooked at.
  const hopeful = inTime.filter(({ bound }) => !hopeless(bound)).sort((one, other) => one.bound - other.bound);
  for (const overlap of hopeful) {
    if (hopeless(overlap.bound) || best.metres <= 0) break;
    const whole = sampled(overlap);
    for (const end of [whole.from, whole.to]) if (end.metres < best.metres) best = end;
    const open = [whole];
    for (let interval = open.pop(); interval !== undefined && best.metres > 0; interval = open.pop()) {
      if (hopeless(closingBound(interval))) continue;
      const middle = sampleAt(overlap, (interval.from.seconds + interval.to.seconds) / 2);
      if (middle.metres < best.metres) best = middle;
      if (hopeless(separationBound(interval, middle))) continue;
      open.push({ ...interval, from: middle }, { ...interval, to: middle });
    }
  }
  if (best.metres <= 0) return firstBetween(inTime, 0, within) ?? nearestOf(best, within);
  return best.metres > care ? null : nearestOf(best, within);
}

function nearestOf(sample: Sample, within: number): Nearest {
  const { onA, onB } = sample.nearest;
  return { metres: Math.max(0, sample.metres), seconds: sample.seconds, onA, onB, within };
}

/** Seconds: no moment is named more exactly. */
const SHORTEST = 1e-3;

/** The first moment at which two movers are at most `limit` metres apart; null when they never are. A closer moment is
 *  missed only when it undercuts the limit by less than `within`. */
export function firstWithin(a: Mover, b: Mover, limit: number, options: SearchOptions = USUAL_SEARCH): Nearest | null {
  checkOptions(options);
  const later = b.rider.starts - a.rider.starts;
  return onClock(a.rider, firstBetween(overlapsOf(ready(a), ready(b), later, limit), limit, options.within));
}

function firstBetween(inTime: readonly Overlap[], limit: number, within: number): Nearest | null {
  for (const overlap of inTime) {
    if (overlap.bound > limit) continue;
    // Taken from the end of the list, so the earlier half is put there last.
    const open = [sampled(overlap)];
    for (let interval = open.pop(); interval !== undefined; interval = open.pop()) {
      const { from, to } = interval;
      if (from.metres <= limit) return nearestOf(from, within);
      // What undercuts the limit by less than `within`, between two moments that do not, may be missed.
      if (to.metres > limit && closingBound(interval) > limit - within) continue;
      if (to.seconds - from.seconds < SHORTEST && to.metres <= limit) return nearestOf(to, within);
      const middle = sampleAt(overlap, (from.seconds + to.seconds) / 2);
      const outside = middle.metres > limit && to.metres > limit;
      if (outside && separationBound(interval, middle) > limit - within) continue;
      open.push({ ...interval, from: middle }, { ...interval, to: middle });
    }
  }
  return null;
}

/** One pair of riders at its nearest. `point` is the point of `a` that comes near the body of `b`; null for two bodies.
 *  `nearest` is null when it is above what one cares for, and when the two never count at one time. */
export type PairNearest = {
  readonly a: Rider;
  readonly b: Rider;
  readonly point: CarriedPoint | null;
  readonly nearest: Nearest | null;
};

/** Every two riders by their bodies, then every carried point and every other rider's body, in the order given. Riders of
 *  one path share what is made ready of it, and two that follow each other as two others do are searched once for all. */
export function allDistances(riders: readonly Rider[], options: SearchOptions = USUAL_SEARCH): PairNearest[] {
  checkOptions(options);
  const paths = new Set(riders.map(({ timed }) => timed.path));
  const pieces = new Map([...paths].map((path) => [path, boxedPieces(path)]));
  const made: [Mover, Ready][] = [];
  const readyOf = (mover: Mover): Ready => {
    const held = made.find(([other]) => movesAlike(other, mover));
    if (held !== undefined) return held[1];
    const stretches = ready(mover, pieces.get(mover.rider.timed.path));
    made.push([mover, stretches]);
    return stretches;
  };
  const searched = new Map<Ready, { b: Ready; later: number; nearest: Nearest | null }[]>();
  const search = (a: Ready, b: Ready, later: number): Nearest | null => {
    const ofA = searched.get(a) ?? [];
    searched.set(a, ofA);
    const held = ofA.find((one) => one.b === b && Math.abs(one.later - later) < AT_ONCE);
    if (held !== undefined) return held.nearest;
    const nearest = leastBetween(a, b, later, options);
    ofA.push({ b, later, nearest });
    return nearest;
  };
  const bodies = riders.map((rider) => readyOf({ rider, point: null }));
  const found: PairNearest[] = [];
  const add = (a: Rider, ofA: Ready, point: CarriedPoint | null, b: Rider, ofB: Ready): void => {
    found.push({ a, b, point, nearest: onClock(a, search(ofA, ofB, b.starts - a.starts)) });
  };
  for (const [i, a] of riders.entries())
    for (const [j, b] of riders.entries()) if (j > i) add(a, bodies[i] as Ready, null, b, bodies[j] as Ready);
  for (const a of riders)
    for (const point of a.points) {
      const carried = readyOf({ rider: a, point });
      for (const [j, b] of riders.entries()) if (b !== a) add(a, carried, point, b, bodies[j] as Ready);
    }
  return found;
}

/** Seconds by which two riders may follow each other otherwise than two others and be as near: what rounding makes. */
const AT_ONCE = 1e-9;

/** Whether two movers do the same, each in its own time. */
function movesAlike(one: Mover, other: Mover): boolean {
  const [a, b] = [one.rider, other.rider];
  return (
    a.timed.path === b.timed.path &&
    a.timed.times === b.timed.times &&
    a.counts === b.counts &&
    one.point?.moments === other.point?.moments &&
    (["ahead", "behind", "halfWidth"] as const).every((size) => a.body[size] === b.body[size])
  );
}
