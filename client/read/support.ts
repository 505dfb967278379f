/** client/read/support.ts - which warrant a value begins with: stated by the words of its own mark, else of the step it is
 *  entered in; implied when it was taken over; supplied where there are no words. */
import type { Edit } from "../../schema/change.ts";
import { MARKABLE, type Markable } from "../../schema/mark.ts";
import type { Kind } from "../../schema/record.ts";
import type { Basis, Support, Warrant } from "../../schema/slot.ts";
import { all, one } from "../state/rows.ts";
import { newId } from "../state/write.ts";
import { selected } from "./focus.ts";
import { markEdits, quoteOf } from "./marking.ts";

/** Marks whose words may state something of this row: its own, else those of what an action belongs to. */
export function wordsFor(kind: Kind, id: string): string[] {
  const own = all("marks").filter((mark) => mark.of === kind && mark.target === id && mark.as === "words");
  if (own.length > 0) return own.map((mark) => mark.id);
  const action = kind === "actions" ? one("actions", id) : null;
  return action ? wordsFor(action.ownerKind, action.owner) : [];
}

const words = (mark: string): Basis => ({ is: "words", mark });
export const entered = (marks: readonly string[]): Support =>
  marks.length > 0 ? { warrant: "stated", basis: marks.map(words) } : { warrant: "supplied", basis: [] };
export const inherited = (marks: readonly string[]): Support =>
  marks.length > 0 ? { warrant: "implied", basis: marks.map(words) } : { warrant: "supplied", basis: [] };

export const isWords = (basis: Basis) => basis.is === "words" || basis.is === "picture";

/** The support under another warrant; null when it would be stated by nothing. What is supplied rests on no words. */
export function withWarrant(support: Support, warrant: Warrant, marks: readonly string[]): Support | null {
  if (warrant === "supplied") return { warrant, basis: support.basis.filter(({ is }) => is !== "words") };
  const basis = support.basis.some(isWords) ? support.basis : [...marks.map(words), ...support.basis];
  return warrant === "stated" && !basis.some(isWords) ? null : { warrant, basis };
}

/** The selected words as something a row can rest on: their edits and the basis; null when none are selected. */
export function selectedBasis(
  kind: Kind,
  id: string,
  as: "words" | "for" | "against" = "words",
): { basis: Basis; edits: Edit[]; quote: string } | null {
  const picked = selected.value;
  if (picked === null || !isMarkable(kind)) return null;
  const mark = newId();
  return { basis: words(mark), edits: markEdits(picked, kind, id, mark, as).edits, quote: quoteOf(picked) };
}

export function isMarkable(kind: Kind): kind is Markable & Kind {
  return (MARKABLE as readonly string[]).includes(kind);
}
