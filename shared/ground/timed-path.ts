/** shared/ground/timed-path.ts - a path with the time of each piece: where the horse is at a moment.
 *  May import: siblings in shared/ground. Keeps rules G58-G60 (shared/ground/RULES.md). Seconds from the path's start.
 *  The speed is one for a piece and changes at once between two: a drill is planned, not weighed. */
import { type Path, pieceHolding } from "./path.ts";
import { type Piece, poseOn } from "./piece.ts";
import type { Pose } from "./plane.ts";

/** `times[i]` seconds lie before piece i; one more entry, the whole. */
export type TimedPath = { readonly path: Path; readonly times: readonly number[]; readonly duration: number };

/** Degrees a second of a turn on the spot; no published value was found, so this is a guess and labelled so. */
export const TURN_RATE_GUESS = 60;

/** Seconds one piece takes: metres at `speed` (m/s), a turn on the spot at `turnRate` (degrees a second), a halt its own.
 *  Throws RangeError for a speed or rate that is not above 0 and finite where one is needed. */
export function secondsOf(piece: Piece, speed: number, turnRate: number): number {
  if (piece.is === "halt") return piece.seconds;
  const rate = piece.is === "turn" ? turnRate : speed;
  if (!(rate > 0 && Number.isFinite(rate))) throw new RangeError(`A ${piece.is} needs a speed above 0, not ${rate}.`);
  return piece.is === "turn" ? Math.abs(piece.sweep) / 100 / rate : piece.length / speed;
}

/** The path timed by a speed for each piece (m/s; not looked at for turns and halts). Throws RangeError when there are
 *  not as many speeds as pieces, and as `secondsOf`. */
export function timePath(path: Path, speeds: readonly number[], turnRate = TURN_RATE_GUESS): TimedPath {
  if (speeds.length !== path.pieces.length)
    throw new RangeError(`A path of ${path.pieces.length} pieces has as many speeds, not ${speeds.length}.`);
  const times = [0];
  for (const [index, piece] of path.pieces.entries())
    times.push((times[index] as number) + secondsOf(piece, speeds[index] as number, turnRate));
  return { path, times, duration: times[path.pieces.length] as number };
}

/** The whole path at one speed. */
export function timeAtOneSpeed(path: Path, speed: number, turnRate = TURN_RATE_GUESS): TimedPath {
  return timePath(
    path,
    path.pieces.map(() => speed),
    turnRate,
  );
}

/** The pose at a moment; before the start the horse stands at the start, after the end at the end. */
export function poseAtTime(timed: TimedPath, seconds: number): Pose {
  if (!(seconds > 0)) return timed.path.start;
  if (seconds >= timed.duration) return timed.path.end;
  const { index, part } = momentOf(timed, seconds);
  return poseOn(timed.path.pieces[index] as Piece, part);
}

/** The piece and the part of it at a moment from 0 to the duration; outside, the nearest. */
export function momentOf(timed: TimedPath, seconds: number): { index: number; part: number } {
  const index = pieceHolding(timed.times, seconds);
  const from = timed.times[index] as number;
  const lasts = (timed.times[index + 1] as number) - from;
  return { index, part: lasts === 0 ? 0 : Math.min(1, Math.max(0, (seconds - from) / lasts)) };
}

/** When the path has so many metres behind it: the first such moment. Metres outside 0 to the length give the ends. */
export function timeAtLength(timed: TimedPath, metres: number): number {
  const index = pieceHolding(timed.path.lengths, metres);
  const from = timed.path.lengths[index] as number;
  const size = (timed.path.lengths[index + 1] as number) - from;
  const part = size === 0 ? 0 : Math.min(1, Math.max(0, (metres - from) / size));
  const starts = timed.times[index] as number;
  return starts + ((timed.times[index + 1] as number) - starts) * part;
}
