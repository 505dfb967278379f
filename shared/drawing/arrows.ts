/** shared/drawing/arrows.ts - where the line shows which way it is ridden.
 *  May import: shared/ground, types of shared/ride. Keeps rules W7-W8 (shared/drawing/RULES.md). Metres, seconds. */
import { distance, type Pose } from "../ground/plane.ts";
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

/** Arrows along the metres from `from` to `to` of the path, about so far apart and at least one where a stage is longer
 *  than half of that; none where there is one already that points alike. */
export function arrowsOf(ride: Ridden, apart: number, stages = { from: 0, to: ride.stages.length }): Arrow[] {
  const arrows: Arrow[] = [];
  for (let stage = stages.from; stage < stages.to && arrows.length < MOST; stage += 1) {
    const { pieces } = ride.stages[stage] ?? { pieces: { from: 0, to: 0 } };
    const [from, to] = [ride.timed.path.lengths[pieces.from] ?? 0, ride.timed.path.lengths[pieces.to] ?? 0];
    const count = to - from < apart / 2 ? 0 : Math.max(1, Math.round((to - from) / apart));
    for (let index = 0; index < count && arrows.length < MOST; index += 1) {
      const seconds = timeAtLength(ride.timed, from + ((index + 0.5) * (to - from)) / count);
      const pose = poseAtTime(ride.timed, seconds);
      const toward = pose.heading + (isBackAt(ride, seconds) ? 18_000 : 0);
      const there = arrows.some(
        (arrow) => distance(arrow.pose, pose) < apart / 2 && Math.cos(((arrow.toward - toward) * Math.PI) / 18_000) > 0,
      );
      if (!there) arrows.push({ seconds, pose, toward, stage });
    }
  }
  return arrows;
}

function isBackAt({ timed }: Ridden, seconds: number): boolean {
  const index = timed.times.findIndex((end) => end > seconds) - 1;
  const piece = timed.path.pieces[index];
  return piece !== undefined && "back" in piece && piece.back;
}
