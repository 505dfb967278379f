/** server/store/row-name.ts - what a row is called in a sentence to a person.
 *  May import: schema types, siblings in server/store. Pure. */
import type { Kind } from "../../schema/record.ts";
import type { RowValue } from "./field-table.ts";

const SINGULAR: Record<Kind, string> = {
  works: "work",
  witnesses: "witness",
  layers: "layer",
  revisions: "revision",
  exercises: "exercise",
  passages: "passage",
  passageTexts: "passage text",
  passageLinks: "passage link",
  marks: "mark",
  anchors: "anchor",
  notes: "note",
  pictures: "picture",
  regions: "picture region",
  elements: "element",
  actions: "action",
  standings: "standing instruction",
  variants: "variant",
  cruxes: "crux",
  readings: "reading",
  questions: "question",
  sittings: "sitting",
  terms: "term",
  senses: "sense",
  objects: "object",
  holds: "hold",
  movements: "movement",
  grounds: "ground",
  stations: "station",
  threats: "threat",
  rules: "rule",
  waivers: "waiver",
  faults: "fault",
  kits: "kit",
  trials: "trial",
  editions: "edition",
  slips: "correction slip",
  reports: "report",
  lessons: "lesson",
  sources: "source",
};

/** "reading", "passage text": one row of the kind, in words. */
export function kindName(kind: Kind): string {
  return SINGULAR[kind];
}

/** 'reading “Both hands”', or 'mark 0198…' where a row has no words of its own. */
export function rowName(kind: Kind, value: RowValue): string {
  const act = value.act as { verb?: string } | undefined;
  const words = ["title", "name", "label", "word", "fault", "demand", "sentence", "quote", "text"]
    .map((field) => value[field])
    .find((field): field is string => typeof field === "string" && field.trim() !== "");
  const said = words ?? act?.verb;
  if (said === undefined) return `${SINGULAR[kind]} ${value.id}`;
  const line = said.trim().replace(/\s+/g, " ");
  return `${SINGULAR[kind]} “${line.length > 60 ? `${line.slice(0, 59).trimEnd()}…` : line}”`;
}

/** "a, b and 3 more": at most three things named. */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 3);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(", ")} and ${more} more`;
  return shown.length < 2 ? shown.join("") : `${shown.slice(0, -1).join(", ")} and ${shown.at(-1)}`;
}
