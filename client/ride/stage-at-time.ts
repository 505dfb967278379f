/** client/ride/stage-at-time.ts - which stage a moment lies in.
 *  May import: types of shared. */
import type { RiddenStage } from "../../shared/ride/ridden.ts";

/** Index of the stage at a moment: the last that has begun; 0 before the first. Of stages that begin together it is the
 *  last, so one that takes no time of its own is shown only where it was stepped to. */
export function stageAtTime(stages: readonly RiddenStage[], seconds: number): number {
  let found = 0;
  for (const [index, stage] of stages.entries()) {
    if (stage.from > seconds) break;
    found = index;
  }
  return found;
}
