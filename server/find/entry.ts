/** server/find/entry.ts - one thing that can be found: its words, what it belongs to, and where it is read.
 *  May import: schema types. */
import type { Markable } from "../../schema/mark.ts";
import type { Kind } from "../../schema/record.ts";

export interface Entry {
  kind: Kind;
  id: string;
  work: string;
  exercise: string | null;
  /** What it is called; searched like its parts. */
  title: string;
  parts: Part[];
  /** Where it is read. */
  place: Place;
}

/** A stretch of its words. */
export interface Part {
  /** What the words are to the thing; empty where that need not be said. */
  label: string;
  text: string;
  /** BCP 47; empty when not known. */
  language: string;
}

export interface Thing {
  kind: Markable;
  id: string;
}

export type Place =
  /** The words of a passage in one layer: its first part is the passage text of that id. */
  | { is: "text"; passage: string; text: string }
  /** Whatever is tied to words: the first of `ties` that has some says which passage; `shown` is brought forward. */
  | { is: "tied"; ties: { of: Thing; shown: Thing }[]; after: Entry | null }
  /** The beginning of its exercise or work. */
  | { is: "beginning" };

/** A part, unless it has no words. */
export function part(label: string, text: string, language = ""): Part[] {
  return text.trim() === "" ? [] : [{ label, text, language }];
}
