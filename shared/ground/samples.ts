/** shared/ground/samples.ts - where every rider is so many times a second, as plain numbers for drawing and playing.
 *  May import: siblings in shared/ground. Keeps rule G61 (shared/ground/RULES.md). Metres, seconds, hundredths of a degree.
 *  Each path is gone through once from start to end, so the time it takes does not grow with the pieces. */
import { type Arc, type Piece, poseOn, type Turn } from "./piece.ts";
import { FULL_TURN, type Point, type Pose } from "./plane.ts";
import type { Rider } from "./riders.ts";
import type { TimedPath } from "./timed-path.ts";

/** `rows[r]` has `count` times three numbers for rider r: x, y, heading in [0, 36000). Sample i is at `from` +
 *  i / `perSecond` seconds of the common clock. To be read only: rows of riders of one path may share their numbers. */
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
  const rows = new Map<Rider, Float64Array>();
  for (const file of singleFilesOf(riders, perSecond)) {
    // One row holds the whole file: each rider's part of it begins where that rider was at `from`.
    const most = Math.max(...file.later);
    const whole = count + most - Math.min(...file.later);
    const row = rowOf(file.timed, from - file.starts - most / perSecond, perSecond, whole);
    for (const [index, rider] of file.riders.entries()) {
      const begins = 3 * (most - (file.later[index] as number));
      rows.set(rider, row.subarray(begins, begins + 3 * count));
    }
  }
  return { from, perSecond, count, rows: riders.map((rider) => rows.get(rider) as Float64Array) };
}

/** Riders of one path whole samples after one another: each goes through the same places, `later` samples after `starts`. */
type SingleFile = { readonly timed: TimedPath; readonly starts: number; riders: Rider[]; later: number[] };

/** Part of a sample by which riders of one file may be off: hundredths of a micrometre at a gallop. */
const IN_STEP = 1e-7;

function singleFilesOf(riders: readonly Rider[], perSecond: number): SingleFile[] {
  const files: SingleFile[] = [];
  for (const rider of riders) {
    const { timed, starts } = rider;
    const laterIn = (file: SingleFile): number => (starts - file.starts) * perSecond;
    const held = files.find(
      (file) =>
        file.timed.path === timed.path &&
        file.timed.times === timed.times &&
        Math.abs(laterIn(file) - Math.round(laterIn(file))) < IN_STEP,
    );
    if (held === undefined) files.push({ timed, starts, riders: [rider], later: [0] });
    else {
      held.riders.push(rider);
      held.later.push(Math.round(laterIn(held)));
    }
  }
  return files;
}

/** One sample as a pose. Throws RangeError for a rider or a sample that is not there. */
export function sampledPose(samples: Samples, rider: number, index: number): Pose {
  const row = samples.rows[rider];
  if (row === undefined || !(Number.isInteger(index) && index >= 0 && index < samples.count))
    throw new RangeError(`There is no sample ${index} of rider ${rider}.`);
  return { x: row[3 * index] as number, y: row[3 * index + 1] as number, heading: row[3 * index + 2] as number };
}

/** `begins`: seconds of the ride at its first sample. */
function rowOf({ path, times, duration }: TimedPath, begins: number, perSecond: number, count: number): Float64Array {
  const row = new Float64Array(3 * count);
  let sample = 0;
  for (; sample < count && begins + sample / perSecond <= 0; sample += 1) put(row, sample, path.start);
  for (const [index, piece] of path.pieces.entries()) {
    const [starts, ends] = [times[index] as number, times[index + 1] as number];
    const first = sample;
    // Nearly all at once, and the last ones tried, so that rounding decides nothing.
    sample = Math.max(first, Math.min(count, Math.floor((ends - begins) * perSecond) - 1));
    while (sample < count && begins + sample / perSecond <= ends && begins + sample / perSecond < duration) sample += 1;
    putRun(row, piece, { first, past: sample, begins, perSecond, starts, lasts: ends - starts });
  }
  for (; sample < count; sample += 1) put(row, sample, path.end);
  return row;
}

function put(row: Float64Array, sample: number, pose: Pose): void {
  row[3 * sample] = pose.x;
  row[3 * sample + 1] = pose.y;
  row[3 * sample + 2] = pose.heading;
}

/** The samples that fall on one piece: from `first` up to and without `past`. Sample i is `begins` + i / `perSecond` seconds
 *  into the ride, the piece lies from `starts` for `lasts` seconds. */
type Run = {
  readonly first: number;
  readonly past: number;
  readonly begins: number;
  readonly perSecond: number;
  readonly starts: number;
  readonly lasts: number;
};

const RADIANS = Math.PI / 18_000;

/** As `poseOn` for every sample, without making poses: a ride has a hundred thousand of them. */
function putRun(row: Float64Array, piece: Piece, run: Run): void {
  const { first, past, begins, perSecond, starts, lasts } = run;
  switch (piece.is) {
    case "halt": {
      const pose = poseOn(piece, 0);
      for (let sample = first; sample < past; sample += 1) put(row, sample, pose);
      return;
    }
    case "straight": {
      const { from, to, heading } = piece;
      for (let sample = first; sample < past; sample += 1) {
        const part = (begins + sample / perSecond - starts) / lasts;
        row[3 * sample] = from.x + (to.x - from.x) * part;
        row[3 * sample + 1] = from.y + (to.y - from.y) * part;
        row[3 * sample + 2] = heading;
      }
      return;
    }
    case "turn":
      putBend(row, piece, piece.at, 0, run);
      return;
    case "arc":
      putBend(row, piece, piece.centre, piece.sweep > 0 === piece.back ? -piece.radius : piece.radius, run);
  }
}

/** Samples after which a circle is measured anew, so that its rounding stays below a millionth of a millimetre. */
const TURNS_ON = 256;

/** Round a centre at `reach` metres. From one sample to the next the direction is turned on by the same angle, which is
 *  far quicker than to ask for the sine and the cosine of each. */
function putBend(row: Float64Array, bend: Arc | Turn, centre: Point, reach: number, run: Run): void {
  const { first, past, begins, perSecond, starts, lasts } = run;
  const step = (bend.sweep / perSecond / lasts) * RADIANS;
  const stepSine = Math.sin(step);
  const stepCosine = Math.cos(step);
  for (let anew = first; anew < past; anew += TURNS_ON) {
    const direction = (bend.heading + bend.sweep * ((begins + anew / perSecond - starts) / lasts)) * RADIANS;
    let sine = Math.sin(direction);
    let cosine = Math.cos(direction);
    const until = Math.min(past, anew + TURNS_ON);
    for (let sample = anew; sample < until; sample += 1) {
      const heading = bend.heading + bend.sweep * ((begins + sample / perSecond - starts) / lasts);
      row[3 * sample] = centre.x + reach * sine;
      row[3 * sample + 1] = centre.y - reach * cosine;
      row[3 * sample + 2] = inOneTurn(heading);
      const turnedSine = sine * stepCosine + cosine * stepSine;
      cosine = cosine * stepCosine - sine * stepSine;
      sine = turnedSine;
    }
  }
}

/** The remainder only where it is needed: it costs more than all the rest. */
function inOneTurn(heading: number): number {
  if (heading >= 0 && heading < FULL_TURN) return heading;
  const rest = heading % FULL_TURN;
  return rest < 0 ? rest + FULL_TURN : rest;
}
