/** server/publish/papers/passage-texts.ts - the words of a passage in each text that is read now.
 *  May import: schema types, shared/drill. */
import type { Passage } from "../../../schema/work.ts";
import type { CurrentText, WorkRows } from "../../../shared/drill/exercise-rows.ts";

export type { CurrentText };

/** Translations first, then originals, each by rank. Empty where the passage has no words. */
export function currentTextsOf(book: WorkRows, { id }: Passage): CurrentText[] {
  const order = [
    ...book.layers.filter(({ is }) => is === "translation"),
    ...book.layers.filter(({ is }) => is === "original"),
  ].map((layer) => layer.id);
  return book
    .all("passageTexts")
    .filter((text) => text.passage === id)
    .flatMap((text) => book.currentText(text.id) ?? [])
    .sort((a, b) => order.indexOf(a.layer.id) - order.indexOf(b.layer.id));
}

/** The text it is read in first; null where it has no words. */
export function leadingTextOf(book: WorkRows, passage: Passage): CurrentText | null {
  return currentTextsOf(book, passage)[0] ?? null;
}
