/** shared/ground/figures/circle.ts - circle, part circle and volte: from where the horse is, or about a place.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G42-G43 (shared/ground/RULES.md). */
import { distanceToWall } from "../grounds.ts";
import { type Path, pathOf } from "../path.ts";
import { arcAbout, type Piece } from "../piece.ts";
import {
  bearing,
  beside,
  directionOf,
  distance,
  FULL_TURN,
  type Point,
  type Pose,
  QUARTER_TURN,
  type Side,
  signOf,
  turned,
} from "../plane.ts";
import { poseRound } from "../track.ts";
import {
  checkCount,
  checkSize,
  checkStart,
  type FigureNote,
  type FigureRefusal,
  type FigureResult,
  finish,
  firstRefusal,
  inWords,
  type Manege,
  placeNamed,
  refuse,
  remark,
  sideOrRein,
  supplied,
  suppliedLine,
  valueOr,
} from "./figure.ts";
import { joinWords, ontoClosed, staysInside } from "./onto.ts";

export type Amount = "quarter" | "half" | "three quarters" | "full";

/** How far each amount turns, in hundredths of a degree. */
export const AMOUNTS: Readonly<Record<Amount, number>> = Object.freeze({
  quarter: QUARTER_TURN,
  half: 2 * QUARTER_TURN,
  "three quarters": 3 * QUARTER_TURN,
  full: FULL_TURN,
});

/** `diameter` in metres. With `about`, the centre is that station, and a supplied line leads onto the circle. `laps` may
 *  be a fraction; `amount` says the same in words, so only one of them is given. */
export type CircleAsk = {
  readonly figure: "circle" | "part circle" | "volte";
  readonly diameter?: number | null;
  readonly side?: Side | null;
  readonly about?: string | null;
  readonly laps?: number | null;
  readonly amount?: Amount | null;
};

export function rideCircle(manege: Manege, start: Pose, ask: CircleAsk): FigureResult {
  const what = `the ${ask.figure}`;
  const notes: FigureNote[] = [];
  const laps = ask.laps ?? null;
  const diameter = ask.diameter ?? null;
  const wrong = firstRefusal(
    checkStart(manege, start),
    diameter === null ? null : checkSize(`the diameter of ${what}`, diameter, 10),
    laps === null ? null : checkCount(`the laps of ${what}`, laps, false),
  );
  if (wrong !== null) return wrong;
  const sweep = sweepOf(ask, notes);
  if (typeof sweep !== "number") return sweep;
  const about = ask.about ?? null;
  if (about === null) return fromHere(manege, start, ask, sweep, notes);
  const centre = placeNamed(manege, about, start);
  return "code" in centre ? centre : aboutPlace(manege, start, { ...ask, about }, centre, sweep, notes);
}

/** How far round, in hundredths of a degree, above 0. */
function sweepOf(ask: CircleAsk, notes: FigureNote[]): number | FigureRefusal {
  const laps = ask.laps ?? null;
  const amount = ask.amount ?? null;
  if (laps !== null && amount !== null && laps * FULL_TURN !== AMOUNTS[amount])
    return refuse(
      "contradiction",
      `One amount was expected for the ${ask.figure}, but both ${inWords(laps)} laps and “${amount}” are given. Keep one of the two.`,
    );
  if (amount !== null) return AMOUNTS[amount];
  if (laps !== null) return laps * FULL_TURN;
  if (ask.figure !== "part circle") return FULL_TURN;
  notes.push(supplied("amount", "The text does not say how much of the circle; half is supplied."));
  return AMOUNTS.half;
}

function usualDiameter(manege: Manege, ask: CircleAsk): number {
  if (ask.figure === "volte") return manege.usual.volteDiameter;
  const { width, length, trackOffset } = manege.ground;
  return Math.min(manege.usual.circleDiameter, Math.min(width, length) - 2 * trackOffset);
}

/** FEI Dressage Rules Art. 410.1: a volte is 6, 8 or 10 m across; more than 10 m is a circle. */
function remarkOnSize(ask: CircleAsk, diameter: number, notes: FigureNote[]): void {
  if (ask.figure === "volte" && diameter > 10)
    notes.push(
      remark(
        "diameter",
        `A volte is 6, 8 or 10 m across; one of ${inWords(diameter)} m is a circle (FEI Dressage Rules Art. 410.1).`,
      ),
    );
}

/** One arc a lap, so that each can be pointed at; all about one centre, so that many laps do not drift. */
function lapPieces(from: Pose, centre: Point, radius: number, sweep: number): Piece[] {
  const whole = Math.floor(Math.abs(sweep) / FULL_TURN);
  const rest = Math.abs(sweep) - whole * FULL_TURN;
  const round = (hundredths: number): Piece => arcAbout(centre, radius, from.heading, Math.sign(sweep) * hundredths);
  const pieces = Array.from({ length: whole }, () => round(FULL_TURN));
  // Less than a ten-thousandth of a degree is the rounding of a fraction such as a third.
  return rest < 0.01 ? pieces : [...pieces, round(rest)];
}

function fromHere(manege: Manege, start: Pose, ask: CircleAsk, sweep: number, notes: FigureNote[]): FigureResult {
  const side = sideOrRein(ask.side, start, `the ${ask.figure}`, notes);
  const diameter = valueOr(ask.diameter, usualDiameter(manege, ask), "diameter", "how large it is", " m across", notes);
  remarkOnSize(ask, diameter, notes);
  const what = `the ${ask.figure} of ${inWords(diameter)} m to the ${side}`;
  return finish(
    manege,
    what,
    lapPieces(start, beside(start, 0, (signOf(side) * diameter) / 2), diameter / 2, signOf(side) * sweep),
    notes,
  );
}

function aboutPlace(
  manege: Manege,
  start: Pose,
  ask: CircleAsk & { about: string },
  centre: Point,
  sweep: number,
  notes: FigureNote[],
): FigureResult {
  const { tolerance } = manege.usual;
  const away = distance(start, centre);
  const diameter = ask.diameter ?? diameterAbout(manege, ask, centre, away);
  if ((ask.diameter ?? null) === null)
    notes.push(
      supplied(
        "diameter",
        `The text does not say how large it is; ${inWords(diameter)} m across is supplied, about ${ask.about}.`,
      ),
    );
  remarkOnSize(ask, diameter, notes);
  const side = ask.side ?? sideOfPlace(start, centre);
  if ((ask.side ?? null) === null)
    notes.push(
      supplied(
        "side",
        `The text does not say to which side the ${ask.figure} goes; it is ridden to the ${side}, where ${ask.about} lies.`,
      ),
    );
  const round = closedCircle(centre, diameter / 2, start, side, tolerance);
  const what = `the ${ask.figure} of ${inWords(diameter)} m about ${ask.about}`;
  // No use looking for a way onto a circle that is not on the ground: finish says how far it goes past the wall.
  if (!staysInside(manege, round.pieces)) return finish(manege, what, round.pieces, notes);
  const onto = ontoClosed(manege, start, round, `onto the ${ask.figure} about ${ask.about}`);
  if ("code" in onto) return onto;
  if (onto.pieces.length > 0)
    notes.push(suppliedLine(0, onto.pieces.length, joinWords(`the ${ask.figure} about ${ask.about}`, onto.pieces)));
  // Onto the circle itself, not from the rounded place beside it, so that its centre is the station's to the last digit.
  const begins = poseRound(round, onto.along);
  const pieces = lapPieces(begins, centre, diameter / 2, signOf(side) * sweep);
  return finish(manege, what, [...onto.pieces, ...pieces], notes);
}

/** Through where the horse is, unless that is too near or past what the ground has round the place. */
function diameterAbout(manege: Manege, ask: CircleAsk, centre: Point, away: number): number {
  const inset = Math.max(manege.ground.trackOffset, manege.usual.margin);
  const room = distanceToWall(manege.ground, centre) - inset;
  if (away <= manege.usual.leastRadius) return Math.min(usualDiameter(manege, ask), Math.max(2 * room, 1));
  return 2 * (room > manege.usual.leastRadius ? Math.min(away, room) : away);
}

/** The side of a pose a place lies on; the left when it is straight ahead or behind. */
function sideOfPlace(pose: Pose, place: Point): Side {
  const way = directionOf(pose.heading);
  return way.x * (place.y - pose.y) - way.y * (place.x - pose.x) >= -1e-9 ? "left" : "right";
}

/** The whole circle, beginning beside `from`, so that a horse that is on it already begins there. */
function closedCircle(
  centre: Point,
  radius: number,
  from: Point,
  side: Side,
  tolerance: Manege["usual"]["tolerance"],
): Path {
  const outward = distance(centre, from) <= tolerance.distance ? 0 : bearing(centre, from);
  const heading = turned(outward, signOf(side) * QUARTER_TURN);
  return pathOf([arcAbout(centre, radius, heading, signOf(side) * FULL_TURN)], tolerance);
}
