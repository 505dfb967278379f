/** server/publish/tei/pointers.ts - the names by which parts of the edition point at each other.
 *  May import: schema types. An xml:id is the kind of a row with its id: the same row has the same name in every export. */
import type { Kind } from "../../../schema/record.ts";

const NAMES: { readonly [K in Kind]?: string } = {
  exercises: "exercise",
  passages: "passage",
  passageTexts: "text",
  layers: "layer",
  witnesses: "witness",
  elements: "element",
  actions: "action",
  standings: "standing",
  cruxes: "crux",
  readings: "reading",
  questions: "question",
  terms: "term",
  senses: "sense",
  notes: "note",
  holds: "hold",
  movements: "movement",
  grounds: "ground",
  stations: "station",
  threats: "threat",
  objects: "object",
  rules: "rule",
  faults: "fault",
  sources: "source",
  regions: "region",
  pictures: "picture",
  anchors: "span",
};

/** The xml:id of a row. Throws RangeError for a kind that is not part of the edition. */
export function nameOf(kind: Kind, id: string): string {
  const name = NAMES[kind];
  if (name === undefined) throw new RangeError(`Rows of the kind ${kind} have no name in the edition.`);
  return `${name}-${id}`;
}

export const pointer = (name: string): string => `#${name}`;

/** Several pointers in one attribute; null for none. */
export function pointers(names: readonly string[]): string | null {
  return names.length === 0 ? null : names.map(pointer).join(" ");
}

/** A language as xml:lang takes it; null where it has another form. Empty: not known. */
export function languageAttribute(language: string): string | null {
  return language === "" || /^[a-zA-Z]{1,8}(-[a-zA-Z0-9]{1,8})*$/.test(language) ? language : null;
}

/** A word as TEI takes one (no blanks, no control characters): blanks become hyphens. */
export function tokenOf(words: string): string {
  const token = words.trim().replace(/[\p{C}\p{Z}]+/gu, "-");
  return token === "" ? "-" : token;
}
