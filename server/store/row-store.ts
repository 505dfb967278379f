/** server/store/row-store.ts - single rows of every kind: get, put, take away, and find by a field.
 *  May import: siblings in server/store. No checks here: the write function makes them. */
import type { Kind, Row, Rows } from "../../schema/record.ts";
import { KINDS, REFERENCES, TIES } from "../../schema/record.ts";
import { type RowValue, snakeCase, tableOf } from "./field-table.ts";
import type { Store } from "./open-store.ts";
import { fromColumns, type SqlRow, toColumns } from "./row-codec.ts";

/** A row whose kind is known only at run time. */
export interface StoredRow {
  kind: Kind;
  version: number;
  value: RowValue;
}

export function getRow(store: Store, kind: Kind, id: string): StoredRow | null {
  const row = store.prepare(`SELECT * FROM "${tableOf(kind).table}" WHERE "id" = ?`).get(id);
  return row === undefined ? null : stored(kind, row as SqlRow);
}

export function hasRow(store: Store, kind: Kind, id: string): boolean {
  return store.prepare(`SELECT 1 FROM "${tableOf(kind).table}" WHERE "id" = ?`).get(id) !== undefined;
}

/** Makes the row or writes over it. */
export function putRow(store: Store, { kind, version, value }: StoredRow): void {
  const { table, fields } = tableOf(kind);
  const columns = fields.map(({ column }) => `"${column}"`);
  const updates = columns.map((column) => `${column} = excluded.${column}`);
  const sql = `INSERT INTO "${table}" (${columns.join(", ")}, "row_version") VALUES (${columns.map(() => "?").join(", ")}, ?)
    ON CONFLICT ("id") DO UPDATE SET ${updates.join(", ")}, "row_version" = excluded."row_version"`;
  store.prepare(sql).run(...toColumns(kind, value), version);
}

export function deleteRow(store: Store, kind: Kind, id: string): void {
  store.prepare(`DELETE FROM "${tableOf(kind).table}" WHERE "id" = ?`).run(id);
}

/** Rows whose fields have the given values (null: none), ordered by id. Throws TypeError for a field the kind has not. */
export function rowsWhere(store: Store, kind: Kind, match: Record<string, string | number | null>): StoredRow[] {
  const { table, fields } = tableOf(kind);
  const tests = Object.keys(match).map((name) => {
    if (!fields.some((field) => field.name === name)) throw new TypeError(`${kind} has no field ${name}.`);
    return `"${snakeCase(name)}" ${match[name] === null ? "IS" : "="} ?`;
  });
  const where = tests.length === 0 ? "" : `WHERE ${tests.join(" AND ")}`;
  const rows = store.prepare(`SELECT * FROM "${table}" ${where} ORDER BY "id"`).all(...Object.values(match));
  return (rows as SqlRow[]).map((row) => stored(kind, row));
}

/** Every row of the store by kind; kinds without rows are not listed. Kinds by name, rows by id. */
export function allRows(store: Store): Rows {
  return gather([...KINDS].sort().flatMap((kind) => rowsWhere(store, kind, {})));
}

/** Rows of mixed kinds by kind, each list in the order given. */
export function gather(rows: Iterable<StoredRow>): Rows {
  const byKind: { [K in Kind]?: StoredRow[] } = {};
  for (const row of rows) {
    const list = byKind[row.kind] ?? [];
    byKind[row.kind] = list;
    list.push(row);
  }
  return byKind as Rows;
}

/** A stored row as the type that is handed out. The value was checked when it was written. */
export function asRow(row: StoredRow): Row {
  return row as unknown as Row;
}

/** Rows that name the row (kind, id) in a top-level field or by a tie, each with the field that names it. */
export function rowsNaming(store: Store, kind: Kind, id: string): { row: StoredRow; field: string; whole: boolean }[] {
  const found: { row: StoredRow; field: string; whole: boolean }[] = [];
  for (const from of KINDS) {
    for (const [field, reference] of Object.entries(REFERENCES[from] ?? {})) {
      if (reference.to !== kind) continue;
      for (const row of rowsWhere(store, from, { [field]: id })) found.push({ row, field, whole: reference.whole });
    }
    const tie = TIES[from];
    if (tie === undefined) continue;
    for (const row of rowsWhere(store, from, { [tie.kind]: kind, [tie.id]: id })) {
      found.push({ row, field: tie.id, whole: true });
    }
  }
  return found;
}

function stored(kind: Kind, row: SqlRow): StoredRow {
  return { kind, version: Number(row.row_version), value: fromColumns(kind, row) };
}
