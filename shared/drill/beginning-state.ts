/** shared/drill/beginning-state.ts - the control state in which an exercise begins, as the standing instructions have it.
 *  May import: schema types, shared/hands, siblings in shared/drill. Keeps rule D10 (shared/drill/RULES.md). */
import { type ActContext, applyAct } from "../hands/apply.ts";
import { isKnown, known, mayBe, possible } from "../hands/known.ts";
import {
  type Carried,
  type ControlState,
  consistent,
  eitherState,
  HANDS,
  IN_HAND,
  type ObjectState,
  type ReinPlace,
  startState,
  type Zone,
} from "../hands/state.ts";
import type { CompiledAction } from "./compile-action.ts";
import type { Settlement } from "./settle.ts";

/** `opening`: as standing-instructions.ts gives it. What none of it tells is unknown. */
export function beginningState(
  objects: readonly Carried[],
  { way, reins }: Pick<Settlement, "way" | "reins">,
  opening: readonly CompiledAction[],
  context: ActContext,
): ControlState {
  let state = startState(objects, way, reins);
  for (const { known: act, drill } of opening) {
    // On foot there is no horse whose gait an instruction could tell.
    if (way === "on foot" && act.verb === "go at") continue;
    const after = inThatHandAlone(applyAct(state, act, context));
    state = drill.onlyUnder.length > 0 ? eitherState(state, after) : after;
  }
  return state;
}

/** Nothing came before an exercise: what it is told to begin with in one hand is in no other. */
function inThatHandAlone(state: ControlState): ControlState {
  return consistent({ ...state, objects: state.objects.map(alone), reins: reinsAlone(state) });
}

function alone(held: ObjectState): ObjectState {
  const surely = HANDS.filter((hand) => !mayBe<Zone | null>(held.grip[hand], null));
  if (surely.length !== 1) return held;
  const none = known<Zone | null>(null);
  const [left, right] = [held.grip.left, held.grip.right];
  const grip = surely[0] === "left" ? { left, right: none } : { left: none, right };
  return isKnown(held.grip.left, null) || isKnown(held.grip.right, null) ? held : { ...held, grip };
}

function reinsAlone({ reins }: ControlState): ControlState["reins"] {
  const places = possible<ReinPlace>(reins, []);
  const [one, another] = places.filter((place) => place !== "both hands");
  const inHands = places.length === 2 && places.every((place) => IN_HAND.includes(place));
  return inHands && one !== undefined && another === undefined ? known(one) : reins;
}
