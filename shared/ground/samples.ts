/** shared/ground/samples.ts - where every rider is so many times a second, as plain numbers for drawing and playing.
 *  May import: siblings in shared/ground. Keeps rule G61 (shared/ground/RULES.md). Metres, seconds, hundredths of a degree.
 *  Each path is gone through once from start to end, so the time it takes does not grow with the pieces. */
import { type Piece, poseOn } from "./piece.ts";
import { FULL_TURN, type Pose } from "./plane.ts";
import type { Rider } from "./riders.ts";

/** `rows[r]` has `count` times three numbers for rider r: x, y, heading in [0, 36000). Sample i is at `from` +
 *  i / `perSecond` seconds of the common clock. */
export type Samples = {
  readonly from: number;
  readonly perSecond: number;
  readonly count: number;
  readonly rows: readonly Float64Array[];
};

/** Samples from `from` on, `to` included when a sample falls on it. Throws RangeError when there is nothing to sample. */
export function sampleRiders(riders: readonly Rider[], from: number, to: number, perSecond: number): Samples {
  if (!(perSecond > 0 && to >= from && Number.isFinite(to - from)))
    throw new RangeError(`There are no samples ${perSecond} times a second from ${from} to ${to} s.`);
  const count = Math.floor((to - from) * perSecond + 1e-9) + 1;
  return { from, perSecond, count, rows: riders.map((rider) => rowOf(rider, from, perSecond, count)) };
}

/** One sample as a pose. Throws RangeError for a rider or a sample that is not there. */
export function sampledPose(samples: Samples, rider: number, index: number): Pose {
  const row = samples.rows[rider];
  if (row === undefined || !(Number.isInteger(index) && index >= 0 && index < samples.count))
    throw new RangeError(`There is no sample ${index} of rider ${rider}.`);
  return { x: row[3 * index] as number, y: row[3 * index + 1] as number, heading: row[3 * index + 2] as number };
}

function rowOf(rider: Rider, from: number, perSecond: number, count: number): Float64Array {
  const { path, times, duration } = rider.timed;
  const row = new Float64Array(3 * count);
  const begins = from - rider.starts;
  let index = 0;
  for (let sample = 0; sample < count; sample += 1) {
    const seconds = begins + sample / perSecond;
    if (seconds <= 0) put(row, sample, path.start);
    else if (seconds >= duration) put(row, sample, path.end);
    else {
      while ((times[index + 1] as number) < seconds) index += 1;
      const starts = times[index] as number;
      const lasts = (times[index + 1] as number) - starts;
      putOn(row, sample, path.pieces[index] as Piece, (seconds - starts) / lasts);
    }
  }
  return row;
}

function put(row: Float64Array, sample: number, pose: Pose): void {
  row[3 * sample] = pose.x;
  row[3 * sample + 1] = pose.y;
  row[3 * sample + 2] = pose.heading;
}

const RADIANS = Math.PI / 18_000;

/** As `poseOn`, without making a pose: this runs a hundred thousand times for one ride. */
function putOn(row: Float64Array, sample: number, piece: Piece, part: number): void {
  if (piece.is === "straight") {
    row[3 * sample] = piece.from.x + (piece.to.x - piece.from.x) * part;
    row[3 * sample + 1] = piece.from.y + (piece.to.y - piece.from.y) * part;
    row[3 * sample + 2] = piece.heading;
    return;
  }
  if (piece.is === "halt") {
    put(row, sample, poseOn(piece, part));
    return;
  }
  const heading = piece.heading + piece.sweep * part;
  const rest = heading % FULL_TURN;
  row[3 * sample + 2] = rest < 0 ? rest + FULL_TURN : rest;
  if (piece.is === "turn") {
    row[3 * sample] = piece.at.x;
    row[3 * sample + 1] = piece.at.y;
    return;
  }
  const reach = piece.sweep > 0 === piece.back ? -piece.radius : piece.radius;
  row[3 * sample] = piece.centre.x + reach * Math.sin(heading * RADIANS);
  row[3 * sample + 1] = piece.centre.y - reach * Math.cos(heading * RADIANS);
}
