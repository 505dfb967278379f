/** schema/record.ts - every kind of row that is stored, by the name of its table.
 *  May import: zod, siblings. The store has one table a kind, one column a field; see `references` for what a field
 *  points at. A name once shipped is never used for anything else. */
import type { z } from "zod";
import { Crux, Question, Reading, Sense, Sitting, Term } from "./crux.ts";
import { Action, Element, Standing, Variant } from "./exercise.ts";
import { Anchor, Mark, Note, Picture, Region } from "./mark.ts";
import { CarriedObject, Ground, Hold, Movement, Rule, Station, Threat, Waiver } from "./riding.ts";
import { Edition, Fault, Kit, Lesson, Report, Slip, Source, Trial } from "./teaching.ts";
import { Exercise, Layer, Passage, PassageLink, PassageText, Revision, Witness, Work } from "./work.ts";

export const RECORDS = {
  works: Work,
  witnesses: Witness,
  layers: Layer,
  revisions: Revision,
  exercises: Exercise,
  passages: Passage,
  passageTexts: PassageText,
  passageLinks: PassageLink,
  marks: Mark,
  anchors: Anchor,
  notes: Note,
  pictures: Picture,
  regions: Region,
  elements: Element,
  actions: Action,
  standings: Standing,
  variants: Variant,
  cruxes: Crux,
  readings: Reading,
  questions: Question,
  sittings: Sitting,
  terms: Term,
  senses: Sense,
  objects: CarriedObject,
  holds: Hold,
  movements: Movement,
  grounds: Ground,
  stations: Station,
  threats: Threat,
  rules: Rule,
  waivers: Waiver,
  faults: Fault,
  kits: Kit,
  trials: Trial,
  editions: Edition,
  slips: Slip,
  reports: Report,
  lessons: Lesson,
  sources: Source,
} as const;

export type Kind = keyof typeof RECORDS;
export type RecordOf<K extends Kind> = z.infer<(typeof RECORDS)[K]>;
export const KINDS = Object.keys(RECORDS) as Kind[];

/** A stored row: the value and how often it was written (from 1). */
export interface Row<K extends Kind = Kind> {
  kind: K;
  version: number;
  value: RecordOf<K>;
}
/** Rows by kind, as a part of the store is handed about. */
export type Rows = { [K in Kind]?: Row<K>[] };

/** Top-level fields that name another row, and its kind; a null or missing value names none.
 *  `whole` rows go with the row they belong to when that is removed; others must not be left pointing at nothing. */
export const REFERENCES: { [K in Kind]?: Readonly<Record<string, { to: Kind; whole: boolean }>> } = {
  works: { source: { to: "sources", whole: false } },
  witnesses: { work: { to: "works", whole: true } },
  layers: { work: { to: "works", whole: true }, witness: { to: "witnesses", whole: false } },
  revisions: { layer: { to: "layers", whole: true } },
  exercises: { work: { to: "works", whole: true }, ground: { to: "grounds", whole: false } },
  passages: { work: { to: "works", whole: true }, exercise: { to: "exercises", whole: false } },
  passageTexts: { passage: { to: "passages", whole: true }, revision: { to: "revisions", whole: true } },
  passageLinks: { work: { to: "works", whole: true } },
  marks: { work: { to: "works", whole: true } },
  anchors: {
    mark: { to: "marks", whole: true },
    passage: { to: "passages", whole: false },
    text: { to: "passageTexts", whole: false },
    region: { to: "regions", whole: false },
  },
  notes: { work: { to: "works", whole: true } },
  pictures: { work: { to: "works", whole: true }, witness: { to: "witnesses", whole: false } },
  regions: { picture: { to: "pictures", whole: true } },
  elements: {
    exercise: { to: "exercises", whole: true },
    copyOf: { to: "elements", whole: false },
    from: { to: "elements", whole: false },
    to: { to: "elements", whole: false },
    rule: { to: "rules", whole: false },
    fromPassage: { to: "passages", whole: false },
    toPassage: { to: "passages", whole: false },
  },
  standings: { work: { to: "works", whole: true }, exercise: { to: "exercises", whole: true } },
  variants: { work: { to: "works", whole: true }, exercise: { to: "exercises", whole: true } },
  cruxes: { work: { to: "works", whole: true }, exercise: { to: "exercises", whole: false } },
  readings: { crux: { to: "cruxes", whole: true } },
  questions: {
    work: { to: "works", whole: true },
    exercise: { to: "exercises", whole: false },
    crux: { to: "cruxes", whole: false },
  },
  sittings: { work: { to: "works", whole: true } },
  terms: { work: { to: "works", whole: true } },
  senses: { term: { to: "terms", whole: true } },
  objects: { work: { to: "works", whole: true } },
  holds: { work: { to: "works", whole: true } },
  movements: { work: { to: "works", whole: true } },
  grounds: { work: { to: "works", whole: true } },
  stations: { ground: { to: "grounds", whole: true }, partner: { to: "stations", whole: false } },
  threats: { work: { to: "works", whole: true } },
  rules: { work: { to: "works", whole: true } },
  waivers: { element: { to: "elements", whole: true } },
  faults: { work: { to: "works", whole: true } },
  kits: { work: { to: "works", whole: true } },
  trials: {
    exercise: { to: "exercises", whole: true },
    variant: { to: "variants", whole: false },
    kit: { to: "kits", whole: false },
    edition: { to: "editions", whole: false },
  },
  editions: { work: { to: "works", whole: true }, variant: { to: "variants", whole: false } },
  slips: { from: { to: "editions", whole: true }, to: { to: "editions", whole: true } },
  reports: { edition: { to: "editions", whole: true }, element: { to: "elements", whole: false } },
  lessons: { work: { to: "works", whole: true } },
  sources: { work: { to: "works", whole: true } },
};

/** Kinds that point at a row of a kind named in the row itself: the fields that hold the kind and the id. */
export const TIES: { [K in Kind]?: { kind: string; id: string } } = {
  marks: { kind: "of", id: "target" },
  actions: { kind: "ownerKind", id: "owner" },
  faults: { kind: "of", id: "target" },
};
