/** shared/ride/rules/holds-in-force.ts - which named hold each object is in, moment by moment.
 *  May import: schema types, types of shared/drill, shared/hands, types of shared/ride, siblings. A hold is in force until the object is taken to
 *  another, carried otherwise, given away or set down; keeping, sliding and letting go with one hand do not end it. */
import type { Verb } from "../../../schema/act.ts";
import type { CompiledAction } from "../../drill/compile-action.ts";
import { mainObject } from "../../hands/derived.ts";
import { exactly } from "../../hands/known.ts";
import { type KnownAct, slotOf } from "../../hands/known-act.ts";
import type { ControlState } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";
import { type CarriedIn, type HoldInForce, NOTHING_CARRIED_IN } from "./carried-in.ts";
import { type Moment, momentsIn } from "./moments.ts";

/** A moment with its acts, and the holds in force after it, by object. */
export interface HeldMoment extends Moment {
  acts: readonly RiddenAct[];
  holds: ReadonlyMap<string, HoldInForce>;
}

const ENDING: readonly Verb[] = [
  "carry",
  "raise",
  "lower",
  "pass",
  "plant",
  "pick up",
  "throw off",
  "draw",
  "sheathe",
  "cross the neck",
  "spin",
  "hook",
];

export function heldMoments(ridden: Ridden, context: RideContext): HeldMoment[] {
  let { holds } = context.carriedIn ?? NOTHING_CARRIED_IN;
  return ridden.stages.flatMap((stage, index) => {
    // What is not written out may have done anything.
    if (stage.is === "untreated") holds = new Map();
    return momentsIn(stage, index).map((moment) => {
      const acts = moment.actions.flatMap((id) => context.act(index, id) ?? []);
      for (const act of acts) holds = holdsAfter(holds, act, index, moment.before);
      return { ...moment, acts, holds };
    });
  });
}

/** The holds in force before the first step: those the instructions begin with. `begins`: the state they lead to. */
export function holdsAtFirst(opening: readonly CompiledAction[], begins: ControlState): CarriedIn["holds"] {
  return opening.reduce<CarriedIn["holds"]>(
    (holds, { known, drill }) => holdsAfter(holds, { id: drill.id, known, idle: false }, 0, begins),
    new Map(),
  );
}

/** The object an act names, else the weapon the sheet is about; null where it is not settled which. */
export function objectOf(act: KnownAct, state: ControlState): string | null {
  const named = slotOf(act, "object", "object");
  return named === null ? (mainObject(state)?.object.id ?? null) : exactly(named);
}

function holdsAfter(
  holds: ReadonlyMap<string, HoldInForce>,
  { id, known, idle }: Pick<RiddenAct, "id" | "known" | "idle">,
  stage: number,
  state: ControlState,
): ReadonlyMap<string, HoldInForce> {
  const taken = known.verb === "hold";
  if (idle) return holds;
  if (!taken && !ENDING.includes(known.verb)) return holds;
  const object = objectOf(known, state);
  if (object === null) return new Map();
  const after = new Map(holds);
  after.delete(object);
  const named = taken ? slotOf(known, "hold", "hold") : null;
  const hold = named === null ? null : exactly(named);
  if (hold !== null) after.set(object, { hold, object, stage, action: id });
  return after;
}

/** The last moment up to and with `at` in which something came to be so; null when it was so from the start. */
export function sinceMoment<M extends Moment>(
  moments: readonly M[],
  at: number,
  isSo: (state: ControlState) => boolean,
): M | null {
  for (let index = at; index >= 0; index -= 1) {
    const moment = moments[index];
    if (moment !== undefined && isSo(moment.state) && !isSo(moment.before)) return moment;
  }
  return null;
}
