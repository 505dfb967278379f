/** schema/id.ts - names of rows and their order.
 *  May import: zod. Ids are made where the row is made (UUIDv7) and never tell an order; order is a rank. */
import { z } from "zod";

export const Id = z.uuid();
export type Id = z.infer<typeof Id>;

/** A fractional index: compared by code unit, equal ranks by id. Made by shared/rank. */
export const Rank = z
  .string()
  .min(1)
  .max(400)
  .regex(/^[0-9A-Za-z]+$/);
export type Rank = z.infer<typeof Rank>;

/** A calendar day, Gregorian unless a text says otherwise: 2026-05-04. */
export const Day = z.iso.date();

/** What a person writes: any words, none needed. */
export const Words = z.string().max(100_000);
/** What a person writes where something must stand. */
export const Name = z.string().trim().min(1).max(500);
