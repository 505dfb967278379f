/** shared/ground/figures/wall.ts - along the wall on either rein, and the change across from wall to wall.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G39-G41 (shared/ground/RULES.md). */

import { shortestJoin } from "../join.ts";
import { lengthOf, type Path } from "../path.ts";
import type { Piece } from "../piece.ts";
import { type Point, type Pose, QUARTER_TURN, type Side, samePose, turnBetween } from "../plane.ts";
import { USUAL_BODY } from "../riders.ts";
import { type Foot, footOn, poseRound, roundFrom, trackOf } from "../track.ts";
import { joinRadii } from "../usual.ts";
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
  placeWords,
  refuse,
  reinOf,
  remark,
  supplied,
  suppliedLine,
} from "./figure.ts";
import { joinWords, ontoClosed, staysInside } from "./onto.ts";

/** On the track to the given rein, for a length, so many laps, or to a station at the wall; without any, one lap.
 *  Laps and a station go together: so many laps, and on to the station. `on`: so many metres past the station, or before
 *  it (negative); a horse that is there already, or less than its own length past that place, has nothing to ride. */
export type WallAsk = {
  readonly figure: "along the wall";
  readonly side?: Side | null;
  readonly length?: number | null;
  readonly laps?: number | null;
  readonly toward?: string | null;
  readonly on?: number | null;
};

/** From a station at the wall (or from where one is) across the middle to another (or to the one opposite through the
 *  middle of the ground), arriving on the other rein. */
export type AcrossAsk = {
  readonly figure: "change across";
  readonly from?: string | null;
  readonly toward?: string | null;
};

export function rideAlongWall(manege: Manege, start: Pose, ask: WallAsk): FigureResult {
  const { usual } = manege;
  const length = ask.length ?? null;
  const laps = ask.laps ?? null;
  const wrong = firstRefusal(
    checkStart(manege, start),
    length === null ? null : checkSize("the way along the wall", length, 20),
    laps === null ? null : checkCount("the laps along the wall", laps, false),
  );
  if (wrong !== null) return wrong;
  if (length !== null && (laps !== null || (ask.toward ?? null) !== null))
    return refuse(
      "contradiction",
      `Either ${inWords(length)} m along the wall or ${laps === null ? `to ${ask.toward}` : `${inWords(laps)} laps`} was expected, but both are given. Keep one of the two.`,
    );
  const rein = ask.side ?? reinOf(start);
  const notes: FigureNote[] = [];
  if ((ask.side ?? null) === null)
    notes.push(
      supplied(
        "side",
        `The text does not say on which rein; it is the ${rein} rein, with the middle of the ground on that side.`,
      ),
    );
  const track = trackOf(manege.ground, rein, usual.cornerDiameter, usual.tolerance);
  const onto = ontoClosed(manege, start, track, "onto the track");
  if ("code" in onto) return onto;
  if (onto.pieces.length > 0) notes.push(suppliedLine(0, onto.pieces.length, joinWords("the track", onto.pieces)));
  const ahead = howFar(manege, track, onto.along, ask, notes);
  if (typeof ahead !== "number") return ahead;
  if (ahead === 0)
    return refuse(
      "nothing-to-ride",
      `Some way along the wall was expected, but the horse is there already, or just past the place. Leave the step out, or say where to.`,
    );
  return finish(manege, "the way along the wall", [...onto.pieces, ...roundFrom(track, onto.along, ahead)], notes);
}

/** Metres: the length of a horse. */
const JUST_PAST = USUAL_BODY.ahead + USUAL_BODY.behind;

/** How far along the track, 0 for no way at all: the length, the laps, the station, or one lap. */
function howFar(manege: Manege, track: Path, along: number, ask: WallAsk, notes: FigureNote[]): number | FigureRefusal {
  const { usual } = manege;
  const whole = lengthOf(track);
  if ((ask.length ?? null) !== null) return ask.length as number;
  const laps = ask.laps ?? null;
  const toward = ask.toward ?? null;
  if (toward === null) {
    if (laps === null)
      notes.push(
        supplied("laps", `The text does not say how far along the wall; one lap of ${inWords(whole)} m is supplied.`),
      );
    return (laps ?? 1) * whole;
  }
  const foot = footOfStation(manege, track, toward, poseRound(track, along));
  if ("code" in foot) return foot;
  const on = ask.on ?? 0;
  const ahead = (((foot.along + on - along) % whole) + whole) % whole;
  if (on !== 0 && laps === null && (ahead < usual.tolerance.distance || whole - ahead < JUST_PAST)) return 0;
  // Standing at the station already means once round to it, unless laps say how often.
  const once = ahead <= manege.usual.tolerance.distance || whole - ahead <= manege.usual.tolerance.distance;
  if (once) return (laps ?? 1) * whole;
  return (laps ?? 0) * whole + ahead;
}

/** How far from the track a station may lie, besides the offset, and still be one at the wall: a corner cut off. */
const AT_THE_WALL = 1.5;

/** The place on the track beside a station at the wall. */
function footOfStation(manege: Manege, track: Path, name: string, from: Point): Foot | FigureRefusal {
  const place = placeNamed(manege, name, from);
  if ("code" in place) return place;
  const foot = footOn(track, place);
  if (foot.off <= manege.ground.trackOffset * Math.SQRT2 + AT_THE_WALL) return foot;
  return refuse(
    "contradiction",
    `A station at the wall was expected, but ${name} (${placeWords(place)}) is ${inWords(foot.off)} m from the track. Ride straight to it instead, or name a station at the wall.`,
  );
}

export function rideAcross(manege: Manege, start: Pose, ask: AcrossAsk): FigureResult {
  const wrong = checkStart(manege, start);
  if (wrong !== null) return wrong;
  const { usual, ground } = manege;
  const notes: FigureNote[] = [];
  const rein = reinOf(start);
  const track = trackOf(ground, rein, usual.cornerDiameter, usual.tolerance);
  const pieces: Piece[] = [];
  let here = start;
  const from = ask.from ?? null;
  if (from !== null) {
    const foot = footOfStation(manege, track, from, start);
    if ("code" in foot) return foot;
    if (!samePose(start, foot.pose, usual.tolerance)) {
      const [join = null] = joinRadii(usual).flatMap(
        (radius) => shortestJoin(start, foot.pose, radius, (way) => staysInside(manege, way.pieces)) ?? [],
      );
      if (join === null) return noWay(manege, start, from);
      pieces.push(...join.pieces);
      notes.push(suppliedLine(0, pieces.length, joinWords(from, join.pieces)));
      here = foot.pose;
    }
  }
  const toward = ask.toward ?? null;
  const other = trackOf(ground, rein === "left" ? "right" : "left", usual.cornerDiameter, usual.tolerance);
  const foot =
    toward === null ? footOn(other, { x: 0 - here.x, y: 0 - here.y }) : footOfStation(manege, other, toward, here);
  if ("code" in foot) return foot;
  if (toward === null)
    notes.push(
      supplied(
        "toward",
        `The text does not say where the change ends; it is the place opposite through the middle, ${placeWords(foot.pose)}.`,
      ),
    );
  const join = shortestJoin(here, foot.pose, usual.leastRadius, (way) => staysInside(manege, way.pieces));
  if (join === null) return noWay(manege, here, toward ?? placeWords(foot.pose));
  if (Math.abs(turnBetween(here.heading, foot.pose.heading)) > QUARTER_TURN)
    notes.push(
      remark(
        "toward",
        "This change turns the horse right round on its way, which a change across does not usually do.",
      ),
    );
  return finish(manege, "the change across", [...pieces, ...join.pieces], notes);
}

function noWay(manege: Manege, from: Point, to: string): FigureRefusal {
  return refuse(
    "cannot-reach",
    `A way from ${placeWords(from)} to ${to} was expected, but none stays on the ground with bends of at least ${inWords(manege.usual.leastRadius)} m radius. Name another station, or allow tighter bends.`,
  );
}
