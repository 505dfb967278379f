/** client/state/rows.ts - the rows this window has: those of the open exercise and the shared things of its work.
 *  Replaced as a whole, never changed in place, so that what is derived from them knows when to be made again. */
import { computed, signal } from "@preact/signals";
import type { Written } from "../../schema/api.ts";
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf, Row, Rows } from "../../schema/record.ts";
import { compareRanked } from "../../shared/rank.ts";

type Shelf = ReadonlyMap<string, Row>;
const shelves = signal<ReadonlyMap<Kind, Shelf>>(new Map());
/** Number of the newest change these rows know of. */
export const rowsAt = signal(0);

export function replaceRows(rows: Rows, at: number): void {
  const next = new Map<Kind, Shelf>();
  for (const [kind, list] of Object.entries(rows) as [Kind, Row[]][]) {
    next.set(kind, new Map(list.map((row) => [row.value.id, row])));
  }
  shelves.value = next;
  rowsAt.value = at;
}

/** Takes in what a write answered: the rows as they are now, and those that went. */
export function absorb(written: Written): void {
  const next = new Map(shelves.value);
  const shelfToChange = (kind: Kind) => {
    const shelf = new Map(next.get(kind));
    next.set(kind, shelf);
    return shelf;
  };
  for (const row of written.rows) shelfToChange(row.kind).set(row.value.id, row);
  for (const { kind, id } of written.removed) shelfToChange(kind).delete(id);
  shelves.value = next;
  rowsAt.value = Math.max(rowsAt.value, written.change);
}

/** Shows edits before they are stored, so that what is entered next is made from them. Versions stay as they are: the
 *  answer brings the new ones. */
export function showAhead(edits: readonly Edit[]): void {
  const next = new Map(shelves.value);
  for (const edit of edits) {
    const shelf = new Map(next.get(edit.kind));
    next.set(edit.kind, shelf);
    if (edit.do === "create") {
      const value = edit.value as unknown as Row["value"];
      shelf.set(value.id, { kind: edit.kind, version: 0, value });
    } else if (edit.do === "remove") shelf.delete(edit.id);
    else {
      const row = shelf.get(edit.id);
      if (row === undefined) continue;
      const value = { ...row.value, ...edit.fields } as unknown as Row["value"];
      shelf.set(edit.id, { ...row, value });
    }
  }
  shelves.value = next;
}

/** All values of a kind, in no order. Reading it inside a component keeps that component current. */
export function all<K extends Kind>(kind: K): RecordOf<K>[] {
  return [...(shelves.value.get(kind)?.values() ?? [])].map((row) => row.value as RecordOf<K>);
}

/** All values of a kind that has a rank, in order. */
export function ranked<K extends Kind>(kind: K): RecordOf<K>[] {
  return all(kind).sort((a, b) => compareRanked(a as unknown as Ranked, b as unknown as Ranked));
}
type Ranked = { rank: string; id: string };

export function one<K extends Kind>(kind: K, id: string | null | undefined): RecordOf<K> | null {
  if (id === null || id === undefined) return null;
  return (shelves.value.get(kind)?.get(id)?.value as RecordOf<K> | undefined) ?? null;
}

/** The version this window has of a row; 0 when it has none. */
export function versionOf(kind: Kind, id: string): number {
  return shelves.value.get(kind)?.get(id)?.version ?? 0;
}

/** The rows as the computing rooms take them. */
export const rowsNow = computed<Rows>(() => {
  const rows: Record<string, Row[]> = {};
  for (const [kind, shelf] of shelves.value) rows[kind] = [...shelf.values()];
  return rows as Rows;
});
