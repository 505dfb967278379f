/** client/import/chosen-range.ts - the passages between two references, as the server will take them.
 *  May import: schema types, shared/cite. Both ends are counted; a first place alone takes all that lies in it. */
import type { ImportedPassage } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import { containsReference } from "../../shared/cite/order-references.ts";
import { parseReference } from "../../shared/cite/parse-reference.ts";

export type Chosen = { ok: true; passages: ImportedPassage[] } | { ok: false; sentence: string };

export function chosenRange(passages: ImportedPassage[], from: string, to: string): Chosen {
  if (from.trim() === "" && to.trim() === "") return { ok: true, passages };
  const start = from.trim() === "" ? null : placesAt(passages, from);
  if (start !== null && "sentence" in start) return { ok: false, sentence: start.sentence };
  if (to.trim() === "") return { ok: true, passages: (start?.at ?? []).flatMap((index) => passages[index] ?? []) };
  const end = placesAt(passages, to);
  if ("sentence" in end) return { ok: false, sentence: end.sentence };
  const [first = 0, last = 0] = [start?.at[0] ?? 0, end.at.at(-1)];
  if (last < first) return { ok: false, sentence: `“${from}” stands after “${to}”. Give the first place first.` };
  return { ok: true, passages: passages.slice(first, last + 1) };
}

/** Indexes of the passages that lie at a reference; at least one. */
function placesAt(passages: readonly ImportedPassage[], label: string): { at: number[] } | { sentence: string } {
  const read = parseReference(label);
  if (!read.ok) return { sentence: read.sentence };
  const at = passages.flatMap((passage, index) => (lies(passage, read.reference) ? [index] : []));
  return at.length > 0 ? { at } : { sentence: `Nothing of this text stands at “${label.trim()}”.` };
}

function lies({ references }: ImportedPassage, wanted: Reference): boolean {
  return references.some((reference) => containsReference(wanted, reference));
}
