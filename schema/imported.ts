/** schema/imported.ts - a text that was read from a file or a paste and is not stored yet.
 *  May import: zod, siblings. Made by server/import, shown as the preview, turned into rows on acceptance. */
import { z } from "zod";
import { Reference } from "./reference.ts";

/** Where something stood in what was given: lines and columns count from 1. */
export const FilePlace = z.strictObject({ line: z.int().min(1), column: z.int().min(1) });
export type FilePlace = z.infer<typeof FilePlace>;

/** Something of the file that is not in the passages. Every loss is listed; equal ones may be gathered under `count`. */
export const Dropped = z.strictObject({
  what: z.string().describe("what it was, in words: 'entity &fund.AnnCPB;', 'element <figure>'"),
  why: z.string().describe("why it was left out, in a short sentence"),
  place: FilePlace.describe("the first place"),
  count: z.int().min(1),
  sample: z.string().max(200).describe("the first words that were lost, or empty"),
});
export type Dropped = z.infer<typeof Dropped>;

export const ImportedPassage = z.strictObject({
  references: z.array(Reference).min(1),
  /** The division of the book the passage stands in; passages of one division follow each other. */
  division: z.strictObject({ label: z.string(), title: z.string() }).optional(),
  /** The passage as a document of schema/editor.ts. */
  doc: z.looseObject({ type: z.string() }),
  /** The same as plain words, by the offset projection; for the preview. */
  text: z.string(),
  place: FilePlace,
});
export type ImportedPassage = z.infer<typeof ImportedPassage>;

export const ImportedText = z.strictObject({
  /** Tells the texts of one file apart: counted from 1. */
  number: z.int().min(1),
  title: z.string(),
  author: z.string(),
  translator: z.string(),
  /** BCP 47 where it could be found, else empty. */
  language: z.string().max(40),
  /** CTS URN of this text without a passage (it ends in a colon), from the header or cRefPattern; else empty. */
  urn: z.string().max(300),
  /** Names of the citation levels, widest first: ["chapter", "section"]. */
  levels: z.array(z.string()),
  passages: z.array(ImportedPassage),
});
export type ImportedText = z.infer<typeof ImportedText>;

export const ImportedFile = z.strictObject({
  format: z.enum(["tei-p5", "tei-p4", "plain", "markdown"]),
  encoding: z.string(),
  texts: z.array(ImportedText),
  dropped: z.array(Dropped),
});
export type ImportedFile = z.infer<typeof ImportedFile>;

/** A file that cannot be taken at all: what was expected, what came, where, and what to do. */
export const ImportRefusal = z.strictObject({
  code: z.string(),
  sentence: z.string(),
  place: FilePlace.optional(),
});
export type ImportRefusal = z.infer<typeof ImportRefusal>;

/** Largest text that is read, in bytes. Larger files are refused with the advice to bring them in by parts. */
export const IMPORT_LIMIT_BYTES = 64 * 1024 * 1024;
