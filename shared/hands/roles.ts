/** shared/hands/roles.ts - hands and sides named by a role, told by the control state.
 *  May import: schema types, siblings in shared/hands. Near is left, off is right; inside is the side the horse turns to. */
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { handsOn, mainObject, otherHand, reinHands } from "./derived.ts";
import { known, mapKnown, oneOf, possible, UNKNOWN } from "./known.ts";
import { type ControlState, HANDS, type Hand } from "./state.ts";

/** What a role is said in: the object of the act, and the hand that acted before in the same step. */
export interface RoleContext {
  object: string | null;
  before: Known<readonly Hand[]>;
}

/** Every set of hands a role can mean where nothing is known. One hand, since "both" says so. */
export const ONE_HAND: readonly (readonly Hand[])[] = [["left"], ["right"]];

/** The hands a role means. A role nobody fills (the rein hand while the reins lie on the neck) is unknown. */
export function handsOfRole(
  role: ValueOf<"hand">,
  state: ControlState,
  { object, before }: RoleContext,
): Known<readonly Hand[]> {
  switch (role) {
    case "left":
    case "right":
      return known([role]);
    case "both":
      return known(HANDS);
    case "near":
    case "off":
      return known([role === "near" ? "left" : "right"]);
    case "inside":
    case "outside":
      return mapKnown(sideOfBend(role, state), (hand) => [hand]);
    case "rein hand":
      return filled(reinHands(state));
    case "shaft hand":
      return filled(shaftHands(state, object));
    case "the other":
      return theOther(before.is === "unknown" ? filled(reinHands(state)) : before);
  }
}

const ANY_HANDS: readonly (readonly Hand[])[] = [...ONE_HAND, HANDS];

/** Every set of hands that a slot can mean; `silent` where the text says nothing. A role that cannot be told may be
 *  either hand, and reins and shaft may be in both. */
export function handsMeant(
  role: Known<ValueOf<"hand">> | null,
  state: ControlState,
  context: RoleContext,
  silent: readonly (readonly Hand[])[] = ONE_HAND,
): readonly (readonly Hand[])[] {
  if (role === null || role.is === "unknown") return silent;
  return possible(role, []).flatMap((value) => {
    const several = value === "rein hand" || value === "shaft hand";
    return possible(handsOfRole(value, state, context), several ? ANY_HANDS : ONE_HAND);
  });
}

/** The side of the rider a word for a side means. */
export function sideOf(to: ValueOf<"side">["to"], state: ControlState): Known<Hand> {
  switch (to) {
    case "left":
    case "right":
      return known(to);
    case "near":
    case "off":
      return known(to === "near" ? "left" : "right");
    case "inside":
    case "outside":
      return sideOfBend(to, state);
  }
}

function sideOfBend(side: "inside" | "outside", { rein }: ControlState): Known<Hand> {
  return side === "inside" ? rein : mapKnown(rein, otherHand);
}

function shaftHands(state: ControlState, object: string | null): Known<readonly Hand[]> {
  const named = state.objects.find((held) => held.object.id === object);
  const shaft = named?.object.is === "shaft" || named?.object.is === "blade" ? named : mainObject(state);
  return shaft ? handsOn(shaft) : UNKNOWN;
}

/** Without the cases where no hand fills the role. */
function filled(hands: Known<readonly Hand[]>): Known<readonly Hand[]> {
  const some = possible(hands, []).filter((held) => held.length > 0);
  return some.length === 0 ? UNKNOWN : oneOf(some);
}

/** The other of one hand; of both hands there is no other. */
function theOther(hands: Known<readonly Hand[]>): Known<readonly Hand[]> {
  const others = possible(hands, []).flatMap((held) =>
    held.length === 1 ? held.map((hand) => [otherHand(hand)]) : [],
  );
  return others.length === 0 ? UNKNOWN : oneOf(others);
}
