/** schema/teaching.ts - lessons, faults, kit, trials, editions with their slips and reports, and sources.
 *  May import: zod, siblings. Their forms come later; what they must hold is fixed here. */
import { z } from "zod";
import { Day, Id, Name, Rank, Words } from "./id.ts";
import { type SlotTable, slotsOf } from "./slot.ts";

/** "Not like this": belongs to a step, a hold or a movement. */
export const Fault = z.strictObject({
  id: Id,
  work: Id,
  of: z.enum(["elements", "holds", "movements"]),
  target: Id,
  rank: Rank,
  fault: Words.min(1),
  correction: Words,
});
export type Fault = z.infer<typeof Fault>;

export const HORSE_SLOTS = {
  withers: "length",
  length: "length",
  walk: "length",
  canter: "length",
} as const satisfies SlotTable;
export const RIDER_SLOTS = {
  stature: "length",
  forearm: "length",
  sittingHeight: "length",
  reach: "length",
} as const satisfies SlotTable;

/** Who and what is there on the day: one horse, one rider, and the objects with their real sizes. */
export const Kit = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  name: Name,
  horse: z.strictObject({ name: Words, slots: slotsOf(HORSE_SLOTS) }),
  rider: z.strictObject({ name: Words, slots: slotsOf(RIDER_SLOTS) }),
  objects: z.array(z.strictObject({ object: Id, metres: z.number().positive() })).max(20),
  note: Words,
});
export type Kit = z.infer<typeof Kit>;

/** Which reading each crux was given: a choice frozen with a trial or an edition. */
export const Choice = z.array(z.strictObject({ crux: Id, reading: Id }));
export type Choice = z.infer<typeof Choice>;

/** One attempt and what happened. It is evidence and never changes a count. */
export const Trial = z.strictObject({
  id: Id,
  exercise: Id,
  on: Day,
  who: Words,
  way: z.enum(["mounted", "on foot"]),
  choice: Choice,
  variant: Id.nullable(),
  kit: Id.nullable(),
  edition: Id.nullable(),
  /** The drill as it was tried (schema/drill.ts). */
  drill: z.looseObject({}).nullable(),
  outcome: z.enum(["ridden", "in part", "not ridden"]),
  findings: z.array(z.strictObject({ element: Id.nullable(), text: Words.min(1) })).max(500),
  note: Words,
});
export type Trial = z.infer<typeof Trial>;

/** A frozen, numbered paper and whom it went to. */
export const Edition = z.strictObject({
  id: Id,
  work: Id,
  exercises: z.array(Id).min(1),
  number: z.int().min(1),
  title: Name,
  issued: Day,
  choice: Choice,
  variant: Id.nullable(),
  /** The print model as canonical JSON, and the issued papers by content hash. */
  model: z.looseObject({}),
  papers: z.array(z.strictObject({ name: Name, mediaType: z.string().max(200), attachment: z.string().max(100) })),
  /** The change the edition was made at. */
  at: z.int().min(0),
  recipients: z.array(z.strictObject({ who: Name, on: Day })),
});
export type Edition = z.infer<typeof Edition>;

export const Slip = z.strictObject({
  id: Id,
  from: Id,
  to: Id,
  on: Day,
  entries: z.array(z.strictObject({ element: Id.nullable(), shown: Words, was: Words, now: Words, why: Words })),
});
export type Slip = z.infer<typeof Slip>;

/** A pupil's report that a sheet is wrong. */
export const Report = z.strictObject({
  id: Id,
  edition: Id,
  shown: Words,
  element: Id.nullable(),
  who: Words,
  on: Day,
  text: Words.min(1),
  state: z.enum(["new", "taken up", "answered"]),
  answer: Words,
});
export type Report = z.infer<typeof Report>;

export const Lesson = z.strictObject({
  id: Id,
  work: Id,
  on: Day.nullable(),
  title: Name,
  contact: z.enum(["none", "light", "full"]),
  equipment: Words,
  items: z.array(
    z.strictObject({
      exercise: Id,
      variant: Id.nullable(),
      minutes: z.int().min(0).max(600),
      demonstrates: Words,
      group: z.enum(["mounted", "unmounted", "all"]),
      note: Words,
    }),
  ),
});
export type Lesson = z.infer<typeof Lesson>;

/** A source as a CSL-JSON item; what the style needs of it is checked where it is set. */
export const Source = z.strictObject({
  id: Id,
  work: Id,
  item: z.looseObject({ id: z.union([z.string(), z.number()]), type: z.string().min(1) }),
});
export type Source = z.infer<typeof Source>;
