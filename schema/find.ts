/** schema/find.ts - what is asked for by searching words through all works, and what is answered.
 *  May import: zod, siblings. */
import { z } from "zod";
import type { Markable } from "./mark.ts";
import type { Kind } from "./record.ts";

/** What is found, in the order it is listed. "steps" are elements of every form. */
export const FIND_GROUPS = [
  "passages",
  "exercises",
  "steps",
  "cruxes",
  "questions",
  "terms",
  "notes",
  "shared things",
] as const;
export type FindGroup = (typeof FIND_GROUPS)[number];

/** GET /api/find?q=WORDS&limit=NUMBER: words wanted, and how many of each group are listed at most. */
export const FindQuery = z.strictObject({
  q: z.string().max(2000).default(""),
  limit: z.coerce.number().int().min(1).max(200).default(6),
});
export type FindQuery = z.infer<typeof FindQuery>;

/** Without anything wanted, or where nothing holds it, there are no groups. */
export interface FindAnswer {
  /** Number of the newest change that was looked through. */
  at: number;
  groups: FoundGroup[];
}

export interface FoundGroup {
  group: FindGroup;
  /** How many there are; `found` lists the first of them. */
  total: number;
  found: Found[];
}

/** UTF-16 units from 0, half-open. */
export interface FoundSpan {
  from: number;
  to: number;
}

export interface Found {
  /** The row that holds the words. */
  kind: Kind;
  id: string;
  /** What it is called: a title, or the reference of a passage; empty for a note. */
  title: string;
  /** Where the words stand in the title. */
  titleHits: FoundSpan[];
  /** Words in context; null where only the title holds them. */
  words: FoundWords | null;
  /** Reference of the passage it leads to; empty when there is none. */
  reference: string;
  /** Title of the exercise, with its number in the book; empty when it belongs to none. */
  exercise: string;
  work: string;
  leads: FoundLead;
}

export interface FoundWords {
  /** Which part of the row holds them ("the argument for “the other hand”", the name of a layer); may be empty. */
  part: string;
  /** BCP 47; empty when not known. */
  language: string;
  quote: string;
  /** Where the words stand in the quote. */
  hits: FoundSpan[];
  /** Whether the text goes on before and after the quote. */
  cutBefore: boolean;
  cutAfter: boolean;
}

/** Where it is read. */
export interface FoundLead {
  work: string;
  exercise: string | null;
  /** The passage to open; null when the work has none. */
  passage: string | null;
  /** What is brought forward there. */
  thing: { kind: Markable; id: string } | null;
  /** The words found, in the passage text. */
  words: { text: string; from: number; to: number } | null;
}
