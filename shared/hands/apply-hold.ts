/** shared/hands/apply-hold.ts - going to a named hold: the hold's own row tells hands, point, level and supports.
 *  May import: schema types, siblings in shared/hands. The main hand is given where the hold is used. */
import { HOLD_SLOTS, type Hold } from "../../schema/riding.ts";
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { gripped } from "./apply-hand.ts";
import { otherHand } from "./derived.ts";
import { known, mapKnown, oneOf, possible, UNKNOWN } from "./known.ts";
import {
  type Contact,
  type ControlState,
  HANDS,
  type Hand,
  type ObjectState,
  type ReinZone,
  withObject,
  type Zone,
} from "./state.ts";

/** What a hold's slots hold under the readings taken; a slot that is missing is one the hold is silent about. */
export type HoldSlots = { [slot in keyof typeof HOLD_SLOTS]?: Known<ValueOf<(typeof HOLD_SLOTS)[slot]>> };

export interface KnownHold {
  hands: Hold["hands"];
  slots: HoldSlots;
}

/** The hold by its own row; what a crux holds in it is unknown unless `valuesIn` tells what its readings give. */
export function knownHold(hold: Hold, valuesIn: (slot: string) => Known<unknown> | null = () => null): KnownHold {
  const slots: Record<string, Known<unknown>> = {};
  for (const name of Object.keys(HOLD_SLOTS) as (keyof typeof HOLD_SLOTS)[]) {
    const slot = hold.slots[name];
    if (slot?.is === "said") slots[name] = known<unknown>(slot.value);
    if (slot?.is === "in crux") slots[name] = valuesIn(name) ?? UNKNOWN;
  }
  return { hands: hold.hands, slots: slots as HoldSlots };
}

/** A hand that is no part of the hold is off the object; point, level and edge stay where the hold does not name them. */
export function applyHold(
  state: ControlState,
  { hands, slots }: KnownHold,
  main: Hand,
  held: ObjectState,
): ControlState {
  const second = otherHand(main);
  let next = gripped(state, held, [main], slots.zone ?? null, slots.palm ?? null);
  next =
    hands === "two"
      ? gripped(next, objectIn(next, held), [second], slots.secondZone ?? null, slots.secondPalm ?? null)
      : withObject(next, held.object.id, {
          grip: { ...objectIn(next, held).grip, [second]: known<Zone | null>(null) },
        });
  const changed = withObject(next, held.object.id, {
    bearing: slots.bearing ?? held.bearing,
    level: slots.level ?? held.level,
    edge: slots.edge ?? held.edge,
    contacts: contactsOf(slots),
    frame: slots.frame ?? known("carried"),
  });
  return slots.reinZone === undefined ? changed : { ...changed, reinZone: reinZoneOf(slots.reinZone) };
}

function objectIn(state: ControlState, held: ObjectState): ObjectState {
  return state.objects.find(({ object }) => object.id === held.object.id) ?? held;
}

function contactsOf({ contact, secondContact }: HoldSlots): Known<readonly Contact[]> {
  if (contact === undefined && secondContact === undefined) return UNKNOWN;
  const first = contact === undefined ? known<readonly Contact[]>([]) : mapKnown(contact, (one) => [one]);
  const second = secondContact === undefined ? known<readonly Contact[]>([]) : mapKnown(secondContact, (one) => [one]);
  if (first.is === "unknown" || second.is === "unknown") return UNKNOWN;
  return oneOf(
    possible<readonly Contact[]>(first, []).flatMap((a) =>
      possible<readonly Contact[]>(second, []).map((b) => [...a, ...b]),
    ),
  );
}

function reinZoneOf(zone: Known<ValueOf<"reinZone">>): Known<ReinZone | null> {
  const zones = possible(zone, []);
  if (zones.length === 0 || zones.includes("any")) return UNKNOWN;
  return oneOf<ReinZone | null>(zones.filter((at) => at !== "any"));
}

/** What is known where even the hold is not: either hand, or both, somewhere on the object. */
export function applyUnknownHold(state: ControlState, main: Hand | null, held: ObjectState): ControlState {
  const grip = { left: UNKNOWN, right: UNKNOWN } as ObjectState["grip"];
  const next = withObject(state, held.object.id, {
    grip,
    bearing: UNKNOWN,
    level: UNKNOWN,
    edge: UNKNOWN,
    contacts: UNKNOWN,
    frame: UNKNOWN,
  });
  return main === null
    ? next
    : gripped(
        next,
        objectIn(next, held),
        HANDS.filter((hand) => hand === main),
        null,
        null,
      );
}
