/** schema/mark.ts - what ties the researcher's things to words and pictures.
 *  May import: zod, siblings. */
import { z } from "zod";
import { Id, Rank, Words } from "./id.ts";

/** What a mark can tie to words. */
export const MARKABLE = [
  "elements",
  "actions",
  "standings",
  "cruxes",
  "readings",
  "questions",
  "terms",
  "senses",
  "notes",
  "holds",
  "movements",
  "stations",
  "threats",
  "rules",
  "faults",
] as const;
export type Markable = (typeof MARKABLE)[number];

export const Mark = z.strictObject({
  id: Id,
  work: Id,
  /** What is tied: a row of this kind ... */
  of: z.enum(MARKABLE),
  /** ... with this id. */
  target: Id,
  /** Its words, or evidence for or against it. */
  as: z.enum(["words", "for", "against"]),
});
export type Mark = z.infer<typeof Mark>;

/** Which neighbour an end keeps to when words are put in exactly there. */
export const Cling = z.enum(["before", "after"]);
export type Cling = z.infer<typeof Cling>;

/** What became of an anchor's words when the text under it changed. */
export const Fate = z.enum(["same", "moved", "reworded", "lost"]);
export type Fate = z.infer<typeof Fate>;

/** One place of a mark, in words. `from` = `to` marks a gap. */
export const TextAnchor = z.strictObject({
  id: Id,
  mark: Id,
  rank: Rank,
  is: z.literal("text"),
  passage: Id,
  /** The passage text the offsets count in. */
  text: Id,
  from: z.int().min(0),
  to: z.int().min(0),
  fromSide: Cling,
  toSide: Cling,
  /** The words under the anchor and around it, as they were when a person last set or confirmed it. */
  quote: Words,
  prefix: z.string().max(200),
  suffix: z.string().max(200),
  fate: Fate,
});
export type TextAnchor = z.infer<typeof TextAnchor>;

/** One place of a mark, on a picture. */
export const RegionAnchor = z.strictObject({ id: Id, mark: Id, rank: Rank, is: z.literal("region"), region: Id });
export type RegionAnchor = z.infer<typeof RegionAnchor>;

export const Anchor = z
  .discriminatedUnion("is", [TextAnchor, RegionAnchor])
  .refine((anchor) => anchor.is === "region" || anchor.from <= anchor.to, {
    error: "an anchor ends where it begins or later",
    path: ["to"],
  });
export type Anchor = z.infer<typeof Anchor>;

/** A remark on words: printed in the apparatus, never ridden. */
export const Note = z.strictObject({ id: Id, work: Id, text: Words.min(1) });
export type Note = z.infer<typeof Note>;

export const Picture = z.strictObject({
  id: Id,
  work: Id,
  rank: Rank,
  title: Words.min(1),
  witness: Id.nullable(),
  where: Words,
  /** Content hash of the attachment that holds the image. */
  attachment: z.string().min(1).max(100),
  width: z.int().min(1),
  height: z.int().min(1),
  note: Words,
});
export type Picture = z.infer<typeof Picture>;

/** A part of a picture, in whole pixels from its upper left corner; two corners make a rectangle. */
export const Region = z.strictObject({
  id: Id,
  picture: Id,
  corners: z
    .array(z.tuple([z.int().min(0), z.int().min(0)]))
    .min(2)
    .max(200),
  label: Words,
});
export type Region = z.infer<typeof Region>;
