/** schema/drill.ts - the ridden drill: an exercise compiled under one choice of readings, as it is exchanged.
 *  May import: zod, siblings. Published as drill.schema.json. The same content gives the same bytes: keys in the order
 *  written here, lists in the order of the exercise, no clock. */
import { z } from "zod";
import { CRUX_KINDS } from "./crux.ts";
import { Way } from "./guard.ts";
import { Reference } from "./reference.ts";
import { Warrant } from "./slot.ts";

export const DRILL_FORMAT = "passagework-drill";
export const DRILL_FORMAT_VERSION = 1;

/** Words that something rests on, and where they stand. */
export const Citation = z.strictObject({
  reference: z.string().describe("as the work is cited: f. 7r, ll. 10–17"),
  references: z.array(Reference),
  layer: z.string().describe("title of the text quoted"),
  language: z.string(),
  quote: z.string().describe("the words, as they stand in the text; empty for a gap between words"),
  from: z.int().min(0).describe("UTF-16 units from the start of the passage, half-open"),
  to: z.int().min(0),
  urn: z.string().optional().describe("CTS URN of the words, where the text has one"),
  state: z.enum(["same", "moved", "reworded", "lost"]),
});
export type Citation = z.infer<typeof Citation>;

/** How a printed value is to be drawn: by its warrant, or as what the text does not say, or as not settled. */
export const DrillStanding = z.enum([...Warrant.options, "not said", "not settled", "not applicable"]);
export type DrillStanding = z.infer<typeof DrillStanding>;

export const DrillValue = z.strictObject({
  slot: z.string(),
  label: z.string().describe("the slot in words"),
  text: z.string().describe("the value in words"),
  value: z.json(),
  standing: DrillStanding,
  /** Under a crux: which, and which reading gave it (null: none is chosen yet). */
  crux: z.string().nullable(),
  reading: z.string().nullable(),
  rests: z.array(z.string()).describe("premises, parallels and notes, in words"),
  citations: z.array(Citation),
});
export type DrillValue = z.infer<typeof DrillValue>;

export const DRILL_PARTS = ["horse", "left hand", "right hand", "shaft", "rider"] as const;
export const DrillPart = z.enum(DRILL_PARTS);
export type DrillPart = z.infer<typeof DrillPart>;

export const DrillAction = z.strictObject({
  id: z.string(),
  part: DrillPart,
  verb: z.string(),
  text: z.string().describe("the act in words"),
  standing: DrillStanding,
  inherited: z.boolean().describe("from an instruction that stands throughout"),
  /** Crux and readings under which alone it is done, when these are not chosen yet. */
  onlyUnder: z.array(z.strictObject({ crux: z.string(), readings: z.array(z.string()) })),
  values: z.array(DrillValue),
  rests: z.array(z.string()).describe("what its being done rests on besides words"),
  citations: z.array(Citation).describe("the words that say it is done"),
});
export type DrillAction = z.infer<typeof DrillAction>;

/** A crux as it bears on one element: the reading taken, and the others. */
export const DrillCrux = z.strictObject({
  crux: z.string(),
  title: z.string(),
  is: z.enum(CRUX_KINDS),
  note: z.string(),
  taken: z
    .strictObject({
      reading: z.string(),
      title: z.string(),
      because: z.enum(["adopted", "left free", "chosen", "exception"]),
      reason: z.string(),
      condition: z.string(),
    })
    .nullable(),
  others: z.array(
    z.strictObject({
      reading: z.string(),
      title: z.string(),
      argument: z.string(),
      holder: z.string(),
      status: z.enum(["standing", "adopted", "ruled out"]),
      reason: z.string(),
      condition: z.string(),
      gives: z.array(z.strictObject({ label: z.string(), text: z.string() })),
    }),
  ),
  citations: z.array(Citation),
});
export type DrillCrux = z.infer<typeof DrillCrux>;

export const DrillElement = z.strictObject({
  id: z.string(),
  is: z.enum(["step", "again", "advice", "untreated"]),
  number: z.int().min(1).nullable().describe("printed number; only steps and again have one, counted after filtering"),
  title: z.string(),
  text: z.string().describe("for again, advice and untreated: what it says, in words; empty for a step"),
  role: z.string(),
  standing: DrillStanding,
  onlyUnder: DrillAction.shape.onlyUnder,
  values: z.array(DrillValue).describe("its cue, its threat, how often it is done again"),
  actions: z.array(DrillAction),
  cruxes: z.array(DrillCrux),
  rests: z.array(z.string()).describe("what its being there rests on besides words"),
  citations: z.array(Citation).describe("its own words; those of its actions where it has none of its own"),
  note: z.string(),
});
export type DrillElement = z.infer<typeof DrillElement>;

export const Drill = z.strictObject({
  format: z.literal(DRILL_FORMAT),
  formatVersion: z.literal(DRILL_FORMAT_VERSION),
  work: z.strictObject({ id: z.string(), title: z.string(), author: z.string(), invented: z.boolean() }),
  layers: z.array(
    z.strictObject({
      title: z.string(),
      is: z.enum(["original", "translation"]),
      by: z.string(),
      language: z.string(),
      revision: z.string(),
      urn: z.string(),
    }),
  ),
  exercise: z.strictObject({
    id: z.string(),
    label: z.string(),
    title: z.string(),
    references: z.array(z.string()).describe("first and last passage, as the work is cited"),
  }),
  way: Way,
  variant: z.string().nullable().describe("name of the version of the day"),
  objects: z.array(z.strictObject({ id: z.string(), name: z.string(), is: z.string() })),
  standing: z.array(
    z.strictObject({
      id: z.string(),
      is: z.enum(["instruction", "never mentioned"]),
      title: z.string(),
      text: z.string(),
      standing: DrillStanding,
      citations: z.array(Citation),
    }),
  ),
  elements: z.array(DrillElement),
  cruxes: z.array(DrillCrux).describe("cruxes of the exercise that stand at no printed element"),
  questions: z.array(
    z.strictObject({
      id: z.string(),
      text: z.string(),
      to: z.string(),
      asked: z.string().nullable(),
      crux: z.string().nullable(),
      citations: z.array(Citation),
    }),
  ),
  notes: z.array(z.strictObject({ text: z.string(), citations: z.array(Citation) })),
  treated: z.strictObject({
    steps: z.int(),
    untreatedParts: z.int(),
    unmarked: z
      .array(z.strictObject({ reference: z.string(), language: z.string(), quote: z.string() }))
      .describe("words of its passages that nothing is said of yet: the longest stretches first"),
    sentence: z.string().describe("what part of the exercise this is, in words"),
  }),
  caution: z.string(),
});
export type Drill = z.infer<typeof Drill>;
