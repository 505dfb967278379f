/** shared/ground/moving-span.ts - a horse's body or a shaft's point in motion, cut into stretches without an abrupt change,
 *  each with bounds on where, how fast and how bent it moves.
 *  May import: siblings in shared/ground. Keeps rule G64 (shared/ground/RULES.md). Metres, seconds of the common clock. */
import type { Span } from "./nearest.ts";
import type { Path } from "./path.ts";
import { type Box, boxOfPiece, halt, type Piece } from "./piece.ts";
import { directionOf, type Point, type Pose, radiansOf } from "./plane.ts";
import { type CarriedPoint, carriedAt, type PointMoment, type Rider } from "./riders.ts";

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

/** Where a horse is and the unit vector along it: a pose without the angle, which nobody here asks for. */
type Place = { readonly x: number; readonly y: number; readonly way: Point };

/** A piece with what every stretch on it shares: the direction at its start, and the smallest box round it. */
export type BoxedPiece = { readonly piece: Piece; readonly way: Point; readonly box: Box };

/** Motion of the horse alone on a piece, with its speed in metres and its spin in radians a second. */
type Ride = {
  readonly on: BoxedPiece;
  readonly begins: number;
  readonly lasts: number;
  readonly speed: number;
  readonly spin: number;
};

function boxed(piece: Piece): BoxedPiece {
  return { piece, way: directionOf(piece.heading), box: boxOfPiece(piece) };
}

/** The pieces of a path, made ready once for all that rides it. */
export function boxedPieces(path: Path): BoxedPiece[] {
  return path.pieces.map(boxed);
}

function grown(box: Box, by: number): Box {
  return { left: box.left - by, right: box.right + by, foot: box.foot - by, head: box.head + by };
}

function besidePlace(place: Place, ahead: number, left: number): Point {
  const { x, y, way } = place;
  return { x: x + ahead * way.x - left * way.y, y: y + ahead * way.y + left * way.x };
}

function standing(pose: Pose): Ride {
  return { on: boxed(halt(pose, 1)), begins: 0, lasts: 1, speed: 0, spin: 0 };
}

/** As `poseOn`, with the direction instead of the heading. */
function placeOn(piece: Piece, way: Point, part: number): Place {
  switch (piece.is) {
    case "straight": {
      const { from: a, to: b } = piece;
      return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part, way };
    }
    case "arc": {
      const along = directionOf(piece.heading, piece.sweep * part);
      const reach = piece.sweep > 0 === piece.back ? -piece.radius : piece.radius;
      return { x: piece.centre.x + reach * along.y, y: piece.centre.y - reach * along.x, way: along };
    }
    case "turn":
      return { x: piece.at.x, y: piece.at.y, way: directionOf(piece.heading, piece.sweep * part) };
    case "halt":
      return { x: piece.at.x, y: piece.at.y, way };
  }
}

function riding(on: BoxedPiece, begins: number, ends: number): Ride {
  const { piece } = on;
  const lasts = ends - begins;
  const turns = piece.is === "arc" || piece.is === "turn" ? Math.abs(radiansOf(piece.sweep)) : 0;
  return { on, begins, lasts, speed: piece.length / lasts, spin: turns / lasts };
}

function placeAt({ on, begins, lasts }: Ride, seconds: number): Place {
  return placeOn(on.piece, on.way, Math.min(1, Math.max(0, (seconds - begins) / lasts)));
}

function bodyStretch(rider: Rider, ride: Ride, from: number, to: number): Stretch {
  const reach = Math.max(rider.body.ahead, rider.body.behind);
  return {
    from,
    to,
    at(seconds) {
      const place = placeAt(ride, seconds);
      return [besidePlace(place, rider.body.ahead, 0), besidePlace(place, -rider.body.behind, 0)];
    },
    box: grown(ride.on.box, reach),
    speed: ride.speed + ride.spin * reach,
    bend: ride.spin * (ride.speed + ride.spin * reach),
  };
}

/** The plain root: Math.hypot is many times slower, and no shaft is so long that its square runs over. */
function reachOf(ahead: number, left: number): number {
  return Math.sqrt(ahead * ahead + left * left);
}

function pointStretch(rider: Rider, point: CarriedPoint, ride: Ride, from: number, to: number): Stretch {
  const first = carriedAt(point, from - rider.starts);
  const last = carriedAt(point, to - rider.starts);
  const reach = Math.max(reachOf(first.ahead, first.left), reachOf(last.ahead, last.left));
  const lasts = to - from;
  const moves = Number.isFinite(lasts) && (first.ahead !== last.ahead || first.left !== last.left);
  const shift = moves ? reachOf(last.ahead - first.ahead, last.left - first.left) / lasts : 0;
  return {
    from,
    to,
    at(seconds) {
      const part = moves ? (seconds - from) / lasts : 0;
      const ahead = first.ahead + (last.ahead - first.ahead) * part;
      return [besidePlace(placeAt(ride, seconds), ahead, first.left + (last.left - first.left) * part)];
    },
    box: grown(ride.on.box, reach),
    speed: ride.speed + ride.spin * reach + shift,
    bend: ride.spin * (ride.speed + ride.spin * reach + 2 * shift),
  };
}

/** All stretches in which the mover counts, each ending where the next begins. `pieces`: those of its path. */
export function stretchesOf(
  { rider, point }: Mover,
  pieces: readonly BoxedPiece[] = boxedPieces(rider.timed.path),
): Stretch[] {
  const { timed, starts } = rider;
  const moments = point?.moments ?? [];
  const stretches: Stretch[] = [];
  // Rides come in order of time, so the moments are gone through once.
  let next = 0;
  function add(ride: Ride, from: number, to: number): void {
    let begins = from;
    while (begins < to) {
      while (next < moments.length && (moments[next] as PointMoment).seconds + starts <= begins) next += 1;
      const moment = moments[next];
      const ends = moment === undefined ? to : Math.min(to, moment.seconds + starts);
      stretches.push(
        point === null ? bodyStretch(rider, ride, begins, ends) : pointStretch(rider, point, ride, begins, ends),
      );
      begins = ends;
    }
  }
  const always = rider.counts === "always";
  if (always) add(standing(timed.path.start), Number.NEGATIVE_INFINITY, starts);
  for (const [index, on] of pieces.entries()) {
    const from = (timed.times[index] as number) + starts;
    const to = (timed.times[index + 1] as number) + starts;
    if (to > from) add(riding(on, from, to), from, to);
  }
  if (always) add(standing(timed.path.end), timed.duration + starts, Number.POSITIVE_INFINITY);
  return stretches;
}
