/** schema/crux.ts - places that admit more than one understanding, their readings, questions and sittings.
 *  May import: zod, siblings. */
import { z } from "zod";
import { ReadingCondition } from "./guard.ts";
import { Day, Id, Name, Rank, Words } from "./id.ts";
import { Basis, ReadingValue, SlotAddress } from "./slot.ts";

export const CRUX_KINDS = [
  "ambiguous",
  "silent",
  "contradictory",
  "corrupt",
  "witnesses differ",
  "translator's doubt",
] as const;

const decided = { on: Day, sitting: Id.nullable(), reason: Words.min(1) };

export const Crux = z.strictObject({
  id: Id,
  work: Id,
  /** The exercise it belongs to; null when it spans the work. */
  exercise: Id.nullable(),
  is: z.enum(CRUX_KINDS),
  /** A place, or a principle with places for and against it. */
  scope: z.enum(["place", "principle"]),
  title: Name,
  note: Words,
  /** Arises only when all of these are read so; empty: always. Never in a circle. */
  arisesWhen: z.array(ReadingCondition).max(20),
  /** Left to the rider on purpose, with a default that is used only for computing. */
  leftFree: z.strictObject({ ...decided, default: Id }).nullable(),
  /** Uses of a hold, movement or term where this crux is read otherwise than elsewhere. */
  exceptions: z.array(z.strictObject({ element: Id, reading: Id, reason: Words.min(1) })).max(200),
});
export type Crux = z.infer<typeof Crux>;

/** What a person decided of a reading. The verdict of computation is never stored. */
export const ReadingStatus = z.discriminatedUnion("is", [
  z.strictObject({ is: z.literal("standing") }),
  z.strictObject({ is: z.literal("adopted"), ...decided, condition: Words }),
  z.strictObject({ is: z.literal("ruled out"), ...decided }),
]);
export type ReadingStatus = z.infer<typeof ReadingStatus>;

export const Reading = z.strictObject({
  id: Id,
  crux: Id,
  rank: Rank,
  title: Name,
  argument: Words,
  /** Who holds it: "translator", "editor", a name. */
  holder: Words,
  evidence: z.array(Basis).max(100),
  /** Holds only where these are read so; cannot hold where those are. */
  requires: z.array(ReadingCondition).max(20),
  excludes: z.array(ReadingCondition).max(20),
  /** What it gives to each slot the crux holds. A slot it does not name is not said under it. */
  values: z.array(z.strictObject({ at: SlotAddress, value: ReadingValue })).max(200),
  status: ReadingStatus,
  /** Exact decimal between 0 and 1, never 0 (rule it out instead); null when not given. */
  confidence: z
    .string()
    .regex(/^(1(\.0+)?|0\.\d*[1-9]\d*)$/)
    .nullable(),
});
export type Reading = z.infer<typeof Reading>;

/** Something only somebody else, or a trial, can answer. */
export const Question = z.strictObject({
  id: Id,
  work: Id,
  exercise: Id.nullable(),
  crux: Id.nullable(),
  text: Name,
  to: Words,
  by: z.enum(["person", "trial"]),
  asked: Day.nullable(),
  /** How hard it is to settle, 1 to 5; null when not weighed. */
  effort: z.int().min(1).max(5).nullable(),
  /** What may be answered, and which readings each answer leaves. */
  answers: z.array(z.strictObject({ label: Name, allows: z.array(ReadingCondition) })).max(40),
  state: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("open") }),
    z.strictObject({ is: z.literal("answered"), on: Day, sitting: Id.nullable(), answer: Words.min(1) }),
    z.strictObject({ is: z.literal("withdrawn"), on: Day, reason: Words }),
  ]),
});
export type Question = z.infer<typeof Question>;

/** An occasion of work; the changes made in it are kept together. */
export const Sitting = z.strictObject({
  id: Id,
  work: Id,
  on: Day,
  who: z.array(Name).max(40),
  place: Words,
  note: Words,
});
export type Sitting = z.infer<typeof Sitting>;

/** A word followed through the work. */
export const Term = z.strictObject({
  id: Id,
  work: Id,
  word: Name,
  language: z.string().max(40),
  note: Words,
});
export type Term = z.infer<typeof Term>;

/** What a term means at some places; actions owned by a sense are the bundle it stands for. */
export const Sense = z.strictObject({ id: Id, term: Id, rank: Rank, title: Name, gloss: Words });
export type Sense = z.infer<typeof Sense>;
