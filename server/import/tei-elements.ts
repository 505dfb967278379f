/** server/import/tei-elements.ts - what becomes of each TEI element, as tables: blocks, marks, left out, passed through.
 *  May import: siblings (types). Everything that is in no table is passed through: its words stay, its tag is reported. */
import type { BlockKind, TextMark } from "./passage-builder.ts";

/** Elements that stand as blocks of their own. */
export const BLOCK_KINDS: ReadonlyMap<string, BlockKind> = new Map<string, BlockKind>([
  ...(
    [
      "p",
      "ab",
      "item",
      "row",
      "speaker",
      "salute",
      "signed",
      "dateline",
      "opener",
      "closer",
      "trailer",
      "byline",
    ] as const
  ).map((name) => [name, "paragraph"] as const),
  ["head", "heading"],
  ["l", "verse"],
]);

/** Elements that hold blocks and say nothing more; their tags are not worth a report. */
export const CONTAINERS: ReadonlySet<string> = new Set([
  "body",
  "div",
  "div0",
  "div1",
  "div2",
  "div3",
  "div4",
  "div5",
  "div6",
  "div7",
  "lg",
  "list",
  "table",
  "sp",
  "cell",
  "corr",
  "reg",
  "expan",
  "ex",
]);

/** What counts as one paragraph where paragraphs are counted. */
export const COUNTED_UNITS: ReadonlySet<string> = new Set([
  "p",
  "ab",
  "lg",
  "l",
  "list",
  "table",
  "sp",
  "opener",
  "closer",
  "salute",
  "signed",
  "trailer",
  "byline",
]);

export const MARKS: ReadonlyMap<string, TextMark> = new Map<string, TextMark>([
  ["hi", { type: "emphasis" }],
  ["emph", { type: "emphasis" }],
  ["supplied", { type: "supplied" }],
  ["unclear", { type: "unclear" }],
]);

/** Elements whose words are no words of the text, with the reason that is reported. */
export const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ["front", "Front matter is not cited with the text; bring it in as a text of its own if it is needed."],
  ["back", "Back matter is not cited with the text; bring it in as a text of its own if it is needed."],
  ["del", "The witness deletes these words."],
  ["surplus", "The edition marks these words as superfluous."],
  ["fw", "Running heads and catchwords belong to the page, not to the text."],
  ...["figure", "graphic", "formula", "notatedMusic", "media", "binaryObject", "svg", "math"].map(
    (name) => [name, "Only words are read. Add the picture to the passage by hand if it is needed."] as const,
  ),
  ["egXML", "It is an example of encoding, not text."],
  ["am", "The mark of an abbreviation that is written out beside it."],
  ["witDetail", "Details of a witness are not read."],
  ["listApp", "An apparatus that stands apart from its words is not read."],
  ...[
    "index",
    "interp",
    "interpGrp",
    "span",
    "spanGrp",
    "certainty",
    "precision",
    "respons",
    "fs",
    "fLib",
    "link",
    "linkGrp",
    "listAnnotation",
    "annotation",
    "metamark",
    "listTranspose",
    "teiHeader",
    "standOff",
    "timeline",
  ].map((name) => [name, "It says something about the text and is no part of its words."] as const),
]);

/** Inside <choice>, what the edition reads; the first that is there is kept. */
export const CHOSEN: readonly string[] = ["corr", "expan", "ex", "reg", "unclear", "seg"];

/** TEI P4 writes the other reading into an attribute: which attribute holds what the edition reads. */
export const CHOSEN_IN_ATTRIBUTE: ReadonlyMap<string, string> = new Map([
  ["sic", "corr"],
  ["abbr", "expan"],
  ["orig", "reg"],
]);

/** ... and which holds what the edition does not read. */
export const OTHER_IN_ATTRIBUTE: ReadonlyMap<string, string> = new Map([
  ["corr", "sic"],
  ["expan", "abbr"],
  ["reg", "orig"],
]);

export const WHY_OTHER_READING = "The edition reads otherwise; its own reading was kept.";
export const WHY_TAG_ONLY = "Its words are kept; the tag itself is not.";
