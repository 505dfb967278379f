/** server/store/work-of.ts - which work a row belongs to, through the rows it is part of.
 *  May import: schema, siblings in server/store. */
import { type Kind, REFERENCES, TIES } from "../../schema/record.ts";
import type { RowValue } from "./field-table.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import { getRow } from "./row-store.ts";

/** Id of the work, or null when a row on the way is gone. `rows` are looked into for rows that have just been removed. */
export function workOf(store: Store, row: PlannedRow, rows: readonly PlannedRow[]): string | null {
  const value = row.after ?? row.before?.value;
  return value === undefined ? null : workOfValue(store, row.kind, value, rows);
}

function workOfValue(store: Store, kind: Kind, value: RowValue, rows: readonly PlannedRow[]): string | null {
  if (kind === "works") return value.id;
  if (typeof value.work === "string") return value.work;
  const owner = ownerOf(kind, value);
  if (owner === null) return null;
  const [ownerKind, id] = owner;
  const found =
    getRow(store, ownerKind, id)?.value ??
    rows.find((other) => other.kind === ownerKind && other.id === id)?.before?.value;
  return found === undefined ? null : workOfValue(store, ownerKind, found, rows);
}

function ownerOf(kind: Kind, value: RowValue): [Kind, string] | null {
  const tie = TIES[kind];
  if (tie !== undefined) return [value[tie.kind] as Kind, value[tie.id] as string];
  const whole = Object.entries(REFERENCES[kind] ?? {}).find(([, reference]) => reference.whole);
  return whole === undefined ? null : [whole[1].to, value[whole[0]] as string];
}
