/** server/store/row-codec.ts - a row's value to the columns of its table and back; and how two values are compared.
 *  May import: siblings in server/store. Keeps rules S2 and S3 (server/store/RULES.md). */
import type { Kind } from "../../schema/record.ts";
import { formOf, type RowValue, tableOf } from "./field-table.ts";

export type SqlValue = string | number | null;
export type SqlRow = Record<string, SqlValue>;

/** Values for the columns of the kind's table, in the order of its fields. A field the row has not is NULL. */
export function toColumns(kind: Kind, value: RowValue): SqlValue[] {
  return tableOf(kind).fields.map(({ name, storage }) => {
    const field = value[name];
    if (field === undefined || field === null) return null;
    if (storage === "json") return JSON.stringify(field);
    if (storage === "boolean") return field === true ? 1 : 0;
    return field as string | number;
  });
}

/** The value a stored row holds. It was checked against its schema when it was written and is not checked again
 *  (RULES.md says what that would cost). Throws Error when the row has no form of its kind. */
export function fromColumns(kind: Kind, row: SqlRow): RowValue {
  const form = formOf(kind, row);
  if (form === undefined) throw new Error(`Row ${row.id} of ${kind} has a form that is not known: ${row.is}.`);
  const value: RowValue = { id: String(row.id) };
  for (const { name, column, storage } of tableOf(kind).fields) {
    const rule = form.fields.get(name);
    if (rule === undefined) continue;
    const held = row[column] ?? null;
    if (held === null) {
      if (!rule.optional) value[name] = null;
    } else if (storage === "json") value[name] = JSON.parse(String(held));
    else value[name] = storage === "boolean" ? held === 1 : held;
  }
  return value;
}

/** Whether two JSON values are equal; the order of keys does not count, and a missing key is not null. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((item, index) => sameJson(item, b[index]));
  }
  const left = a as Record<string, unknown>;
  const right = b as Record<string, unknown>;
  const keys = Object.keys(left);
  if (keys.length !== Object.keys(right).length) return false;
  return keys.every((key) => Object.hasOwn(right, key) && sameJson(left[key], right[key]));
}
