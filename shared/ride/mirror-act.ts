/** shared/ride/mirror-act.ts - an act, a hold and a timing with left and right changed over.
 *  May import: schema types and constants, types of shared/hands. Keeps rules R10-R12 (shared/ride/RULES.md). Twice is the
 *  same again. Near is left and off is right, so they change over too; inside, outside and the names of hands stay. */
import { VERBS } from "../../schema/act.ts";
import { HOLD_SLOTS } from "../../schema/riding.ts";
import type { Known } from "../../schema/slot.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import type { HoldSlots, KnownHold } from "../hands/apply-hold.ts";
import type { KnownAct } from "../hands/known-act.ts";

/** The station that answers to a station on the other rein; itself where there is none. */
export type PartnerOf = (station: string) => string;

const SIDES = {
  left: "right",
  right: "left",
  near: "off",
  off: "near",
  "left hand": "right hand",
  "right hand": "left hand",
  "left arm": "right arm",
  "right arm": "left arm",
  "over the neck to the left": "over the neck to the right",
  "over the neck to the right": "over the neck to the left",
  "point over to the left": "point over to the right",
  "point over to the right": "point over to the left",
  clockwise: "counter-clockwise",
  "counter-clockwise": "clockwise",
} as const;

/** A word for a side as its opposite; any other word as it is. */
export function swapped<T extends string>(word: T): T {
  return (Object.hasOwn(SIDES, word) ? SIDES[word as keyof typeof SIDES] : word) as T;
}

/** Hour h to 12 - h: 12 and 6 stay. */
export function mirrorHour(hour: number): number {
  return hour === 12 ? 12 : 12 - hour;
}

type Mirrors = { [K in ValueKind]?: (value: ValueOf<K>, partnerOf: PartnerOf) => ValueOf<K> };

/** Kinds that are not here have no side. A spin in the fore-and-aft plane keeps its sense. */
const MIRRORS: Mirrors = {
  hand: swapped,
  side: (side) => ({ ...side, to: swapped(side.to) }),
  turn: (turn) => ({ ...turn, to: swapped(turn.to) }),
  facing: swapped,
  lead: swapped,
  reinZone: swapped,
  reinsOn: swapped,
  part: swapped,
  bearing: (bearing, partnerOf) => {
    if (bearing.is === "clock") return { ...bearing, hour: mirrorHour(bearing.hour) };
    return bearing.station === undefined ? bearing : { ...bearing, station: partnerOf(bearing.station) };
  },
  contact: (contact) => (contact.side === undefined ? contact : { ...contact, side: swapped(contact.side) }),
  spin: (spin) => ({ ...spin, sense: swapped(spin.sense) }) as typeof spin,
  place: (place, partnerOf) => (place.is === "station" ? { ...place, station: partnerOf(place.station) } : place),
};

export function mirrorValue<K extends ValueKind>(kind: K, value: ValueOf<K>, partnerOf: PartnerOf): ValueOf<K> {
  const mirror = MIRRORS[kind] as ((value: ValueOf<K>, partnerOf: PartnerOf) => ValueOf<K>) | undefined;
  return mirror === undefined ? value : mirror(value, partnerOf);
}

/** What is known, each value changed; the order of several possible ones is kept, so that twice is the same again. */
export function mirrorKnown<T>(known: Known<T>, change: (value: T) => T): Known<T> {
  switch (known.is) {
    case "known":
      return { is: "known", value: change(known.value) };
    case "one of":
      return { is: "one of", values: known.values.map(change) };
    case "unknown":
      return known;
  }
}

export function mirrorAct(act: KnownAct, partnerOf: PartnerOf): KnownAct {
  return { verb: act.verb, slots: mirrorSlots(act.slots, VERBS[act.verb].slots, partnerOf) };
}

/** The main hand is given where the hold is used; its bearing, edge and contacts have sides of their own. */
export function mirrorHold(hold: KnownHold, partnerOf: PartnerOf): KnownHold {
  const slots = mirrorSlots(hold.slots as Record<string, Known<unknown>>, HOLD_SLOTS, partnerOf);
  return { hands: hold.hands, slots: slots as HoldSlots };
}

function mirrorSlots(
  slots: Readonly<Record<string, Known<unknown>>>,
  kinds: Readonly<Record<string, ValueKind>>,
  partnerOf: PartnerOf,
): Record<string, Known<unknown>> {
  return Object.fromEntries(
    Object.entries(slots).map(([slot, known]) => {
      const kind = kinds[slot];
      if (kind === undefined) return [slot, known];
      return [slot, mirrorKnown(known, (value) => mirrorValue(kind, value as never, partnerOf))];
    }),
  );
}
