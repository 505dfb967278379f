/** shared/ride/one-stage.ts - one stage of a ride from where the horse is: its path first, then what the hands do on it.
 *  May import: shared/hands, siblings in shared/ride. Keeps rules R5, R13-R27 (shared/ride/RULES.md). */
import { afterUntreated, type ControlState } from "../hands/state.ts";
import type { Course, Setting } from "./course.ts";
import { joinedOf } from "./cut-draft.ts";
import { follow } from "./follow.ts";
import { layOut, type StageSpan } from "./lay-out.ts";
import type { PlannedStage } from "./planned.ts";
import type { RiddenStage } from "./ridden.ts";
import { rideStage, type StagePath } from "./ride-stage.ts";

/** Adds the stage to the course. `index` is its place in the ride, `before` the control state it begins in. */
export function rideOneStage(
  setting: Setting,
  course: Course,
  plan: PlannedStage,
  index: number,
  before: ControlState,
): RiddenStage {
  const [first, from] = [course.drafted.length, course.seconds];
  const path = rideStage(setting, course, plan, index, before);
  return stageOn(course, plan, { path, first, from }, before);
}

/** The stage on a path that is laid already: `first` is the first of its pieces in the course, `from` its seconds. */
export function stageOn(
  course: Course,
  plan: PlannedStage,
  { path, first, from }: { path: StagePath; first: number; from: number },
  before: ControlState,
): RiddenStage {
  const { drafted, events } = path;
  const span: StageSpan = { first, drafted, events, from, to: course.seconds };
  const untreated = plan.is === "untreated";
  const followed = untreated
    ? { instants: [], after: afterUntreated(before) }
    : follow(plan, layOut(plan.acts, course, span), before, course, span);
  return {
    element: plan.element,
    source: plan.source,
    round: plan.round,
    mirrored: plan.mirrored,
    number: plan.number,
    title: plan.title,
    is: plan.is,
    from,
    to: course.seconds,
    pieces: { from: first, to: course.drafted.length },
    joined: joinedOf(drafted),
    refusal: plan.refusal ?? path.refused[0]?.sentence ?? null,
    refused: path.refused,
    notes: [...new Set([...plan.notes, ...path.notes, ...(untreated ? [UNTREATED] : [])])],
    withoutPartner: plan.withoutPartner,
    before,
    instants: followed.instants,
    after: followed.after,
  };
}

const UNTREATED =
  "A part is not written out yet: where the horse is after it is not known, and it goes on from where it was.";
