/** schema/act.ts - what one part does: the verbs of riding and handling, each with its slots.
 *  May import: zod, siblings. The one table below makes the types, the forms and the sentences; a verb that is
 *  missing is written as *other* with its words, so nothing the text states is lost. */
import { z } from "zod";
import { type SlotsOf, type SlotTable, slotsOf } from "./slot.ts";

/** Who acts: the columns of a sheet. Which hand, and which object, are slots, since the text may leave them open. */
export const PARTS = ["horse", "hand", "object", "rider"] as const;
export type Part = (typeof PARTS)[number];

const onObject = { object: "object" } as const;
const withHand = { hand: "hand", object: "object" } as const;
/** What the other slots cannot hold: "with the thumb and first two fingers", "as short as possible". */
const how = { how: "words" } as const;

/** Slots are listed in the order they are asked for and said. The angle of an object is with the horizontal, point up
 *  positive; the part that `other` belongs to is in its slot `who`. */
export const VERBS = {
  ride: {
    part: "horse",
    slots: {
      figure: "figure",
      turn: "turn",
      amount: "amount",
      manner: "manner",
      size: "length",
      about: "place",
      from: "place",
      toward: "place",
      laps: "count",
      ...how,
    },
  },
  "go at": { part: "horse", slots: { gait: "gait", pace: "pace", lead: "lead", ...how } },
  take: { part: "hand", slots: { ...withHand, zone: "zone", palm: "palm", from: "place", ...how } },
  release: { part: "hand", slots: { ...withHand, ...how } },
  keep: { part: "hand", slots: { ...withHand, zone: "zone", ...how } },
  pass: { part: "hand", slots: { ...onObject, from: "hand", to: "hand", zone: "zone", across: "place", ...how } },
  slide: { part: "hand", slots: { ...withHand, zone: "zone", ...how } },
  "change reins": { part: "hand", slots: { to: "hand", ...how } },
  "place rein hand": { part: "hand", slots: { hand: "hand", zone: "reinZone", ...how } },
  "lay reins": { part: "hand", slots: { on: "reinsOn", ...how } },
  rest: { part: "hand", slots: { hand: "hand", on: "contact", palm: "facing", ...how } },
  gesture: { part: "hand", slots: { hand: "hand", toward: "place", how: "words" } },
  hold: { part: "object", slots: { ...onObject, hold: "hold", hand: "hand", ...how } },
  carry: {
    part: "object",
    slots: {
      ...withHand,
      bearing: "bearing",
      level: "level",
      angle: "angle",
      edge: "facing",
      contact: "contact",
      height: "words",
      ...how,
    },
  },
  spin: { part: "object", slots: { ...onObject, spin: "spin", times: "count", ...how } },
  "cross the neck": { part: "object", slots: { ...onObject, to: "side", ...how } },
  raise: { part: "object", slots: { ...withHand, level: "level", bearing: "bearing", height: "words", ...how } },
  lower: { part: "object", slots: { ...withHand, level: "level", bearing: "bearing", height: "words", ...how } },
  plant: { part: "object", slots: { ...onObject, at: "place", end: "zone", ...how } },
  "pick up": { part: "object", slots: { ...withHand, at: "place", ...how } },
  draw: { part: "object", slots: { ...withHand, from: "object", distance: "length", ...how } },
  sheathe: { part: "object", slots: { ...withHand, into: "object", ...how } },
  hook: { part: "object", slots: { ...withHand, to: "words", ...how } },
  unhook: { part: "object", slots: { ...withHand, from: "words", ...how } },
  thrust: { part: "object", slots: { ...withHand, bearing: "bearing", level: "level", ...how } },
  parry: { part: "object", slots: { ...withHand, bearing: "bearing", to: "side", ...how } },
  "throw off": { part: "object", slots: { ...onObject, bearing: "bearing", ...how } },
  show: { part: "object", slots: { ...onObject, toward: "place", ...how } },
  perform: { part: "object", slots: { movement: "movement", hand: "hand", ...onObject, times: "count" } },
  sit: { part: "rider", slots: { how: "words" } },
  look: { part: "rider", slots: { toward: "place" } },
  wait: { part: "rider", slots: { until: "words", ...how } },
  "do nothing": { part: "hand", slots: { hand: "hand" } },
  other: { part: "rider", slots: { who: "part", ...onObject, words: "words" } },
} as const satisfies Record<string, { part: Part; slots: SlotTable }>;

export type Verb = keyof typeof VERBS;
export const VERB_NAMES = Object.keys(VERBS) as Verb[];

export type ActOf<V extends Verb> = { verb: V; slots: SlotsOf<(typeof VERBS)[V]["slots"]> };
export type Act = { [V in Verb]: ActOf<V> }[Verb];

/** One act, its slots checked against its verb. */
export const Act = z.discriminatedUnion(
  "verb",
  VERB_NAMES.map((verb) => z.strictObject({ verb: z.literal(verb), slots: slotsOf(VERBS[verb].slots) })) as unknown as [
    z.ZodObject<{ verb: z.ZodLiteral<string> }>,
  ],
) as unknown as z.ZodType<Act>;
