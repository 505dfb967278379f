/** server/store/mentions.ts - the index of ids inside nested values: kept with the rows, asked for what needs a row.
 *  May import: schema types, siblings in server/store. Keeps rule S14 (server/store/RULES.md). */
import type { Kind } from "../../schema/record.ts";
import type { RowValue } from "./field-table.ts";
import { type NamedId, namedIds, slotKindThrough } from "./named-ids.ts";
import type { Store } from "./open-store.ts";
import { getRow, type StoredRow } from "./row-store.ts";

/** Every id the row names; what a reading gives to a slot is read by the kind of that slot, so the row must be stored
 *  together with what it addresses. */
export function namedBy(store: Store, kind: Kind, value: RowValue): NamedId[] {
  return namedIds(
    kind,
    value,
    slotKindThrough((to, id) => getRow(store, to, id)?.value ?? null),
  );
}

/** Writes the row's mentions anew; null when the row is gone. */
export function indexMentions(store: Store, kind: Kind, id: string, named: readonly NamedId[] | null): void {
  store.prepare('DELETE FROM "mentions" WHERE "kind" = ? AND "id" = ?').run(kind, id);
  const insert = store.prepare(
    'INSERT OR IGNORE INTO "mentions" ("kind", "id", "to_kind", "to_id") VALUES (?, ?, ?, ?)',
  );
  for (const { to, id: toId, hold } of named ?? []) {
    if (hold === "nested") insert.run(kind, id, to, toId);
  }
}

/** Rows that mention the row (kind, id) inside a nested value; of one kind, or of all. */
export function mentioning(store: Store, kind: Kind, id: string, from?: Kind): StoredRow[] {
  const rows = store
    .prepare(
      `SELECT "kind", "id" FROM "mentions" WHERE "to_kind" = @kind AND "to_id" = @id AND (@from IS NULL OR "kind" = @from)
       ORDER BY "kind", "id"`,
    )
    .all({ kind, id, from: from ?? null }) as { kind: Kind; id: string }[];
  return rows.flatMap((row) => getRow(store, row.kind, row.id) ?? []);
}

/** All mentions as sorted lines; for the test that rebuilds the index from the rows. */
export function mentionLines(store: Store): string[] {
  const lines = store.prepare(`SELECT "kind" || ' ' || "id" || ' ' || "to_kind" || ' ' || "to_id" FROM "mentions"`);
  return (lines.pluck().all() as string[]).sort();
}
