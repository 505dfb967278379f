/** shared/cite/select-passages.ts - chooses a range of passages of an imported text by their references, for the preview in
 *  the window and for what is stored alike.
 *  May import: types of schema, siblings. Keeps rule C27 (shared/cite/RULES.md): "7" is all of chapter 7, "7.13-7.17" or
 *  from and to a range, both ends counted. */
import type { ImportedPassage, ImportedText, ImportRefusal } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import { formatReference } from "./format-reference.ts";
import { containsReference } from "./order-references.ts";
import { parseReference } from "./parse-reference.ts";

export type SelectResult = { ok: true; passages: ImportedPassage[] } | { ok: false; refusal: ImportRefusal };

const MOST_NAMED = 12;

/** What there is, in short: the first and last reference, and the divisions. */
const whatThereIs = (text: ImportedText): string => {
  const first = text.passages[0]?.references[0];
  const last = text.passages.at(-1)?.references[0];
  if (first === undefined || last === undefined) return "The text has no passages.";
  const divisions = [...new Set(text.passages.flatMap(({ division }) => (division?.label ? [division.label] : [])))];
  const named = divisions.slice(0, MOST_NAMED).join(", ") + (divisions.length > MOST_NAMED ? " …" : "");
  const range = `The text goes from ${formatReference(first)} to ${formatReference(last)}`;
  return divisions.length > 1 ? `${range}; its divisions are ${named}.` : `${range}.`;
};

const isWithin = (wanted: Reference, passage: ImportedPassage): boolean =>
  passage.references.some((reference) => containsReference(wanted, reference));

const unresolved = (label: string, text: ImportedText): ImportRefusal => ({
  code: "selection_not_found",
  sentence: `Expected a reference of “${text.title}”, but nothing stands at “${label}”. ${whatThereIs(text)} Choose from these.`,
});

/** Indexes of the first and last passage at a label, or the refusal. */
const span = (label: string, text: ImportedText): { first: number; last: number } | ImportRefusal => {
  const read = parseReference(label);
  if (!read.ok) return { code: "selection_unreadable", sentence: `${read.sentence} ${whatThereIs(text)}` };
  const first = text.passages.findIndex((passage) => isWithin(read.reference, passage));
  const last = text.passages.findLastIndex((passage) => isWithin(read.reference, passage));
  if (first < 0) return unresolved(label, text);
  return { first, last };
};

/** The passages from the first at `from` to the last at `to`, in the order of the text; all of them without labels, those
 *  at `from` (which may be a range itself) without `to`. */
export const selectPassages = (text: ImportedText, from?: string, to?: string): SelectResult => {
  if (from === undefined && to === undefined) return { ok: true, passages: text.passages };
  const start = from === undefined ? { first: 0, last: text.passages.length - 1 } : span(from, text);
  if ("code" in start) return { ok: false, refusal: start };
  if (from !== undefined && to === undefined) {
    const read = parseReference(from);
    const passages = text.passages.filter((passage) => read.ok && isWithin(read.reference, passage));
    const missing = missingEnd(read.ok ? read.reference : null, text);
    return missing === null ? { ok: true, passages } : { ok: false, refusal: unresolved(missing, text) };
  }
  const end = span(to ?? "", text);
  if ("code" in end) return { ok: false, refusal: end };
  if (end.last < start.first) {
    const sentence = `“${from}” stands after “${to}” in “${text.title}”. Give the first place first. ${whatThereIs(text)}`;
    return { ok: false, refusal: { code: "selection_backwards", sentence } };
  }
  return { ok: true, passages: text.passages.slice(start.first, end.last + 1) };
};

/** The end of a written range at which nothing stands, or null. A range must not promise more than there is. */
const missingEnd = (wanted: Reference | null, text: ImportedText): string | null => {
  if (wanted?.kind !== "section" || wanted.to === undefined) return null;
  for (const ends of [wanted.from, wanted.to]) {
    const end: Reference = { kind: "section", from: ends };
    if (!text.passages.some((passage) => isWithin(end, passage))) return formatReference(end);
  }
  return null;
};
