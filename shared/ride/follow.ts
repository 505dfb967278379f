/** shared/ride/follow.ts - the control state through a stage: instants with the acts done at each, and the state after.
 *  May import: shared/drill, shared/hands, siblings in shared/ride. Keeps rules R25, R27 (shared/ride/RULES.md). */
import { contextOf } from "../drill/follow-hands.ts";
import { pieceHolding } from "../ground/path.ts";
import { type ActContext, actingHands, applyAct, type HandsBefore } from "../hands/apply.ts";
import { UNKNOWN } from "../hands/known.ts";
import { type ControlState, eitherState } from "../hands/state.ts";
import type { Course } from "./course.ts";
import type { Laid, StageSpan } from "./lay-out.ts";
import { mirrorAct, mirrorHold } from "./mirror-act.ts";
import type { PlannedStage } from "./planned.ts";
import type { Instant } from "./ridden.ts";

const stays = (station: string): string => station;

/** Holds and movements as they are used in a stage: mirrored where it is. */
export function contextIn({ compiling, mirrored }: PlannedStage): ActContext {
  const context = contextOf(compiling);
  if (!mirrored) return context;
  return {
    hold: (id) => {
      const hold = context.hold(id);
      return hold === null ? null : mirrorHold(hold, stays);
    },
    movement: (id) => context.movement(id)?.map((act) => mirrorAct(act, stays)) ?? null,
    isReins: context.isReins,
  };
}

export function follow(
  plan: PlannedStage,
  laid: readonly Laid[],
  before: ControlState,
  course: Course,
  span: StageSpan,
): { instants: Instant[]; after: ControlState } {
  const mirrored = contextIn(plan);
  const plain = plan.mirrored ? contextOf(plan.compiling) : mirrored;
  let [state, hands]: [ControlState, HandsBefore] = [before, UNKNOWN];
  const instants = batches(laid).map((batch): Instant => {
    for (const { act } of batch) {
      const acting = actingHands(state, act.known, hands);
      const after = applyAct(state, act.known, act.mirrored ? mirrored : plain, hands);
      state = act.drill.onlyUnder.length > 0 ? eitherState(state, after) : after;
      if (acting !== null) hands = acting;
    }
    const [first] = batch as [Laid, ...Laid[]];
    return {
      seconds: first.seconds,
      piece: pieceAt(course, span, first.seconds),
      timed: first.timed,
      actions: batch.map(({ act }) => act.id),
      after: state,
    };
  });
  return { instants, after: state };
}

/** Acts of one moment of the text are one batch, in which hands take hold before others let go. */
function batches(laid: readonly Laid[]): Laid[][] {
  const all: Laid[][] = [];
  for (const one of laid) {
    const last = all.at(-1);
    const together =
      one.together !== null && last?.some((held) => held.together === one.together && held.seconds === one.seconds);
    if (last && together) last.push(one);
    else all.push([one]);
  }
  return all.map((batch) => [0, 1, 2].flatMap((turn) => batch.filter(({ act }) => turnOf(act.known.verb) === turn)));
}

const GAINS: ReadonlySet<string> = new Set(["take", "pick up", "draw", "hold", "keep"]);
const LOSSES: ReadonlySet<string> = new Set(["release", "lay reins", "plant", "sheathe", "unhook"]);

function turnOf(verb: string): number {
  return GAINS.has(verb) ? 0 : LOSSES.has(verb) ? 2 : 1;
}

/** Null while the horse stands. At the very end of a piece it is still that piece, as a fraction of the way is. */
function pieceAt(course: Course, { first, drafted }: StageSpan, seconds: number): number | null {
  if (drafted.length === 0) return null;
  const index = pieceHolding(course.times.slice(first, first + drafted.length + 1), seconds);
  return drafted[index]?.piece.is === "halt" ? null : first + index;
}
