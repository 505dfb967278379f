/** schema/api.ts - what window and server say to each other.
 *  May import: zod, siblings. Every answer that is not 2xx is a `Refusal`. */
import { z } from "zod";
import type { FieldConflict } from "./change.ts";
import { Id, Name, Words } from "./id.ts";
import { ImportedFile } from "./imported.ts";
import type { Kind, Row, Rows } from "./record.ts";

/** GET /api/contents: all works with their exercises and passages, and how far each is worked. */
export interface Contents {
  works: WorkContents[];
  /** Number of the newest change. */
  at: number;
}
export interface WorkContents {
  /** works, witnesses, layers, revisions, exercises, passages: whole rows. */
  rows: Rows;
  passages: PassageProgress[];
}
export interface PassageProgress {
  passage: string;
  /** The first words, for the list. */
  opening: string;
  /** Share of the words of the leading layer that lie under a step, again, advice or note: 0 to 1. */
  worked: number;
  untreated: boolean;
  openCruxes: number;
  openQuestions: number;
  lostMarks: number;
}

/** GET /api/passages/:id and /api/exercises/:id: all rows that bear on the exercise the passage stands in
 *  (on the passage alone when it stands in none), with the shared things of the work; /api/works/:id: those of the whole work. Of passage texts only the
 *  current one of each layer's newest revision. */
export interface Bundle {
  rows: Rows;
  at: number;
}

/** POST /api/changes (body: ChangeRequest), /api/passages/:id/amend, /api/changes/:id/undo. */
export interface Written {
  change: number;
  /** Rows as they are after the write. */
  rows: Row[];
  removed: { kind: Kind; id: string }[];
  /** Fields another writer changed meanwhile that were merged with this write. */
  merged: { kind: Kind; id: string; fields: string[] }[];
}

/** GET /api/passages/:id/texts?revision=ID&after=NUMBER: Row<"passageTexts">[], those that came later, oldest first. */

/** Typing on an unlocked passage: the editor's steps against one passage text. */
export const Amendment = z.strictObject({
  id: Id,
  who: z.string().trim().min(1).max(200),
  why: Name,
  sitting: Id.nullable(),
  /** The passage text the steps start from; refused as stale when it is no longer current. */
  text: Id,
  steps: z.array(z.looseObject({ stepType: z.string() })).min(1),
});
export type Amendment = z.infer<typeof Amendment>;

export const UndoRequest = z.strictObject({ id: Id, who: z.string().trim().min(1).max(200), why: Words });
export type UndoRequest = z.infer<typeof UndoRequest>;

/** GET /api/changes?work=ID&before=NUMBER: the history, newest first. */
export interface HistoryEntry {
  number: number;
  id: string;
  when: string;
  who: string;
  why: string;
  group: string | null;
  undoes: string | null;
  /** Whether a later change has taken it back. */
  undone: boolean;
  /** The sitting it was made in; null for none, and where that is gone. */
  sitting: { id: string; on: string; who: string[]; place: string } | null;
  /** What it touched, counted by kind. */
  touched: { kind: Kind; made: number; changed: number; removed: number }[];
  /** The one passage whose texts or marked words it touched, and its reference, or "" where it has none; null when it
   *  touched none or several, or the passage is gone. */
  passage: { id: string; reference: string } | null;
}

/** GET /api/cruxes/:id/decisions: what was decided of it, newest first. */
export interface Decision {
  number: number;
  change: string;
  when: string;
  who: string;
  why: string;
  /** The reading it is about; null where it is about the crux as a whole. */
  reading: string | null;
  /** Title of the reading, or of the crux, as it was then. */
  title: string;
  is: "standing" | "adopted" | "ruled out" | "left free" | "no longer left free" | "taken away";
  /** The day, reason and condition that were entered with it; null and "" where none were. */
  on: string | null;
  reason: string;
  condition: string;
}

/** GET /api/works/:id/letter?to=ADDRESSEE&as=txt|docx: their open questions as a letter; no clock in it. */

/** POST /api/import/preview?name=&format= (body: the bytes). Nothing is stored. */
export const ImportPreview = ImportedFile;

/** POST /api/import/accept?options=JSON (body: the same bytes). */
export const ImportOptions = z.strictObject({
  /** Group of the change: all of the import is undone together. */
  id: Id,
  who: z.string().trim().min(1).max(200),
  name: Name,
  format: z.enum(["tei", "plain", "markdown"]).optional(),
  /** Which text of the file, from 1. */
  text: z.int().min(1),
  /** First and last reference to take ("7", "7.13"); empty takes all. */
  from: z.string().max(200),
  to: z.string().max(200),
  /** Into a work that is there (passages are matched by reference), or a new one. */
  work: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("there"), id: Id }),
    z.strictObject({ is: z.literal("new"), title: Name, author: Words }),
  ]),
  layer: z.strictObject({
    is: z.enum(["original", "translation"]),
    title: Name,
    by: Words,
    language: z.string().max(40),
    urn: z.string().max(300),
  }),
  /** An exercise of each division of the book, one of the whole selection, or none yet. */
  exercises: z.enum(["by division", "one", "none"]),
  /** Title of the one exercise. */
  title: Words,
});
export type ImportOptions = z.infer<typeof ImportOptions>;

export interface Imported {
  change: number;
  work: string;
  layer: string;
  /** First passage, to open. */
  passage: string;
  passages: number;
  /** References of the file that met no passage of the work and became new ones. */
  unmatched: string[];
}

/** GET /api/events (server-sent): one message a change. */
export interface ChangeNews {
  change: number;
  id: string;
  who: string;
  touched: { kind: Kind; id: string }[];
}

/** Any refusal: a code that never changes its sense, and a sentence that says what to do. */
export interface Refusal {
  error: {
    code: string;
    sentence: string;
    /** Where in what was sent: a path, or line and column. */
    issues?: {
      where: string;
      sentence: string;
      /** The row that it is about, where a person can go to it. */
      at?: { kind: Kind; id: string };
    }[];
    conflicts?: FieldConflict[];
    /** For a stale text: the text that is current now. */
    current?: Row;
  };
}
