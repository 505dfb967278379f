/** shared/ride/places.ts - where a ride begins, and the pose at a station from which a figure sets out.
 *  May import: shared/ground, siblings in shared/ride. Keeps rules R17-R18 (shared/ride/RULES.md). Metres, hundredths of a degree. */
import type { Manege } from "../ground/figures/figure.ts";
import { reinOf } from "../ground/figures/figure.ts";
import { distanceToWall, isInside } from "../ground/grounds.ts";
import {
  bearing,
  directionOf,
  distance,
  type Point,
  type Pose,
  QUARTER_TURN,
  settled,
  turnBetween,
} from "../ground/plane.ts";
import { USUAL_BODY } from "../ground/riders.ts";
import { type GroundStation, isAtStation, placeOfStation } from "../ground/stations.ts";
import { footOn, trackOf } from "../ground/track.ts";
import type { RideAct } from "./figure-ask.ts";

/** Metres: a horse this near a station is there; at the wall the track lies between. */
const AT_STATION = 1.5;

/** The middle of the foot, at the track, looking up the ground. */
export function usualStart({ ground }: Manege): Pose {
  return settled({ x: 0, y: ground.trackOffset - ground.length / 2, heading: QUARTER_TURN });
}

/** Figures that touch the track where they begin at the wall: looking off it they would go through the wall. */
const ROUND: ReadonlySet<RideAct["figure"]> = new Set([
  "circle",
  "part circle",
  "volte",
  "half volte",
  "half volte reversed",
  "figure of eight",
  "oblong",
  "spiral in",
  "spiral out",
]);

export const touchesTrack = ({ figure, about }: RideAct): boolean => ROUND.has(figure) && about === null;

/** A place to begin, in words, where the text names none. */
export interface Beginning {
  pose: Pose;
  where: string;
}

/** The places tried for a figure that names none, in this order: at the foot, beside the middle, in the middle. */
export function beginnings(manege: Manege, ride: RideAct | null): Beginning[] {
  const foot = usualStart(manege);
  const middle = { x: 0, y: 0, heading: QUARTER_TURN };
  if (ride === null) return [{ pose: foot, where: AT_THE_FOOT }];
  const side = (ride.side === "right" ? -manege.ground.width : manege.ground.width) / 2;
  return [
    { pose: touchesTrack(ride) ? alongTrack(manege, foot, ride) : foot, where: AT_THE_FOOT },
    { pose: alongTrack(manege, { x: side, y: 0 }, ride), where: "the track beside the middle of the ground" },
    { pose: middle, where: "the middle of the ground" },
  ];
}

const AT_THE_FOOT = "the middle of the foot, at the track,";

/** Whether the text leaves to us where a figure lies and how large it is. */
export function placedByUs({ from, about, toward, size }: RideAct): boolean {
  return from === null && about === null && toward === null && size === null;
}

/** On the track beside a place, on the rein of the figure; else the left. */
function alongTrack({ ground, usual }: Manege, place: Point, { side }: RideAct): Pose {
  return settled(footOn(trackOf(ground, side ?? "left", usual.cornerDiameter, usual.tolerance), place).pose);
}

/** How a figure sets out from a station: toward where it goes, along the track, else into the ground. */
export function poseAtStation(manege: Manege, station: GroundStation, ride: RideAct, first: boolean): Pose {
  const { ground, usual } = manege;
  const middle = { x: 0, y: 0 };
  const named = placeOfStation(station, middle);
  const place = isInside(ground, named)
    ? named
    : footOn(trackOf(ground, "left", usual.cornerDiameter, usual.tolerance), named).pose;
  if ((ride.figure === "straight" || ride.figure === "charge") && ride.toward !== null) {
    const goal = placeOfStation(ride.toward, place);
    if (distance(goal, place) > usual.tolerance.distance) return settled({ ...place, heading: bearing(place, goal) });
  }
  if (touchesTrack(ride) && distanceToWall(ground, place) <= ground.trackOffset + AT_STATION)
    return alongTrack(manege, place, ride);
  // Who begins at a gate comes in by it; later on the horse is on the track already.
  if (ride.figure === "along the wall" && !first) {
    const rein = ride.side ?? reinOf({ ...place, heading: inward(manege, place) });
    return settled(footOn(trackOf(ground, rein, usual.cornerDiameter, usual.tolerance), place).pose);
  }
  return settled({ x: place.x, y: place.y, heading: inward(manege, place) });
}

const AXES = [0, 1, 2, 3].map((quarter) => quarter * QUARTER_TURN);
/** Metres tried to find the way off the wall. */
const TRIED = 0.01;

/** Straight off the wall beside the place; up the ground for a place that is not beside one. */
function inward({ ground }: Manege, place: Point): number {
  const wall = distanceToWall(ground, place);
  if (wall > ground.trackOffset + AT_STATION) return QUARTER_TURN;
  const off = AXES.find((heading) => {
    const way = directionOf(heading);
    const there = { x: place.x + way.x * TRIED, y: place.y + way.y * TRIED };
    return distanceToWall(ground, there) - wall > TRIED * 0.999;
  });
  if (off !== undefined) return off;
  return place.x === 0 && place.y === 0 ? QUARTER_TURN : bearing(place, { x: 0, y: 0 });
}

/** Metres within which one can be said to pass a station: half the width of a usual ground. A choice. */
export const BESIDE = 10;
/** Hundredths of a degree off square within which a station lies beside the horse. A choice. */
const ABEAM = 1_500;

/** Whether the horse is there, or has the station straight beside it, as on a circle that passes it. */
export function isBeside(manege: Manege, station: GroundStation, pose: Pose): boolean {
  if (isThere(manege, station, pose)) return true;
  const place = placeOfStation(station, pose);
  const metres = distance(place, pose);
  if (metres > BESIDE) return false;
  const off = Math.abs(turnBetween(pose.heading, bearing(pose, place)));
  return Math.abs(off - QUARTER_TURN) <= ABEAM;
}

/** Whether the horse is there already, near enough that no line need be supplied. */
export function isThere({ ground }: Manege, station: GroundStation, pose: Pose): boolean {
  const wall = distanceToWall(ground, placeOfStation(station, pose));
  const besideWall = wall <= ground.trackOffset + AT_STATION;
  // A line to a place in the wall ends a horse's head before it.
  const before = Math.max(ground.trackOffset * Math.SQRT2, USUAL_BODY.ahead);
  return isAtStation(station, pose, AT_STATION + (besideWall ? before : 0));
}
