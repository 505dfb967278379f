/** shared/ground/distances.ts - the least distance between riders over a whole ride, with its moment and place.
 *  May import: siblings in shared/ground. Keeps rules G65-G69 (shared/ground/RULES.md). Metres, seconds.
 *  Samples alone would miss a near miss between two of them. Each stretch of time has a lower bound: what the closing
 *  speed allows from its ends, and what lies between two bodies seen along one direction when both moved straight, less
 *  what their bends can stray. A stretch whose bound could still beat the least found is halved; the rest is dropped. */
import { breaksOf, type Mover, type Stretch, stretchOf } from "./moving-span.ts";
import { type NearestPlaces, nearestPlaces, type Span } from "./nearest.ts";
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

type Pair = { a: Mover; b: Mover; thickness: number };
/** `metres` is between the outsides, below 0 by as much as they overlap. */
type Sample = { seconds: number; spanA: Span; spanB: Span; nearest: NearestPlaces; metres: number };
type Interval = { from: Sample; to: Sample; motionA: Stretch; motionB: Stretch };

function pairOf(a: Mover, b: Mover): Pair {
  const thick = (mover: Mover): number => (mover.point === null ? mover.rider.body.halfWidth : 0);
  return { a, b, thickness: thick(a) + thick(b) };
}

function sampleAt(pair: Pair, motionA: Stretch, motionB: Stretch, seconds: number): Sample {
  const spanA = motionA.at(seconds);
  const spanB = motionB.at(seconds);
  const nearest = nearestPlaces(spanA, spanB);
  return { seconds, spanA, spanB, nearest, metres: nearest.metres - pair.thickness };
}

/** The stretches of time from the first start to the last end, cut at every abrupt change, in order of time. */
function intervalsOf(pair: Pair): Interval[] {
  const breaks = [...breaksOf(pair.a), ...breaksOf(pair.b)].sort((x, y) => x - y);
  const intervals: Interval[] = [];
  for (let index = 1; index < breaks.length; index += 1) {
    const from = breaks[index - 1] as number;
    const to = breaks[index] as number;
    if (to <= from) continue;
    const motionA = stretchOf(pair.a, from, to);
    const motionB = stretchOf(pair.b, from, to);
    const ends = [from, to].map((seconds) => sampleAt(pair, motionA, motionB, seconds)) as [Sample, Sample];
    intervals.push({ from: ends[0], to: ends[1], motionA, motionB });
  }
  return intervals;
}

/** No moment of the interval has less: the two could close only so fast from its ends. */
function closingBound({ from, to, motionA, motionB }: Interval): number {
  const closing = motionA.speed + motionB.speed;
  return (from.metres + to.metres - closing * (to.seconds - from.seconds)) / 2;
}

/** No moment of the interval has less: seen along the line between the nearest places in the middle. */
function separationBound(pair: Pair, { from, to, motionA, motionB }: Interval, middle: Sample): number {
  const { onA, onB, metres } = middle.nearest;
  if (metres === 0) return -pair.thickness;
  const x = (onB.x - onA.x) / metres;
  const y = (onB.y - onA.y) / metres;
  const gap = (sample: Sample): number => {
    let farthestA = Number.NEGATIVE_INFINITY;
    let nearestB = Number.POSITIVE_INFINITY;
    for (const end of sample.spanA) farthestA = Math.max(farthestA, end.x * x + end.y * y);
    for (const end of sample.spanB) nearestB = Math.min(nearestB, end.x * x + end.y * y);
    return nearestB - farthestA;
  };
  // A curve of acceleration b strays at most b h²/8 from the chord of h seconds.
  const stray = ((motionA.bend + motionB.bend) * (to.seconds - from.seconds) ** 2) / 8;
  return Math.min(gap(from), gap(to)) - stray - pair.thickness;
}

function checkOptions(options: SearchOptions): void {
  if (!(options.within > 0))
    throw new RangeError(`Distances are found within some metres above 0, not ${options.within}.`);
}

/** The least distance between two movers; null when it is known only to be above `care`. Throws RangeError for `within`
 *  not above 0. When they touch, the first moment they do. */
export function leastDistance(a: Mover, b: Mover, options: SearchOptions = USUAL_SEARCH): Nearest | null {
  checkOptions(options);
  const pair = pairOf(a, b);
  const { within, care = Number.POSITIVE_INFINITY } = options;
  const open = intervalsOf(pair);
  let best = firstLeast(pair, open);
  const hopeless = (bound: number): boolean => bound >= Math.min(best.metres, care) - within;
  // From the end of the list, so in reverse order of time; stretches are put back in halves.
  for (let interval = open.pop(); interval !== undefined; interval = open.pop()) {
    if (best.metres <= 0) break;
    if (hopeless(closingBound(interval))) continue;
    const halfway = (interval.from.seconds + interval.to.seconds) / 2;
    const middle = sampleAt(pair, interval.motionA, interval.motionB, halfway);
    if (middle.metres < best.metres) best = middle;
    if (hopeless(separationBound(pair, interval, middle))) continue;
    open.push({ ...interval, to: middle }, { ...interval, from: middle });
  }
  if (best.metres <= 0) return firstWithin(a, b, 0, options) ?? nearestOf(best, within);
  return best.metres > care ? null : nearestOf(best, within);
}

/** The nearest of the samples at the ends; a rider that never moves has just the one. */
function firstLeast(pair: Pair, intervals: readonly Interval[]): Sample {
  const first = intervals[0];
  if (first === undefined) {
    const at = Math.min(...breaksOf(pair.a));
    return sampleAt(pair, stretchOf(pair.a, at, at), stretchOf(pair.b, at, at), at);
  }
  let best = first.from;
  for (const { from, to } of intervals) {
    if (from.metres < best.metres) best = from;
    if (to.metres < best.metres) best = to;
  }
  return best;
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
  const pair = pairOf(a, b);
  // Taken from the end of the list, so put there in reverse.
  const open = intervalsOf(pair).reverse();
  for (let interval = open.pop(); interval !== undefined; interval = open.pop()) {
    if (interval.from.metres <= limit) return nearestOf(interval.from, options.within);
    const missable = (bound: number): boolean => bound > limit - options.within && interval.to.metres > limit;
    if (missable(closingBound(interval))) continue;
    const halfway = (interval.from.seconds + interval.to.seconds) / 2;
    const middle = sampleAt(pair, interval.motionA, interval.motionB, halfway);
    const short = interval.to.seconds - interval.from.seconds < SHORTEST;
    if (short && interval.to.metres <= limit) return nearestOf(interval.to, options.within);
    if (middle.metres > limit && missable(separationBound(pair, interval, middle))) continue;
    open.push({ ...interval, from: middle }, { ...interval, to: middle });
  }
  return null;
}

/** One pair of riders at its nearest. `point` is the point of `a` that comes near the body of `b`; null for two bodies.
 *  `nearest` is null when it is above what one cares for. */
export type PairNearest = {
  readonly a: Rider;
  readonly b: Rider;
  readonly point: CarriedPoint | null;
  readonly nearest: Nearest | null;
};

/** Every two riders by their bodies, then every carried point and every other rider's body, in the order given. */
export function allDistances(riders: readonly Rider[], options: SearchOptions = USUAL_SEARCH): PairNearest[] {
  const body = (rider: Rider): Mover => ({ rider, point: null });
  const bodies = riders.flatMap((a, index) =>
    riders.slice(index + 1).map((b) => ({ a, b, point: null, nearest: leastDistance(body(a), body(b), options) })),
  );
  const points = riders.flatMap((a) =>
    a.points.flatMap((point) =>
      riders
        .filter((b) => b !== a)
        .map((b) => ({ a, b, point, nearest: leastDistance({ rider: a, point }, body(b), options) })),
    ),
  );
  return [...bodies, ...points];
}
