/** schema/reference.ts - where a passage stands: by section, by folio of a witness, by page of a print or layer.
 *  May import: zod. Reading, writing and ordering of references live in shared/cite. */
import { z } from "zod";

/** One place on a leaf: `{ leaf: 12, side: "v", line: 3 }` is f. 12v, l. 3. Leaves and lines count from 1. */
export const FolioPoint = z.strictObject({
  leaf: z.int().min(1),
  side: z.enum(["r", "v"]),
  column: z.enum(["a", "b", "c", "d"]).optional(),
  line: z.int().min(1).optional(),
});
export type FolioPoint = z.infer<typeof FolioPoint>;

export const PagePoint = z.strictObject({
  /** As printed: arabic, roman or otherwise ("212", "xii"). */
  page: z.string().min(1).max(40),
  line: z.int().min(1).optional(),
});
export type PagePoint = z.infer<typeof PagePoint>;

/** Ranges are closed: `to` is the last place that belongs to the passage; without `to` it is one place. */
export const Reference = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("section"),
    /** From the widest to the narrowest level: ["7", "13"] is book/chapter 7, section 13. */
    from: z.array(z.string().min(1).max(40)).min(1).max(6),
    to: z.array(z.string().min(1).max(40)).min(1).max(6).optional(),
  }),
  z.strictObject({
    kind: z.literal("folio"),
    /** The siglum of the witness; empty when the work has only one. */
    witness: z.string().max(20),
    from: FolioPoint,
    to: FolioPoint.optional(),
  }),
  z.strictObject({
    kind: z.literal("page"),
    /** What is paged, in a word or two: "tr.", "print"; empty when plain. */
    of: z.string().max(40),
    from: PagePoint,
    to: PagePoint.optional(),
  }),
]);
export type Reference = z.infer<typeof Reference>;
export type SectionReference = Extract<Reference, { kind: "section" }>;
export type FolioReference = Extract<Reference, { kind: "folio" }>;
export type PageReference = Extract<Reference, { kind: "page" }>;
