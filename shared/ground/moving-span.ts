/** shared/ground/moving-span.ts - a horse's body or a shaft's point in motion, cut into stretches without an abrupt change,
 *  each with bounds on where, how fast and how bent it moves.
 *  May import: siblings in shared/ground. Keeps rule G64 (shared/ground/RULES.md). Metres, seconds of the common clock. */
import type { Span } from "./nearest.ts";
import { axisExtremes, type Box, boxAround, type Piece, poseOn } from "./piece.ts";
import { beside, type Pose, radiansOf } from "./plane.ts";
import { bodyEnds, type CarriedPoint, carriedAt, type Rider } from "./riders.ts";

/** What moves: the body of a rider's horse, or one of the points it carries. */
export type Mover = { readonly rider: Rider; readonly point: CarriedPoint | null };

/** A stretch of time, `from` -Infinity before a ride and `to` Infinity after one, with where the mover is in it. `box`
 *  holds it all the while; `speed` bounds that of its ends (m/s), `bend` their acceleration (m/s²), which bounds how far
 *  they stray from a straight line. */
export type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly at: (seconds: number) => Span;
  readonly box: Box;
  readonly speed: number;
  readonly bend: number;
};

/** Motion of the horse alone over a stretch: metres and radians a second, and its pose. */
type Ride = {
  readonly poses: (seconds: number) => Pose;
  readonly box: Box;
  readonly speed: number;
  readonly spin: number;
};

function grown(box: Box, by: number): Box {
  return { left: box.left - by, right: box.right + by, foot: box.foot - by, head: box.head + by };
}

function standing(pose: Pose): Ride {
  return { poses: () => pose, box: boxAround([pose]), speed: 0, spin: 0 };
}

function riding(piece: Piece, from: number, to: number): Ride {
  const lasts = to - from;
  const turns = piece.is === "arc" || piece.is === "turn" ? Math.abs(radiansOf(piece.sweep)) : 0;
  const poses = (seconds: number): Pose => poseOn(piece, Math.min(1, Math.max(0, (seconds - from) / lasts)));
  return { poses, box: boxAround(axisExtremes(piece)), speed: piece.length / lasts, spin: turns / lasts };
}

function bodyStretch(rider: Rider, ride: Ride, from: number, to: number): Stretch {
  const reach = Math.max(rider.body.ahead, rider.body.behind);
  return {
    from,
    to,
    at: (seconds) => bodyEnds(ride.poses(seconds), rider.body),
    box: grown(ride.box, reach),
    speed: ride.speed + ride.spin * reach,
    bend: ride.spin * (ride.speed + ride.spin * reach),
  };
}

function pointStretch(rider: Rider, point: CarriedPoint, ride: Ride, from: number, to: number): Stretch {
  const first = carriedAt(point, from - rider.starts);
  const last = carriedAt(point, to - rider.starts);
  const reach = Math.max(Math.hypot(first.ahead, first.left), Math.hypot(last.ahead, last.left));
  const lasts = to - from;
  const moves = Number.isFinite(lasts) && (first.ahead !== last.ahead || first.left !== last.left);
  const shift = moves ? Math.hypot(last.ahead - first.ahead, last.left - first.left) / lasts : 0;
  return {
    from,
    to,
    at: (seconds) => {
      const part = moves ? (seconds - from) / lasts : 0;
      const ahead = first.ahead + (last.ahead - first.ahead) * part;
      return [beside(ride.poses(seconds), ahead, first.left + (last.left - first.left) * part)];
    },
    box: grown(ride.box, reach),
    speed: ride.speed + ride.spin * reach + shift,
    bend: ride.spin * (ride.speed + ride.spin * reach + 2 * shift),
  };
}

/** All stretches in which the mover counts, each ending where the next begins. */
export function stretchesOf(mover: Mover): Stretch[] {
  const { rider, point } = mover;
  const { timed, starts } = rider;
  const carries = point === null ? [] : point.moments.map((moment) => moment.seconds + starts);
  const stretches: Stretch[] = [];
  const add = (ride: Ride, from: number, to: number): void => {
    const cuts = [...carries.filter((moment) => moment > from && moment < to), to];
    let begins = from;
    for (const ends of cuts) {
      stretches.push(
        point === null ? bodyStretch(rider, ride, begins, ends) : pointStretch(rider, point, ride, begins, ends),
      );
      begins = ends;
    }
  };
  const always = rider.counts === "always";
  if (always) add(standing(timed.path.start), Number.NEGATIVE_INFINITY, starts);
  for (const [index, piece] of timed.path.pieces.entries()) {
    const from = (timed.times[index] as number) + starts;
    const to = (timed.times[index + 1] as number) + starts;
    if (to > from) add(riding(piece, from, to), from, to);
  }
  if (always) add(standing(timed.path.end), timed.duration + starts, Number.POSITIVE_INFINITY);
  return stretches;
}
