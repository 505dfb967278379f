/** schema/work.ts - the book: its witnesses and layers, their revisions, its exercises and passages, and passage texts.
 *  May import: zod, siblings. Offsets into a text follow the projection of shared/text (UTF-16 units from 0, half-open). */
import { z } from "zod";
import { Day, Id, Name, Rank, Words } from "./id.ts";
import { Reference } from "./reference.ts";

export const Work = z.strictObject({
  id: Id,
  rank: Rank,
  title: Name,
  author: Words,
  /** Names of the citation levels, widest first ("chapter", "section"); empty when cited by folio or page. */
  levels: z.array(z.string().max(60)).max(6),
  note: Words,
  /** The work's own entry among the sources, where it has one. */
  source: Id.nullable(),
  /** True for the invented book that comes with the program; papers say so. */
  invented: z.boolean(),
});
export type Work = z.infer<typeof Work>;

export const Witness = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  siglum: z.string().min(1).max(20),
  is: z.enum(["manuscript", "print"]),
  name: Words,
  place: Words,
  date: Words,
  note: Words,
});
export type Witness = z.infer<typeof Witness>;

/** A text of the work: the original of a witness, or one translator's rendering. */
export const Layer = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  is: z.enum(["original", "translation"]),
  title: Name,
  /** Who made it: the translator, or the editor of the original. */
  by: Words,
  /** BCP 47 ("la", "ar", "grc", "en"); empty when not known. */
  language: z.string().max(40),
  witness: Id.nullable(),
  /** CTS URN without a passage, ending in a colon; empty when there is none. */
  urn: z.string().max(300),
});
export type Layer = z.infer<typeof Layer>;

/** One state of a layer as it came in. The newest by rank is the one that is read and marked. */
export const Revision = z.strictObject({
  id: Id,
  layer: Id,
  rank: Rank,
  label: Name,
  received: Day.nullable(),
  /** Name of the file or "pasted"; the file itself is kept as an attachment. */
  from: Words,
  attachment: z.string().max(100).nullable(),
  note: Words,
});
export type Revision = z.infer<typeof Revision>;

export const Exercise = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  /** As the book counts it ("3", "III"); may be empty. */
  label: z.string().max(40),
  title: Name,
  note: Words,
  /** Which ground it is ridden on, where one is drawn. */
  ground: Id.nullable(),
});
export type Exercise = z.infer<typeof Exercise>;

/** The smallest citable unit; it lasts, whatever happens to its words. */
export const Passage = z.strictObject({
  id: Id,
  work: Id,
  exercise: Id.nullable(),
  rank: Rank,
  /** The first is the one the passage is called by. */
  references: z.array(Reference).min(1).max(40),
});
export type Passage = z.infer<typeof Passage>;

/** One state of the words of a passage in one revision. Never changed once a later `number` exists. */
export const PassageText = z.strictObject({
  id: Id,
  passage: Id,
  revision: Id,
  /** Counts from 1; the highest is current. */
  number: z.int().min(1),
  /** A document of schema/editor.ts. */
  doc: z.looseObject({ type: z.string() }),
  /** The document by the offset projection; anchors count in it. */
  text: z.string().max(5_000_000),
  /** The editor's steps that made this text from the one before; empty for the first. */
  steps: z.array(z.looseObject({ stepType: z.string() })),
});
export type PassageText = z.infer<typeof PassageText>;

/** A split or a merge of passages, so that an old citation still finds its words. */
export const PassageLink = z.strictObject({
  id: Id,
  work: Id,
  is: z.enum(["split", "merged"]),
  from: z.array(Id).min(1),
  to: z.array(Id).min(1),
  note: Words,
});
export type PassageLink = z.infer<typeof PassageLink>;
