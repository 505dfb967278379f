/** server/store/read-texts.ts - the passage texts that came after one of them, for a writer who was overtaken.
 *  May import: schema types, siblings in server/store. */
import type { Row } from "../../schema/record.ts";
import type { Store } from "./open-store.ts";
import { rowsWhere } from "./row-store.ts";

/** Texts of the passage in the revision with a number above `after`, oldest first; empty when none came. */
export function readTextsAfter(store: Store, passage: string, revision: string, after: number): Row<"passageTexts">[] {
  const rows = rowsWhere(store, "passageTexts", { passage, revision }) as unknown as Row<"passageTexts">[];
  return rows.filter(({ value }) => value.number > after).sort((a, b) => a.value.number - b.value.number);
}
