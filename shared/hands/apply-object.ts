/** shared/hands/apply-object.ts - what acts with something carried do to where it points, how high, and what bears it.
 *  May import: schema types, siblings in shared/hands. Hands and object are settled before these are called (apply.ts);
 *  each is total and consults no rule. */
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { gripped, whereItGrips, withHands } from "./apply-hand.ts";
import { bearingOnSide } from "./derived.ts";
import { either, exactly, isKnown, known, mapKnown, mayBe, oneOf, possible, UNKNOWN } from "./known.ts";
import { type KnownAct, slotOf } from "./known-act.ts";
import { sideOf } from "./roles.ts";
import {
  type Bearing,
  type Contact,
  type ControlState,
  type Hand,
  type Level,
  type ObjectState,
  withObject,
} from "./state.ts";

const LEVELS: readonly Level[] = ["ground", "low", "middle", "high"];
const NO_CONTACT: Known<readonly Contact[]> = known([]);

/** Where the act says a hand holds, the hand is learnt to hold. */
function learnHands(state: ControlState, held: ObjectState, hands: readonly Hand[] | null): ControlState {
  if (hands === null) return state;
  let grip = held.grip;
  for (const hand of hands) grip = withHands(grip, [hand], whereItGrips(held, hand));
  return withObject(state, held.object.id, { grip });
}

/** How it is carried from here on; what is not said stays as it is. */
export function applyCarry(
  state: ControlState,
  act: KnownAct,
  hands: readonly Hand[] | null,
  held: ObjectState,
): ControlState {
  const contact = slotOf(act, "contact", "contact");
  return withObject(learnHands(state, held, hands), held.object.id, {
    bearing: slotOf(act, "bearing", "bearing") ?? held.bearing,
    level: slotOf(act, "level", "level") ?? held.level,
    edge: slotOf(act, "edge", "facing") ?? held.edge,
    contacts: contact === null ? held.contacts : mapKnown(contact, (one): readonly Contact[] => [one]),
    frame: known("carried"),
  });
}

/** Up from where it was, or down: a level that is said, else any that lies that way. It leaves what bore it. */
export function applyRaiseOrLower(
  state: ControlState,
  act: KnownAct,
  hands: readonly Hand[] | null,
  held: ObjectState,
): ControlState {
  return withObject(learnHands(state, held, hands), held.object.id, {
    bearing: slotOf(act, "bearing", "bearing") ?? held.bearing,
    level: slotOf(act, "level", "level") ?? levelToward(held.level, act.verb === "raise"),
    contacts: UNKNOWN,
    frame: known("carried"),
  });
}

function levelToward(level: Known<Level>, up: boolean): Known<Level> {
  const there = possible(level, LEVELS).flatMap((from) => {
    const at = LEVELS.indexOf(from);
    const toward = up ? LEVELS.slice(at + 1) : LEVELS.slice(0, at);
    return toward.length === 0 ? [from] : toward;
  });
  return oneOf(there);
}

/** A whole number of turns brings the point back; half a turn to the opposite within its plane; else it is unknown. */
export function applySpin(state: ControlState, act: KnownAct, held: ObjectState): ControlState {
  const [spin, times] = [slotOf(act, "spin", "spin"), slotOf(act, "times", "count")];
  const turns = times?.is === "known" && times.value.is === "times" ? times.value.n : null;
  const plane = spin?.is === "known" ? spin.value.plane : null;
  const bearing = turns === null ? UNKNOWN : spunBearing(held.bearing, turns, plane);
  return withObject(state, held.object.id, { bearing, contacts: UNKNOWN });
}

function spunBearing(bearing: Known<Bearing>, turns: number, plane: ValueOf<"spin">["plane"] | null): Known<Bearing> {
  if (turns % 1 === 0) return bearing;
  if (turns % 1 !== 0.5 || plane === null || possible(bearing, []).some(({ is }) => is !== "clock")) return UNKNOWN;
  const opposite = {
    level: (hour: number) => hour + 6,
    across: (hour: number) => 12 - hour,
    "fore and aft": (hour: number) => 6 - hour,
  };
  return mapKnown(bearing, (value) => (value.is === "clock" ? clock(opposite[plane](value.hour)) : value));
}

function clock(hour: number): Bearing {
  return { is: "clock", hour: ((((hour - 1) % 12) + 12) % 12) + 1 };
}

/** The point goes to the other side of the horse: mirrored where its hour is known, else somewhere on the side said. */
export function applyCross(state: ControlState, act: KnownAct, held: ObjectState): ControlState {
  const to = slotOf(act, "to", "side");
  const sides =
    to === null || to.is === "unknown"
      ? null
      : possible(to, [])
          .map((side) => sideOf(side.to, state))
          .reduce(either);
  const bearing = sides === null ? mirrored(held.bearing) : onSide(held.bearing, sides);
  return withObject(state, held.object.id, { bearing, contacts: UNKNOWN });
}

function mirrored(bearing: Known<Bearing>): Known<Bearing> {
  if (possible(bearing, []).some(({ is }) => is !== "clock")) return UNKNOWN;
  return mapKnown(bearing, (value) => (value.is === "clock" ? clock(12 - value.hour) : value));
}

function onSide(bearing: Known<Bearing>, sides: Known<Hand>): Known<Bearing> {
  const side = exactly(sides);
  if (side === null) return UNKNOWN;
  const there = bearingOnSide(side);
  const crossed = possible(mirrored(bearing), []).filter((hour) => mayBe(there, hour));
  return crossed.length === 0 ? there : oneOf(crossed);
}

/** It stands in the world from here on: where it points, seen from the rider, changes as he rides. */
export function applyPlant(state: ControlState, held: ObjectState): ControlState {
  const contact: Contact = { with: "ground", degree: "bears" };
  return withObject(state, held.object.id, {
    frame: known("planted"),
    level: known("ground"),
    bearing: UNKNOWN,
    contacts: known([contact]),
  });
}

export function applyPickUp(state: ControlState, hands: readonly Hand[], held: ObjectState): ControlState {
  return withObject(gripped(state, held, hands, null, null), held.object.id, {
    frame: known("carried"),
    level: UNKNOWN,
    bearing: UNKNOWN,
    contacts: NO_CONTACT,
  });
}

const IN_SHEATH: Contact = { with: "sheath", degree: "bears" };

/** Drawn in part it is still in its sheath; drawn wholly, nothing but the hand bears it. */
export function applyDraw(state: ControlState, act: KnownAct, hands: readonly Hand[], held: ObjectState): ControlState {
  const inPart = slotOf(act, "distance", "length") !== null;
  return withObject(learnHands(state, held, hands), held.object.id, {
    contacts: inPart ? known([IN_SHEATH]) : NO_CONTACT,
    bearing: inPart ? held.bearing : UNKNOWN,
    level: inPart ? held.level : UNKNOWN,
    frame: known("carried"),
  });
}

export function applySheathe(state: ControlState, held: ObjectState): ControlState {
  return withObject(state, held.object.id, {
    contacts: known([IN_SHEATH]),
    bearing: UNKNOWN,
    level: UNKNOWN,
    frame: known("carried"),
  });
}

/** Hooked to something, that bears it; unhooked, what bears it is not said. */
export function applyHook(state: ControlState, act: KnownAct, held: ObjectState): ControlState {
  const to = slotOf(act, "to", "words");
  const words = to === null ? null : exactly(to);
  const contact: Contact = { with: "other", degree: "bears", ...(words === null ? {} : { words }) };
  return withObject(state, held.object.id, { contacts: act.verb === "hook" ? known([contact]) : UNKNOWN });
}

/** Thrust, parry and throwing off send the point somewhere; where they do not say, it is not known where it ends. */
export function applyStrike(
  state: ControlState,
  act: KnownAct,
  hands: readonly Hand[] | null,
  held: ObjectState,
): ControlState {
  const bearing = slotOf(act, "bearing", "bearing");
  const to = slotOf(act, "to", "side");
  const side = to === null ? null : exactly(to);
  const hand = side === null ? null : exactly(sideOf(side.to, state));
  return withObject(learnHands(state, held, hands), held.object.id, {
    bearing: bearing ?? (hand === null ? UNKNOWN : bearingOnSide(hand)),
    level: slotOf(act, "level", "level") ?? held.level,
    contacts: UNKNOWN,
    frame: isKnown(held.frame, "planted") ? known("carried") : held.frame,
  });
}
