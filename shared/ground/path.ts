/** shared/ground/path.ts - a ride as an unbroken row of pieces: where it is after so many metres, cut, joined, turned round.
 *  May import: siblings in shared/ground. Keeps rules G10-G15 (shared/ground/RULES.md). Metres, hundredths of a degree. */
import {
  axisExtremes,
  type Box,
  boxAround,
  cutPiece,
  extentOf,
  mirrorPiece,
  movePiece,
  type Piece,
  poseOn,
  reversePiece,
  ridePieceTheOtherWay,
} from "./piece.ts";
import { distance, type Motion, type Pose, samePose, type Tolerance, turnBetween } from "./plane.ts";

/** At least one piece. `lengths[i]` metres lie before piece i, `extents[i]` likewise for fractions; both have one more
 *  entry, the whole. */
export type Path = {
  readonly pieces: readonly Piece[];
  readonly lengths: readonly number[];
  readonly extents: readonly number[];
  readonly start: Pose;
  readonly end: Pose;
};

export type PathResult = { ok: true; path: Path } | { ok: false; code: "path-gap"; sentence: string };

function assemble(pieces: readonly Piece[]): Path {
  const lengths = [0];
  const extents = [0];
  for (const [index, piece] of pieces.entries()) {
    lengths.push((lengths[index] as number) + piece.length);
    extents.push((extents[index] as number) + extentOf(piece));
  }
  const last = pieces.length - 1;
  return { pieces, lengths, extents, start: poseOn(pieces[0] as Piece, 0), end: poseOn(pieces[last] as Piece, 1) };
}

/** What is wrong between the end of one and the start of the next; null when they meet. */
function gapBetween(end: Pose, start: Pose, tolerance: Tolerance): string | null {
  if (samePose(end, start, tolerance)) return null;
  const apart = (distance(end, start) * 1_000).toFixed(1);
  const turn = (turnBetween(end.heading, start.heading) / 100).toFixed(2);
  return `${apart} mm and ${turn} degrees apart, where at most ${tolerance.distance * 1_000} mm and ${tolerance.heading / 100} degrees are allowed`;
}

/** A path of these pieces. Throws RangeError for none, and where one does not begin as the last ended. */
export function pathOf(pieces: readonly Piece[], tolerance: Tolerance): Path {
  if (pieces.length === 0) throw new RangeError("A path has at least one piece.");
  for (let index = 1; index < pieces.length; index += 1) {
    const end = poseOn(pieces[index - 1] as Piece, 1);
    const gap = gapBetween(end, poseOn(pieces[index] as Piece, 0), tolerance);
    if (gap !== null) throw new RangeError(`Pieces ${index - 1} and ${index} of a path are ${gap}.`);
  }
  return assemble([...pieces]);
}

/** One path after another; refused when the second does not begin where and as the first ends. */
export function joinPaths(first: Path, second: Path, tolerance: Tolerance): PathResult {
  const gap = gapBetween(first.end, second.start, tolerance);
  if (gap === null) return { ok: true, path: assemble([...first.pieces, ...second.pieces]) };
  const sentence = `The second line does not begin where the first ends: they are ${gap}. Put a joining line between them.`;
  return { ok: false, code: "path-gap", sentence };
}

/** The whole length in metres. */
export function lengthOf(path: Path): number {
  return path.lengths[path.pieces.length] as number;
}

/** The piece that holds `value` of a rising row of sums: the first whose end is not before it. */
export function pieceHolding(sums: readonly number[], value: number): number {
  let low = 0;
  let high = sums.length - 2;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle + 1] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function locate(sums: readonly number[], value: number): { index: number; part: number } {
  const index = pieceHolding(sums, value);
  const from = sums[index] as number;
  const size = (sums[index + 1] as number) - from;
  return { index, part: size === 0 ? 0 : Math.min(1, Math.max(0, (value - from) / size)) };
}

/** The pose with `metres` behind it, 0 to the length; before a turn or halt that stands there, but the end is the end.
 *  Throws RangeError outside. */
export function poseAtLength(path: Path, metres: number): Pose {
  const whole = lengthOf(path);
  if (!(metres >= 0 && metres <= whole)) throw new RangeError(`The path has 0 to ${whole} m, not ${metres} m.`);
  if (metres === whole) return path.end;
  const { index, part } = locate(path.lengths, metres);
  return poseOn(path.pieces[index] as Piece, part);
}

/** The pose at `over`/`of` of the path, whole numbers, 0 to 1; by extent, so that turns and halts have their moments too.
 *  Throws RangeError outside. */
export function poseAtFraction(path: Path, over: number, of: number): Pose {
  const { index, part } = placeOfFraction(path, over, of);
  return poseOn(path.pieces[index] as Piece, part);
}

/** The piece, and the part of it, at a fraction of the path. Throws RangeError unless 0 <= over <= of, both whole. */
export function placeOfFraction(path: Path, over: number, of: number): { index: number; part: number } {
  if (!(Number.isInteger(over) && Number.isInteger(of) && of > 0 && over >= 0 && over <= of))
    throw new RangeError(`A fraction of a path is two whole numbers from 0/1 to 1/1, not ${over}/${of}.`);
  if (over === of) return { index: path.pieces.length - 1, part: 1 };
  return locate(path.extents, ((path.extents[path.pieces.length] as number) * over) / of);
}

/** The two paths cut `metres` from the start, above 0 and below the length. Throws RangeError elsewhere. */
export function cutPath(path: Path, metres: number): [Path, Path] {
  const whole = lengthOf(path);
  if (!(metres > 0 && metres < whole)) throw new RangeError(`A path of ${whole} m is not cut at ${metres} m.`);
  const { index, part } = locate(path.lengths, metres);
  const before = path.pieces.slice(0, index);
  const after = path.pieces.slice(index + 1);
  const piece = path.pieces[index] as Piece;
  if (part >= 1) return [assemble([...before, piece]), assemble(after)];
  if (part <= 0) return [assemble(before), assemble([piece, ...after])];
  const [first, rest] = cutPiece(piece, part);
  return [assemble([...before, first]), assemble([rest, ...after])];
}

/** The path with time running back: the horse goes backward over the same poses. */
export function reversePath(path: Path): Path {
  return assemble(path.pieces.toReversed().map(reversePiece));
}

/** The same line ridden from its end to its start, the horse looking the other way. */
export function rideTheOtherWay(path: Path): Path {
  return assemble(path.pieces.toReversed().map(ridePieceTheOtherWay));
}

/** The path in the mirrored world, exactly. */
export function mirrorPath(path: Path): Path {
  return assemble(path.pieces.map(mirrorPiece));
}

/** The path after a rigid motion. */
export function movePath(path: Path, motion: Motion): Path {
  return assemble(path.pieces.map((piece) => movePiece(piece, motion)));
}

/** The smallest upright box round the path. */
export function boxOf(path: Path): Box {
  return boxAround(path.pieces.flatMap(axisExtremes));
}
