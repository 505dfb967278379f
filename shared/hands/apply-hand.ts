/** shared/hands/apply-hand.ts - what acts of the hands do: taking, letting go, passing, sliding, reins, rest, gesture.
 *  May import: schema types, siblings in shared/hands. Hands and object are settled before these are called (apply.ts);
 *  each is total and consults no rule: a breach is found afterwards, and the ride goes on. */
import type { Known } from "../../schema/slot.ts";
import { otherHand } from "./derived.ts";
import { either, exactly, isKnown, known, mapKnown, mayBe, oneOf, possible, UNKNOWN } from "./known.ts";
import { type KnownAct, slotOf } from "./known-act.ts";
import { handsMeant, type RoleContext } from "./roles.ts";
import {
  type ControlState,
  type Doing,
  HANDS,
  type Hand,
  IN_HAND,
  type ObjectState,
  type Palm,
  REIN_PLACES,
  type ReinPlace,
  type ReinZone,
  withObject,
  type Zone,
  zonesOf,
} from "./state.ts";

const FREE: Known<Doing> = known({ is: "nothing besides" });

/** The hand grips the object: at the zone said, else somewhere. */
export function gripped(
  state: ControlState,
  held: ObjectState,
  hands: readonly Hand[],
  zone: Known<Zone> | null,
  palm: Known<Palm> | null,
): ControlState {
  const at = zoneOn(held, zone);
  const turned: Known<Palm | null> = palm ?? UNKNOWN;
  const changed = withObject(state, held.object.id, {
    grip: withHands(held.grip, hands, at),
    palm: withHands(held.palm, hands, turned),
  });
  const doing = (hand: Hand) => (hands.includes(hand) ? doingOnceGripped(state, held, hand) : state.doing[hand]);
  return { ...changed, doing: { left: doing("left"), right: doing("right") } };
}

/** A hand that takes hold leaves off what it did; one that held already goes on with it. */
function doingOnceGripped(state: ControlState, held: ObjectState, hand: Hand): Known<Doing> {
  if (isKnown<Zone | null>(held.grip[hand], null)) return FREE;
  return mayBe<Zone | null>(held.grip[hand], null) ? either(state.doing[hand], FREE) : state.doing[hand];
}

/** The zone said, as far as this object has it; else any it has (a spear has no hilt, whatever was typed). */
function zoneOn(held: ObjectState, zone: Known<Zone> | null): Known<Zone | null> {
  const zones = zonesOf(held.object);
  const said = zone === null ? [] : possible(zone, []).filter((at) => zones.includes(at));
  return oneOf<Zone | null>(said.length === 0 ? zones : said);
}

export function withHands<T>(
  both: Readonly<Record<Hand, Known<T>>>,
  hands: readonly Hand[],
  value: Known<T>,
): Readonly<Record<Hand, Known<T>>> {
  return {
    left: hands.includes("left") ? value : both.left,
    right: hands.includes("right") ? value : both.right,
  };
}

export function applyTake(state: ControlState, act: KnownAct, hands: readonly Hand[], held: ObjectState): ControlState {
  const changed = gripped(state, held, hands, slotOf(act, "zone", "zone"), slotOf(act, "palm", "palm"));
  // A hand on a planted spear does not pull it out; what is taken from somewhere is carried from here on.
  return slotOf(act, "from", "place") === null
    ? changed
    : withObject(changed, held.object.id, { frame: known("carried") });
}

export function applyRelease(state: ControlState, hands: readonly Hand[], held: ObjectState): ControlState {
  return withObject(state, held.object.id, { grip: withHands(held.grip, hands, known<Zone | null>(null)) });
}

/** To keep tells what stands already: a zone that is said is learnt, and so is that the hand holds at all. */
export function applyKeep(state: ControlState, act: KnownAct, hands: readonly Hand[], held: ObjectState): ControlState {
  const zone = slotOf(act, "zone", "zone");
  let grip = held.grip;
  for (const hand of hands) {
    const at = zone !== null && zone.is !== "unknown" ? zoneOn(held, zone) : whereItGrips(held, hand);
    grip = withHands(grip, [hand], at);
  }
  return withObject(state, held.object.id, { grip });
}

/** The hand moves along what it holds: to the zone said, else somewhere; the palm stays as it lies. */
export function applySlide(
  state: ControlState,
  act: KnownAct,
  hands: readonly Hand[],
  held: ObjectState,
): ControlState {
  const zone = slotOf(act, "zone", "zone");
  const at = zoneOn(held, zone);
  return withObject(state, held.object.id, { grip: withHands(held.grip, hands, at) });
}

/** The zones at which the hand may grip, given that it does. */
export function whereItGrips(held: ObjectState, hand: Hand): Known<Zone | null> {
  const zones = possible<Zone | null>(held.grip[hand], zonesOf(held.object)).filter((zone) => zone !== null);
  return oneOf<Zone | null>(zones.length === 0 ? zonesOf(held.object) : zones);
}

/** The giving hand lets go as the taking one has hold. A hand that is not said is the other one. */
export function applyPass(state: ControlState, act: KnownAct, context: RoleContext, held: ObjectState): ControlState[] {
  const role = (slot: string) => {
    const named = slotOf(act, slot, "hand");
    return named === null || named.is === "unknown" ? null : handsMeant(named, state, context);
  };
  const [from, to] = [role("from"), role("to")];
  const giving = from ?? to?.map((hands) => hands.map(otherHand)) ?? givers(held);
  return giving.flatMap((givingHands) =>
    (to ?? [givingHands.map(otherHand)]).map((takingHands) => {
      const passed = gripped(state, held, takingHands, slotOf(act, "zone", "zone"), null);
      const [now] = passed.objects.filter(({ object }) => object.id === held.object.id);
      const left = givingHands.filter((hand) => !takingHands.includes(hand));
      return now ? applyRelease(passed, left, now) : passed;
    }),
  );
}

/** The hands that may be giving: those that may hold. */
function givers(held: ObjectState): Hand[][] {
  const may = HANDS.filter((hand) => !isKnown<Zone | null>(held.grip[hand], null));
  const sure = may.filter((hand) => !mayBe<Zone | null>(held.grip[hand], null));
  const hands = sure.length > 0 ? sure : may.length > 0 ? may : HANDS;
  return hands.map((hand) => [hand]);
}

/** The reins go to the hand said, else from the one that has them to the other. */
export function applyChangeReins(state: ControlState, act: KnownAct, context: RoleContext): ControlState {
  const to = slotOf(act, "to", "hand");
  if (to === null) {
    const changed = possible(state.reins, REIN_PLACES).flatMap((place): ReinPlace[] => {
      if (place === "left hand") return ["right hand"];
      if (place === "right hand") return ["left hand"];
      return ["left hand", "right hand"];
    });
    return { ...state, reins: oneOf(changed) };
  }
  if (to.is === "unknown") return { ...state, reins: oneOf<ReinPlace>(["left hand", "right hand", "both hands"]) };
  return { ...state, reins: oneOf(handsMeant(to, state, context).map(placeIn)) };
}

export function placeIn(hands: readonly Hand[]): ReinPlace {
  if (hands.length === 2) return "both hands";
  return hands[0] === "right" ? "right hand" : "left hand";
}

/** One hand more takes the reins, and the one that has them keeps them. */
export function applyTakeReins(state: ControlState, hands: readonly Hand[]): ControlState {
  const reins = oneOf(
    possible(state.reins, REIN_PLACES).map((place) => {
      const before: Hand[] = place === "both hands" ? [...HANDS] : HANDS.filter((hand) => place === `${hand} hand`);
      return placeIn(HANDS.filter((hand) => hands.includes(hand) || before.includes(hand)));
    }),
  );
  return { ...state, reins, doing: withHands(state.doing, hands, FREE) };
}

const LAID: readonly ReinPlace[] = ["neck", "left arm", "right arm", "saddle"];

/** Reins that the last hand lets go of lie somewhere; the text has not said where. */
export function applyReleaseReins(state: ControlState, hands: readonly Hand[]): ControlState {
  const reins = oneOf(
    possible(state.reins, REIN_PLACES).flatMap((place): readonly ReinPlace[] => {
      const before = place === "both hands" ? HANDS : HANDS.filter((hand) => place === `${hand} hand`);
      const left = before.filter((hand) => !hands.includes(hand));
      if (before.length === 0) return [place];
      return left.length === 0 ? LAID : [placeIn(left)];
    }),
  );
  return { ...state, reins };
}

/** To keep the reins in a hand tells that they are there. */
export function applyKeepReins(state: ControlState, hands: readonly Hand[]): ControlState {
  const agreeing = possible(state.reins, REIN_PLACES).filter(
    (place) => place === "both hands" || hands.every((hand) => place === `${hand} hand`),
  );
  return { ...state, reins: agreeing.length === 0 ? known(placeIn(hands)) : oneOf(agreeing) };
}

export function applyLayReins(state: ControlState, act: KnownAct): ControlState {
  const on = slotOf(act, "on", "reinsOn");
  return {
    ...state,
    reins: on === null || on.is === "unknown" ? oneOf(LAID) : mapKnown(on, (place): ReinPlace => place),
  };
}

/** Where there is a rein hand to place, a hand has the reins: that much is learnt. */
export function applyPlaceReinHand(before: ControlState, act: KnownAct): ControlState {
  const having = possible(before.reins, REIN_PLACES).filter((place) => IN_HAND.includes(place));
  const state = { ...before, reins: oneOf(having.length === 0 ? IN_HAND : having) };
  const zone = slotOf(act, "zone", "reinZone");
  if (zone === null || zone.is === "unknown") return { ...state, reinZone: UNKNOWN };
  const zones = possible(zone, []);
  return {
    ...state,
    reinZone: zones.includes("any") ? UNKNOWN : oneOf<ReinZone | null>(zones.filter((at) => at !== "any")),
  };
}

export function applyRest(state: ControlState, act: KnownAct, hands: readonly Hand[]): ControlState {
  const on = slotOf(act, "on", "contact");
  const doing: Known<Doing> =
    on === null || on.is === "unknown"
      ? known({ is: "rests", on: null })
      : mapKnown(on, (contact): Doing => ({ is: "rests", on: contact }));
  return { ...state, doing: withHands(state.doing, hands, doing) };
}

export function applyGesture(state: ControlState, act: KnownAct, hands: readonly Hand[]): ControlState {
  const place = slotOf(act, "toward", "place");
  const value = place === null ? null : exactly(place);
  const toward = value === null ? null : value.is === "words" ? value.words : value.station;
  return { ...state, doing: withHands(state.doing, hands, known<Doing>({ is: "gestures", toward })) };
}
