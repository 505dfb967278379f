/** shared/ride/moments.ts - a ride at one moment: pose, stage, state, and where the shaft lies on the ground.
 *  May import: shared/ground, shared/hands, types of siblings. Seconds from the start of the ride; before it, its start, and
 *  after it, its end. */
import { beside, type Point, type Pose } from "../ground/plane.ts";
import { poseAtTime } from "../ground/timed-path.ts";
import { shaftOf } from "../hands/figure.ts";
import type { ControlState } from "../hands/state.ts";
import type { Ridden } from "./ridden.ts";

export function poseAt({ timed }: Ridden, seconds: number): Pose {
  return poseAtTime(timed, seconds);
}

/** Index of the last stage that has begun; -1 when there is none. */
export function stageAt({ stages }: Ridden, seconds: number): number {
  let [low, high] = [0, stages.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((stages[middle]?.from ?? 0) <= seconds) low = middle;
    else high = middle - 1;
  }
  return stages.length === 0 ? -1 : low;
}

/** The state after the acts done up to and at this moment; null when there is no stage. */
export function stateAt(ridden: Ridden, seconds: number): ControlState | null {
  const stage = ridden.stages[stageAt(ridden, seconds)];
  if (stage === undefined) return null;
  const last = stage.instants.findLast((instant) => instant.seconds <= seconds);
  return last?.after ?? stage.before;
}

/** Both ends of the shaft in the ground frame; null when where it is held or where it points is not known. */
export function shaftAt(ridden: Ridden, seconds: number): { butt: Point; point: Point } | null {
  const state = stateAt(ridden, seconds);
  const shaft = state === null ? null : shaftOf(state);
  if (!shaft || shaft.planted === "yes") return null;
  const pose = poseAt(ridden, seconds);
  const place = ({ x, y }: Point): Point => beside(pose, y, -x);
  return { butt: place(shaft.butt), point: place(shaft.point) };
}
