/** schema/change.ts - the one form in which anything is written, and what may come of it.
 *  May import: zod, siblings. Rows are the truth, the log of changes the proof. */
import { z } from "zod";
import { Id, Words } from "./id.ts";
import { KINDS, type Kind } from "./record.ts";

const kind = z.enum(KINDS as [Kind, ...Kind[]]);
const fields = z.record(z.string(), z.json());

/** One row to make, to change in some fields, or to take away. `base` is the version the writer had before them. */
export const Edit = z.discriminatedUnion("do", [
  z.strictObject({ do: z.literal("create"), kind, value: fields }),
  z.strictObject({ do: z.literal("set"), kind, id: Id, base: z.int().min(1), fields }),
  z.strictObject({ do: z.literal("remove"), kind, id: Id, base: z.int().min(1) }),
]);
export type Edit = z.infer<typeof Edit>;

/** A change as it is asked for. Its id is made by the writer, so that sending it twice writes it once. */
export const ChangeRequest = z.strictObject({
  id: Id,
  who: z.string().trim().min(1).max(200),
  why: Words,
  sitting: Id.nullable(),
  /** Changes of one group (an import, an accepted revision) are undone together. */
  group: Id.nullable(),
  edits: z.array(Edit).min(1),
});
export type ChangeRequest = z.infer<typeof ChangeRequest>;

/** One row of the log: before and after as whole values; null where the row was not there. */
export interface LoggedEdit {
  kind: Kind;
  id: string;
  /** Version before (0: not there) and after (removal counts one up). */
  base: number;
  version: number;
  before: Record<string, unknown> | null;
  after: Record<string, unknown> | null;
}

export interface LoggedChange {
  /** Order of writing, from 1, without gaps. */
  number: number;
  id: string;
  /** ISO 8601, UTC. */
  when: string;
  who: string;
  why: string;
  sitting: string | null;
  group: string | null;
  /** The change this one takes back, or null. */
  undoes: string | null;
  edits: LoggedEdit[];
}

/** One field two writers changed: what it was, what the other wrote, what this writer wanted. */
export interface FieldConflict {
  kind: Kind;
  id: string;
  /** "" when the whole row is in dispute (removed meanwhile). */
  field: string;
  base: unknown;
  theirs: unknown;
  yours: unknown;
  /** Who wrote theirs, and when. */
  who: string;
  when: string;
}
