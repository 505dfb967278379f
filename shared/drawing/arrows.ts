/** shared/drawing/arrows.ts - where the line shows which way it is ridden.
 *  May import: shared/ground, types of shared/ride. Keeps rules W7-W8 (shared/drawing/RULES.md). Metres, seconds. */
import { distance, type Point, type Pose } from "../ground/plane.ts";
import { poseAtTime, timeAtLength } from "../ground/timed-path.ts";
import type { Ridden } from "../ride/ridden.ts";

const MOST = 400;

export interface Arrow {
  seconds: number;
  pose: Pose;
  /** Hundredths of a degree, the way it is ridden: that of the pose, or against it where the horse goes back. */
  toward: number;
  stage: number;
}

export interface ArrowWishes {
  /** Metres between two arrows; a stage has at least one where it is longer than half of that. */
  apart: number;
  /** Metres that an arrow keeps from the others and from `places`, where there is room for it. */
  clear: number;
  places?: readonly Point[];
  /** Half-open; all of them when left out. */
  stages?: { from: number; to: number };
  /** Those that are there already, of another ride. */
  others?: readonly Arrow[];
}

/** Where an arrow is tried besides where it is wished, in shares of the distance between two. */
const ASIDE = [0, 0.12, -0.12, 0.22, -0.22, 0.32, -0.32, 0.42, -0.42] as const;

/** Arrows in the order they are ridden; none where there is one near already that points alike. */
export function arrowsOf(ride: Ridden, { apart, clear, places = [], stages, others = [] }: ArrowWishes): Arrow[] {
  const arrows: Arrow[] = [...others];
  const free = ({ pose }: Arrow) =>
    arrows.every((arrow) => distance(arrow.pose, pose) >= clear) && places.every((at) => distance(at, pose) >= clear);
  const { from: first, to: end } = stages ?? { from: 0, to: ride.stages.length };
  for (let stage = first; stage < end && arrows.length < MOST; stage += 1) {
    const { pieces } = ride.stages[stage] ?? { pieces: { from: 0, to: 0 } };
    const [from, to] = [ride.timed.path.lengths[pieces.from] ?? 0, ride.timed.path.lengths[pieces.to] ?? 0];
    const count = to - from < apart / 2 ? 0 : Math.max(1, Math.round((to - from) / apart));
    for (let index = 0; index < count && arrows.length < MOST; index += 1) {
      const wished = from + ((index + 0.5) * (to - from)) / count;
      const arrow = arrowAt(ride, wished, stage);
      if (arrows.some((other) => alike(other, arrow) && distance(other.pose, arrow.pose) < apart / 2)) continue;
      const aside = ASIDE.map((share) => wished + share * apart)
        .filter((metres) => metres > from && metres < to)
        .map((metres) => arrowAt(ride, metres, stage));
      arrows.push(aside.find(free) ?? arrow);
    }
  }
  return arrows.slice(others.length);
}

const alike = (one: Arrow, other: Arrow) => Math.cos(((one.toward - other.toward) * Math.PI) / 18_000) > 0;

function arrowAt(ride: Ridden, metres: number, stage: number): Arrow {
  const seconds = timeAtLength(ride.timed, metres);
  const pose = poseAtTime(ride.timed, seconds);
  return { seconds, pose, toward: pose.heading + (isBackAt(ride, seconds) ? 18_000 : 0), stage };
}

function isBackAt({ timed }: Ridden, seconds: number): boolean {
  const index = timed.times.findIndex((end) => end > seconds) - 1;
  const piece = timed.path.pieces[index];
  return piece !== undefined && "back" in piece && piece.back;
}
