/** schema/guard.ts - under which readings, and in which variant, a thing is part of the exercise.
 *  May import: zod, siblings. A guard is a list of conditions that must all hold; an empty list always holds. */
import { z } from "zod";
import { Id } from "./id.ts";

/** The crux is read as one of these. */
export const ReadingCondition = z.strictObject({ is: z.literal("reading"), crux: Id, readings: z.array(Id).min(1) });
export type ReadingCondition = z.infer<typeof ReadingCondition>;

/** The way the exercise is done; a parameter of the drill, never a crux. */
export const Way = z.enum(["mounted", "on foot"]);
export type Way = z.infer<typeof Way>;

export const Condition = z.discriminatedUnion("is", [
  ReadingCondition,
  z.strictObject({ is: z.literal("way"), way: Way }),
  z.strictObject({ is: z.literal("variant"), variants: z.array(Id).min(1) }),
]);
export type Condition = z.infer<typeof Condition>;

export const Guard = z.array(Condition).max(40);
export type Guard = z.infer<typeof Guard>;
