/** tests/editions/small-paper.ts - papers of a few steps, made by hand. */
import { type Line, PAPER_FORMAT, PAPER_FORMAT_VERSION, type Paper } from "../../schema/paper.ts";

export interface SmallStep {
  /** Any short name; the same name is the same element. */
  element: string;
  horse: string;
  left?: string[];
}

export const words = (text: string): Line => [
  { is: "words", text, as: null, language: null, standing: null, to: null },
];

/** An id of the form rows have, the same for the same name. */
export function idOf(name: string): string {
  const hex = [...name]
    .map((letter) => letter.charCodeAt(0).toString(16))
    .join("")
    .padStart(12, "0")
    .slice(-12);
  return `0198c0de-0000-7000-8000-${hex}`;
}

/** Steps are numbered from 1 in the order given. */
export function smallPaper(steps: readonly SmallStep[], note = "Keep to the wall."): Paper {
  const work = idOf("work");
  return {
    format: PAPER_FORMAT,
    formatVersion: PAPER_FORMAT_VERSION,
    kind: "ride sheet",
    size: "A4",
    language: "en",
    title: "Of the turn at the trough",
    work: { id: work, title: "The book of the low court", author: "", invented: true },
    running: { left: "", right: "" },
    edition: null,
    notesAt: "foot",
    blocks: [
      { is: "heading", level: 1, anchor: null, words: words("Of the turn at the trough"), of: [] },
      {
        is: "table",
        as: "steps",
        caption: [],
        columns: [
          { name: "horse", share: 1 },
          { name: "left hand", share: 1 },
        ],
        rows: steps.map(({ element, horse, left = [] }, index) => ({
          anchor: null,
          of: [{ kind: "elements", id: idOf(element) }],
          element: idOf(element),
          shown: String(index + 1),
          cells: [[words(horse)], left.map(words)],
        })),
      },
      { is: "paragraph", as: "body", words: words(note), of: [{ kind: "notes", id: idOf("note") }] },
    ],
    notes: [],
  };
}
