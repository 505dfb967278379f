/** server/store/read-row.ts - one row, or all rows of a kind, as they are handed out.
 *  May import: schema types, siblings in server/store. */
import type { Kind, Row } from "../../schema/record.ts";
import type { Store } from "./open-store.ts";
import { getRow, rowsWhere } from "./row-store.ts";

/** The row, or null when there is none. */
export function readRow<K extends Kind>(store: Store, kind: K, id: string): Row<K> | null {
  return getRow(store, kind, id) as Row<K> | null;
}

/** All rows of the kind, by id. */
export function readRows<K extends Kind>(store: Store, kind: K): Row<K>[] {
  return rowsWhere(store, kind, {}) as unknown as Row<K>[];
}
