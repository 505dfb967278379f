/** shared/ground/figures/straight.ts - straight on: to a station, in a direction, for a length; and the charge.
 *  May import: siblings in shared/ground. Keeps rules G31-G38 (shared/ground/RULES.md). */
import { distanceToWall, reachToWall } from "../grounds.ts";
import { waysToPlace } from "../join.ts";
import { lengthOf } from "../path.ts";
import { arcFrom, type Piece, straight } from "../piece.ts";
import { beside, distance, headingOf, type Point, type Pose, turnBetween } from "../plane.ts";
import { USUAL_BODY } from "../riders.ts";
import {
  after,
  checkSize,
  checkStart,
  type FigureNote,
  type FigureRefusal,
  type FigureResult,
  finish,
  inWords,
  type Manege,
  placeNamed,
  refuse,
  supplied,
  suppliedLine,
} from "./figure.ts";

/** To a station, or along a heading (hundredths of a degree), or straight on; for a length in metres, or as far as the
 *  station; without either as far as the track. A length that is shorter than the way to the station ends before it.
 *  `on`: so many metres past the station, or before it (negative). */
export type StraightAsk = {
  readonly figure: "straight" | "charge";
  readonly toward?: string | null;
  readonly heading?: number | null;
  readonly length?: number | null;
  readonly on?: number | null;
};

/** A supplied bend of less than this, in hundredths of a degree, is not worth a word: it only takes up rounding. */
const WORTH_A_WORD = 50;

export function rideStraight(manege: Manege, start: Pose, ask: StraightAsk): FigureResult {
  const wrong = checkStart(manege, start);
  if (wrong !== null) return wrong;
  const length = ask.length ?? null;
  if (length !== null) {
    const notASize = checkSize(`the length of the ${ask.figure}`, length, 10);
    if (notASize !== null) return notASize;
  }
  const toward = ask.toward ?? null;
  if (toward !== null) {
    const place = placeNamed(manege, toward, start);
    if ("code" in place) return place;
    return towardStation(manege, start, ask, toward, place);
  }
  return alongHeading(manege, start, ask);
}

function towardStation(manege: Manege, start: Pose, ask: StraightAsk, name: string, place: Point): FigureResult {
  const { tolerance, leastRadius, joinRadius } = manege.usual;
  if (distance(start, place) <= tolerance.distance)
    return refuse(
      "nothing-to-ride",
      `Some way to ${name} was expected, but the horse already stands there. Leave the step out, or say where to.`,
    );
  const notes: FigureNote[] = [];
  const tight = waysToPlace(start, place, leastRadius, tolerance.heading);
  const wide = joinRadius > leastRadius ? waysToPlace(start, place, joinRadius, tolerance.heading).slice(0, 1) : [];
  // A wide bend that leads far about is no way to go straight.
  const near = wide.filter((pieces) => metresOf(pieces) <= MOST_ABOUT * metresOf(tight[0] ?? []));
  const whole = [...near, ...tight];
  const ends = whole.map((pieces) => shortened(pieces, shortOf(manege, pieces, ask.on ?? null)));
  if (ends.every((pieces) => pieces.length === 0))
    return refuse(
      "nothing-to-ride",
      `Some way to ${name} was expected, but the horse stands as near before it as it is to come. Leave the step out, or say where to.`,
    );
  const ways = ends.filter((pieces) => pieces.length > 0).map((pieces) => upTo(pieces, start, ask.length ?? null));
  const heading = ask.heading ?? null;
  if (heading !== null) {
    const clash = headingClash(start, ways, name, heading, tolerance.heading);
    if (clash !== null) return clash;
  }
  const tried = ways.map((pieces): FigureResult => {
    const bend = pieces[0]?.is === "arc" ? pieces[0].sweep : 0;
    const line = Math.abs(bend) >= WORTH_A_WORD ? [bendNote(bend, `onto the line to ${name}`)] : [];
    return finish(manege, `the line to ${name}`, pieces, [
      ...notes,
      ...line,
      ...roomNote(start, pieces, place, name, ask),
    ]);
  });
  const first = tried.find((result) => result.ok) ?? tried[0];
  if (first === undefined) throw new Error("A place other than one's own can be reached round at least one side.");
  const wanted = ask.length ?? null;
  const most = Math.max(...whole.map(metresOf));
  if (
    first.ok &&
    wanted !== null &&
    lengthOf(first.path) < wanted - tolerance.distance &&
    most < wanted - tolerance.distance
  )
    return refuse(
      "contradiction",
      `The line was to be ${inWords(wanted)} m long and to go to ${name}, but ${name} is only ${inWords(most)} m away. Keep one of the two.`,
    );
  return first;
}

/** How much longer than the shortest a way with a wide bend may be. */
const MOST_ABOUT = 1.5;

/** Metres that stay free before the head of a horse that comes up to a wall: a guess. */
const HEAD_ROOM = 0.4;
/** A line that comes to the wall aslant ends at most so many metres before its place. */
const MOST_SHORT = 2 * (USUAL_BODY.ahead + HEAD_ROOM);

/** How far before its place a line ends: as it is said, and before a place in the wall at least so far that the horse's
 *  head stays inside. Negative past it. */
function shortOf({ ground, usual }: Manege, pieces: readonly Piece[], on: number | null): number {
  const last = pieces.at(-1);
  if (last?.is !== "straight") return 0;
  const said = on === null ? 0 : -on;
  if (said < 0 || distanceToWall(ground, last.to) >= USUAL_BODY.ahead + HEAD_ROOM - usual.tolerance.distance)
    return said;
  // Where the track runs along the wall itself, the wall is the line that is ridden, and its letters are on it.
  if (ground.trackOffset === 0) return said;
  // From the middle of the line, since it may set out in a gate; one that runs along the wall is not kept from it.
  const half = last.length / 2;
  const middle = beside({ ...last.from, heading: last.heading }, half);
  if (distanceToWall(ground, middle) < HEAD_ROOM) return said;
  const allowed = half + reachToWall(ground, middle, last.heading, HEAD_ROOM) - USUAL_BODY.ahead;
  return Math.max(said, Math.min(MOST_SHORT, last.length - allowed));
}

/** The pieces with their last line so much shorter, or longer. */
function shortened(pieces: readonly Piece[], by: number): Piece[] {
  const last = pieces.at(-1);
  if (by === 0 || last?.is !== "straight") return [...pieces];
  const length = last.length - by;
  // A bend onto the line is ridden all the same: it is short, and the line is what it is for.
  if (length < LEAST_LINE) return pieces.slice(0, -1);
  return [...pieces.slice(0, -1), straight(last.from, beside({ ...last.from, heading: last.heading }, length))];
}

/** Metres: a line shorter than this is none. */
const LEAST_LINE = 0.001;

function metresOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { length }) => sum + length, 0);
}

function roomNote(start: Pose, pieces: readonly Piece[], place: Point, name: string, ask: StraightAsk): FigureNote[] {
  const said = ask.on ?? null;
  if ((ask.length ?? null) !== null || (said !== null && said > 0)) return [];
  const before = distance(after(start, pieces), place);
  if (before <= Math.max(0.01, -(said ?? 0) + 0.01)) return [];
  const sentence = `The line to ${name} ends ${inWords(before)} m before it: ${name} lies in the wall, and the horse’s head stays inside.`;
  return [supplied("on", sentence)];
}

/** The pieces cut to a length. */
function upTo(pieces: readonly Piece[], start: Pose, length: number | null): Piece[] {
  if (length === null) return [...pieces];
  const kept: Piece[] = [];
  let left = length;
  let at = start;
  for (const piece of pieces) {
    if (left < 1e-9) break;
    const part = Math.min(1, left / piece.length);
    if (part === 1) kept.push(piece);
    else if (piece.is === "straight")
      kept.push({ ...piece, to: beside({ ...piece.from, heading: piece.heading }, left), length: left });
    else if (piece.is === "arc") kept.push(arcFrom(at, piece.radius, piece.sweep * part));
    left -= piece.length * part;
    at = after(start, kept);
  }
  return kept;
}

function headingClash(
  start: Pose,
  ways: Piece[][],
  name: string,
  heading: number,
  within: number,
): FigureRefusal | null {
  const arrives = after(start, ways[0] ?? []).heading;
  const apart = Number.isFinite(heading) ? turnBetween(headingOf(heading), arrives) : Number.NaN;
  if (Math.abs(apart) <= within) return null;
  return refuse(
    "contradiction",
    `The line was to go to ${name} and to head ${inWords(heading / 100)} degrees, but the way to ${name} heads ${inWords(arrives / 100)} degrees. Keep one of the two.`,
  );
}

function bendNote(sweep: number, onto: string): FigureNote {
  const side = sweep > 0 ? "left" : "right";
  return suppliedLine(
    0,
    1,
    `The text does not say how the horse comes ${onto}: a bend of ${inWords(Math.abs(sweep) / 100)} degrees to the ${side} is supplied.`,
  );
}

function alongHeading(manege: Manege, start: Pose, ask: StraightAsk): FigureResult {
  const { tolerance, leastRadius, margin } = manege.usual;
  const heading = ask.heading ?? start.heading;
  if (!Number.isFinite(heading))
    return refuse(
      "contradiction",
      `A heading in hundredths of a degree was expected, but it is ${heading}. Give a number from 0 to 36000.`,
    );
  const notes: FigureNote[] = [];
  const turn = turnBetween(start.heading, headingOf(heading));
  const bend: Piece[] = Math.abs(turn) > tolerance.heading ? [arcFrom(start, leastRadius, turn)] : [];
  const from = bend.length > 0 ? after(start, bend) : { ...start, heading: headingOf(heading) };
  if (Math.abs(turn) >= WORTH_A_WORD) notes.push(bendNote(turn, "onto its new line"));
  const inset = Math.max(margin, manege.ground.trackOffset);
  const length = ask.length ?? reachToWall(manege.ground, from, from.heading, inset);
  if ((ask.length ?? null) === null) {
    if (length <= tolerance.distance)
      return refuse(
        "nothing-to-ride",
        "Some way ahead was expected, but the horse already stands at the track and heads for the wall. Turn it first, or say how far and where to.",
      );
    notes.push(
      supplied("length", `The text does not say how far; the line goes on to the track, ${inWords(length)} m.`),
    );
  }
  return finish(
    manege,
    `the ${ask.figure === "charge" ? "charge" : "line"} of ${inWords(length)} m`,
    [...bend, straight(from, beside(from, length))],
    notes,
  );
}
