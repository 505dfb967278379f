/** shared/ground/figures/figure.ts - what every figure takes and gives: the ground and the usual values in, a path with
 *  its notes or a refusal with its words out; and the checks all figures share.
 *  May import: siblings in shared/ground. Keeps rules G31-G36 (shared/ground/RULES.md). */
import { clearanceOf } from "../fit.ts";
import { distanceToWall, findStation, type RidingGround } from "../grounds.ts";
import { type Path, pathOf } from "../path.ts";
import { type Piece, poseOn } from "../piece.ts";
import { directionOf, type Point, type Pose, type Side } from "../plane.ts";
import { type GroundStation, placeOfStation } from "../stations.ts";
import type { Usual } from "../usual.ts";

/** Where one rides, and by which usual values. */
export type Manege = { readonly ground: RidingGround; readonly usual: Usual };

/** Something to show beside the path: a value or a line that was supplied, or a remark. `about` is the parameter's name,
 *  or "join" for a supplied line; then `pieces` counts the pieces of it from `from`. */
export type FigureNote =
  | { readonly is: "supplied"; readonly about: string; readonly sentence: string }
  | {
      readonly is: "supplied line";
      readonly about: "join";
      readonly from: number;
      readonly pieces: number;
      readonly sentence: string;
    }
  | { readonly is: "remark"; readonly about: string; readonly sentence: string };

export type FigureCode =
  | "not-a-pose"
  | "outside"
  | "not-a-size"
  | "not-a-count"
  | "unknown-station"
  | "contradiction"
  | "nothing-to-ride"
  | "cannot-reach"
  | "does-not-fit";

export type FigureRefusal = {
  readonly ok: false;
  readonly code: FigureCode;
  readonly sentence: string;
  /** The line as it would be, for "does-not-fit"; null for the rest. */
  readonly path: Path | null;
};
export type FigureResult =
  | { readonly ok: true; readonly path: Path; readonly notes: readonly FigureNote[] }
  | FigureRefusal;

export function refuse(code: FigureCode, sentence: string): FigureRefusal {
  return { ok: false, code, sentence, path: null };
}

/** A number as it is said: no more than two digits after the point, none when they are nought. */
export function inWords(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(2))) : String(value);
}

/** A place as it is said. */
export function placeWords(place: Point): string {
  return `x ${inWords(place.x)}, y ${inWords(place.y)}`;
}

/** The sizes (metres) and counts anything here is computed for, ends included: below a millimetre two places are one. */
const SMALLEST = 0.001;
const LARGEST = 100_000;
const LEAST = 0.001;
const MOST = 10_000;

/** Null when `value` is a length in metres. `what` is "the diameter of the circle". */
export function checkSize(what: string, value: number, example: number): FigureRefusal | null {
  if (value >= SMALLEST && value <= LARGEST) return null;
  const came = Number.isNaN(value) ? "not a number (NaN)" : `${value} m`;
  return refuse(
    "not-a-size",
    `A size from ${SMALLEST} to ${LARGEST} m was expected for ${what}, but it is ${came}. Give it in metres, such as ${example}.`,
  );
}

/** Null when `value` is a number of times; `whole` asks for a whole one. */
export function checkCount(what: string, value: number, whole: boolean): FigureRefusal | null {
  if (value >= LEAST && value <= MOST && (!whole || Number.isInteger(value))) return null;
  const kind = whole ? "A whole number" : "A number";
  const came = Number.isNaN(value) ? "not a number (NaN)" : String(value);
  return refuse(
    "not-a-count",
    `${kind} from ${whole ? 1 : LEAST} to ${MOST} was expected for ${what}, but it is ${came}. Say how often, or leave it out.`,
  );
}

/** The first refusal of several checks; null when all pass. */
export function firstRefusal(...checks: (FigureRefusal | null)[]): FigureRefusal | null {
  return checks.find((check) => check !== null) ?? null;
}

/** A station by name or id, or the refusal that says which there are. */
export function stationNamed(manege: Manege, name: string): GroundStation | FigureRefusal {
  const found = findStation(manege.ground, name);
  if (found !== null) return found;
  const names = manege.ground.stations.map((station) => station.name);
  const known = names.length === 0 ? "it has no stations yet" : `it has ${names.join(", ")}`;
  return refuse(
    "unknown-station",
    `A station of this ground was expected, but it has none called “${name}”: ${known}. Name one of these, or put “${name}” on the ground.`,
  );
}

/** Where a named station is for one who stands at `from`. */
export function placeNamed(manege: Manege, name: string, from: Point): Point | FigureRefusal {
  const station = stationNamed(manege, name);
  return "code" in station ? station : placeOfStation(station, from);
}

/** Null when the pose is one, and on the ground. */
export function checkStart(manege: Manege, start: Pose): FigureRefusal | null {
  if (![start.x, start.y, start.heading].every((value) => Number.isFinite(value)))
    return refuse(
      "not-a-pose",
      `A place in metres and a heading in hundredths of a degree were expected to begin from, but they are ${start.x}, ${start.y} and ${start.heading}. Say where the figure begins.`,
    );
  const wall = distanceToWall(manege.ground, start);
  if (wall >= -manege.usual.tolerance.distance) return null;
  return refuse(
    "outside",
    `A place on the ground was expected to begin from, but ${placeWords(start)} is ${inWords(-wall)} m past the wall. Begin inside, or make the ground larger.`,
  );
}

/** The side the middle of the ground lies on: the rein one is on. On a line through the middle, the left. */
export function reinOf(pose: Pose): Side {
  const way = directionOf(pose.heading);
  // Left of the heading is (-y, x); the middle is at minus the place.
  return pose.x * way.y - pose.y * way.x >= -1e-9 ? "left" : "right";
}

/** The side asked for, or the one supplied with its note. `what` begins the sentence: "the circle". */
export function sideOrRein(side: Side | null | undefined, start: Pose, what: string, notes: FigureNote[]): Side {
  if (side !== null && side !== undefined) return side;
  const rein = reinOf(start);
  notes.push(
    supplied(
      "side",
      `The text does not say to which side ${what} goes; it is ridden to the ${rein}, the side of the middle.`,
    ),
  );
  return rein;
}

/** A value asked for, or the usual one with its note. */
export function valueOr(
  value: number | null | undefined,
  usual: number,
  about: string,
  what: string,
  unit: string,
  notes: FigureNote[],
): number {
  if (value !== null && value !== undefined) return value;
  notes.push(supplied(about, `The text does not say ${what}; ${inWords(usual)}${unit} is supplied.`));
  return usual;
}

export function supplied(about: string, sentence: string): FigureNote {
  return { is: "supplied", about, sentence };
}

export function suppliedLine(from: number, pieces: number, sentence: string): FigureNote {
  return { is: "supplied line", about: "join", from, pieces, sentence };
}

export function remark(about: string, sentence: string): FigureNote {
  return { is: "remark", about, sentence };
}

/** The figure of these pieces, or the refusal that says how far past the wall it would go. `what` begins the sentence:
 *  "the circle of 10 m". */
export function finish(
  manege: Manege,
  what: string,
  pieces: readonly Piece[],
  notes: readonly FigureNote[],
): FigureResult {
  if (pieces.length === 0)
    return refuse(
      "nothing-to-ride",
      `Some way to ride was expected, but ${what} ends where it begins. Leave it out, or say where to.`,
    );
  const { ground, usual } = manege;
  const path = pathOf(pieces, usual.tolerance);
  const clearance = clearanceOf(ground, path);
  if (clearance.metres >= usual.margin - usual.tolerance.distance) return { ok: true, path, notes };
  const size =
    ground.shape === "round"
      ? `${inWords(ground.width)} m across`
      : `${inWords(ground.width)} m by ${inWords(ground.length)} m`;
  const past =
    clearance.metres < -usual.tolerance.distance
      ? `goes ${inWords(-clearance.metres)} m past the wall`
      : `comes within ${inWords(Math.max(0, clearance.metres))} m of the wall`;
  const asked = usual.margin > 0 ? ` and ${inWords(usual.margin)} m are to stay free` : "";
  return {
    ok: false,
    code: "does-not-fit",
    sentence: `It does not fit: ${what} ${past} at ${placeWords(clearance.at)}; the ground is ${size}${asked}. Make it smaller, or begin it elsewhere.`,
    path,
  };
}

/** The pose after pieces that begin at `start`. */
export function after(start: Pose, pieces: readonly Piece[]): Pose {
  const last = pieces[pieces.length - 1];
  return last === undefined ? start : poseOn(last, 1);
}
