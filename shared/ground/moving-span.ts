/** shared/ground/moving-span.ts - a horse's body or a shaft's point in motion, with bounds on how fast and how bent it moves.
 *  May import: siblings in shared/ground. Keeps rule G64 (shared/ground/RULES.md). Metres, seconds of the common clock. */
import type { Span } from "./nearest.ts";
import { beside, type Pose } from "./plane.ts";
import { bodyEnds, type CarriedPoint, carriedAt, motionOn, poseOnPiece, type Rider } from "./riders.ts";

/** What moves: the body of a rider's horse, or one of the points it carries. */
export type Mover = { readonly rider: Rider; readonly point: CarriedPoint | null };

/** Over one stretch of time in which nothing changes abruptly: where it is, a bound on the speed of its ends (m/s), and
 *  on their acceleration (m/s²), which bounds how far they stray from a straight line. */
export type Stretch = { readonly at: (seconds: number) => Span; readonly speed: number; readonly bend: number };

/** The moments at which a mover's motion changes abruptly, in rising order. */
export function breaksOf(mover: Mover): number[] {
  const { timed, starts } = mover.rider;
  const moments = mover.point === null ? [] : mover.point.moments.map((moment) => moment.seconds);
  return [...timed.times, ...moments].map((seconds) => seconds + starts).sort((a, b) => a - b);
}

/** The motion over a stretch of time that holds no break inside. */
export function stretchOf(mover: Mover, from: number, to: number): Stretch {
  const { rider, point } = mover;
  const middle = (from + to) / 2 - rider.starts;
  const { times, duration, path } = rider.timed;
  const rides = middle > 0 && middle < duration;
  const index = rides ? times.findLastIndex((starts) => starts <= middle) : 0;
  const standing = middle <= 0 ? path.start : path.end;
  const pose = (seconds: number): Pose => (rides ? poseOnPiece(rider, index, seconds) : standing);
  const piece = path.pieces[index];
  const lasts = (times[index + 1] ?? 0) - (times[index] ?? 0);
  const { speed, spin } = rides && piece !== undefined ? motionOn(piece, lasts) : { speed: 0, spin: 0 };
  if (point === null) {
    const reach = Math.max(rider.body.ahead, rider.body.behind);
    return {
      at: (seconds) => bodyEnds(pose(seconds), rider.body),
      speed: speed + spin * reach,
      bend: spin * (speed + spin * reach),
    };
  }
  const first = carriedAt(point, from - rider.starts);
  const last = carriedAt(point, to - rider.starts);
  const reach = Math.max(Math.hypot(first.ahead, first.left), Math.hypot(last.ahead, last.left));
  const shift = to > from ? Math.hypot(last.ahead - first.ahead, last.left - first.left) / (to - from) : 0;
  return {
    at: (seconds) => {
      const carried = carriedAt(point, seconds - rider.starts);
      return [beside(pose(seconds), carried.ahead, carried.left)];
    },
    speed: speed + spin * reach + shift,
    bend: spin * (speed + spin * reach + 2 * shift),
  };
}
