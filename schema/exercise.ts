/** schema/exercise.ts - an exercise as one ordered list of elements with their actions, and what stands throughout.
 *  May import: zod, siblings. The list holds every element any reading wants; guards filter it, numbers come after. */
import { z } from "zod";
import { Act } from "./act.ts";
import { Guard } from "./guard.ts";
import { Id, Rank, Words } from "./id.ts";
import { Support, slotOf } from "./slot.ts";

const every = {
  id: Id,
  exercise: Id,
  rank: Rank,
  guard: Guard,
  /** Why we believe the element is there. */
  existence: Support,
  /** Why we believe it comes in this place; null when nobody has asked. */
  order: Support.nullable(),
  /** Which rider, where there are several; empty for the one rider. */
  role: z.string().max(80),
  /** Guarded copies that are one instruction in two places share the id of the first; else null. */
  copyOf: Id.nullable(),
  note: Words,
};

const ridden = {
  threat: slotOf("threat").optional(),
  /** What it waits for: another rider's event, a station passed, a command. */
  cue: slotOf("words").optional(),
};

export const Step = z.strictObject({ ...every, is: z.literal("step"), title: Words, ...ridden });
export type Step = z.infer<typeof Step>;

/** What is done again. A missing end means the end of the exercise it names. */
export const Repeated = z.discriminatedUnion("is", [
  z.strictObject({ is: z.literal("exercise"), exercise: Id }),
  z.strictObject({ is: z.literal("elements"), from: Id, to: Id }),
  z.strictObject({ is: z.literal("movement"), movement: Id }),
]);

export const Again = z.strictObject({
  ...every,
  is: z.literal("again"),
  title: Words,
  ...ridden,
  of: Repeated,
  manner: z.enum(["as it is", "mirrored", "on the other rein"]),
  /** What differs: an action left out, or put in the place of one (the new ones are owned by this element). */
  except: z
    .array(
      z.discriminatedUnion("is", [
        z.strictObject({ is: z.literal("without"), action: Id }),
        z.strictObject({ is: z.literal("instead"), action: Id, by: Id }),
        z.strictObject({ is: z.literal("words"), words: Words.min(1) }),
      ]),
    )
    .max(200),
  times: slotOf("count").optional(),
});
export type Again = z.infer<typeof Again>;

/** A demand over a range of elements (null: from the first, to the last). */
export const Advice = z.strictObject({
  ...every,
  is: z.literal("advice"),
  demand: Words.min(1),
  from: Id.nullable(),
  to: Id.nullable(),
  /** The rule that checks it, where one can. */
  rule: Id.nullable(),
});
export type Advice = z.infer<typeof Advice>;

/** Words not written out yet: the state after them is not known. */
export const Untreated = z.strictObject({
  ...every,
  is: z.literal("untreated"),
  fromPassage: Id,
  toPassage: Id,
  /** How many steps it may hold; null when nobody has guessed. */
  estimate: z.strictObject({ from: z.int().min(0), to: z.int().min(0) }).nullable(),
});
export type Untreated = z.infer<typeof Untreated>;

export const Element = z.discriminatedUnion("is", [Step, Again, Advice, Untreated]);
export type Element = z.infer<typeof Element>;

/** What one part does, in a step or wherever else things are done. */
export const Action = z.strictObject({
  id: Id,
  ownerKind: z.enum(["elements", "standings", "movements", "senses"]),
  owner: Id,
  rank: Rank,
  guard: Guard,
  act: Act,
  existence: Support,
  timing: slotOf("timing").optional(),
  purpose: slotOf("purpose").optional(),
  threat: slotOf("threat").optional(),
  note: Words,
});
export type Action = z.infer<typeof Action>;

/** What holds throughout a work or an exercise (its actions are inherited and can be overridden), or what is
 *  never mentioned in it and was looked for. */
export const Standing = z.strictObject({
  id: Id,
  work: Id,
  exercise: Id.nullable(),
  rank: Rank,
  is: z.enum(["instruction", "never mentioned"]),
  title: Words.min(1),
  guard: Guard,
  existence: Support,
  note: Words,
});
export type Standing = z.infer<typeof Standing>;

/** A parameter of the drill: how it is done on the day, as deltas on the text's version, each with its reason. */
export const Variant = z.strictObject({
  id: Id,
  work: Id,
  exercise: Id.nullable(),
  rank: Rank,
  name: Words.min(1),
  way: z.enum(["mounted", "on foot"]),
  deltas: z
    .array(
      z.discriminatedUnion("is", [
        z.strictObject({ is: z.literal("leave out"), element: Id, reason: Words.min(1) }),
        /** Whoever the text sets against the rider in this element is not there on the day. */
        z.strictObject({ is: z.literal("no opponent"), element: Id, reason: Words.min(1) }),
        z.strictObject({ is: z.literal("act instead"), action: Id, act: Act, reason: Words.min(1) }),
        z.strictObject({ is: z.literal("words"), words: Words.min(1), reason: Words.min(1) }),
      ]),
    )
    .max(500),
});
export type Variant = z.infer<typeof Variant>;
