/** schema/riding.ts - what is carried, how it is held, where it is ridden and against whom; the rules.
 *  May import: zod, siblings. Each is a studied thing: it can have words, pictures and cruxes of its own. */
import { z } from "zod";
import { Id, Name, Rank, Words } from "./id.ts";
import { Basis, type SlotTable, slotOf, slotsOf } from "./slot.ts";

export const OBJECT_KINDS = ["shaft", "blade", "shield", "sheath", "reins", "other"] as const;
export const OBJECT_SLOTS = { length: "length", mass: "mass", balanceFromButt: "length" } as const satisfies SlotTable;

/** Something carried. The first by rank is the shaft that sheets give a column of its own. */
export const CarriedObject = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  is: z.enum(OBJECT_KINDS),
  name: Name,
  slots: slotsOf(OBJECT_SLOTS),
  note: Words,
});
export type CarriedObject = z.infer<typeof CarriedObject>;

/** Sides are parameters: the main hand is given where the hold is used. */
export const HOLD_SLOTS = {
  zone: "zone",
  palm: "palm",
  secondZone: "zone",
  secondPalm: "palm",
  bearing: "bearing",
  level: "level",
  angle: "angle",
  edge: "facing",
  contact: "contact",
  secondContact: "contact",
  frame: "frame",
  reinZone: "reinZone",
} as const satisfies SlotTable;

export const Hold = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  name: Name,
  /** Which objects it is for. */
  for: z.array(z.enum(OBJECT_KINDS)),
  /** Whether a second hand is part of it. */
  hands: z.enum(["one", "two"]),
  /** A strong hold keeps two bearing supports. */
  strong: z.boolean(),
  slots: slotsOf(HOLD_SLOTS),
  note: Words,
});
export type Hold = z.infer<typeof Hold>;

/** A named sequence of actions (owned by it), with sides as parameters. */
export const Movement = z.strictObject({ id: Id, work: Id, rank: Rank, name: Name, note: Words });
export type Movement = z.infer<typeof Movement>;

export const GROUND_SLOTS = { length: "length", width: "length", trackOffset: "length" } as const satisfies SlotTable;
export const Ground = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  name: Name,
  is: z.enum(["rectangular", "round-ended", "round"]),
  slots: slotsOf(GROUND_SLOTS),
  note: Words,
});
export type Ground = z.infer<typeof Ground>;

export const Station = z.strictObject({
  id: Id,
  ground: Id,
  rank: Rank,
  name: Name,
  is: z.enum(["point", "line", "area"]),
  outline: slotOf("outline").optional(),
  /** The station that answers to it when ridden on the other rein. */
  partner: Id.nullable(),
  note: Words,
});
export type Station = z.infer<typeof Station>;

export const THREAT_SLOTS = {
  mount: "mount",
  bearing: "bearing",
  bend: "bend",
  weaponSide: "side",
} as const satisfies SlotTable;
/** An opponent assumed by a step. */
export const Threat = z.strictObject({ id: Id, work: Id, name: Name, slots: slotsOf(THREAT_SLOTS), note: Words });
export type Threat = z.infer<typeof Threat>;

export const Rule = z.strictObject({
  id: Id,
  work: Id,
  /** The code of a built-in rule whose severity is set here, or a code of the user's own. */
  code: z.string().min(1).max(80),
  sentence: Words.min(1),
  basis: z.enum(["published source", "common practice", "the text", "the user"]),
  support: z.array(Basis).max(40),
  severity: z.enum(["bars", "warns", "notes", "off"]),
  reach: z.enum(["instant", "piece", "place", "remembered", "kit", "whole"]),
});
export type Rule = z.infer<typeof Rule>;

/** A rule set aside at one element, with the reason; it prints. */
export const Waiver = z.strictObject({
  id: Id,
  rule: z.string().min(1).max(80),
  element: Id,
  reason: Words.min(1),
  basis: z.array(Basis).max(40),
});
export type Waiver = z.infer<typeof Waiver>;
