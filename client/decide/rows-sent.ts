/** client/decide/rows-sent.ts - rows as they go to the counting thread: all of them once, then only what changed.
 *  May import: schema types. Rows are never changed in place, so a row that is the same object is the same row. */
import type { Kind, Row, Rows } from "../../schema/record.ts";

export interface RowsSent {
  set: Row[];
  removed: { kind: Kind; id: string }[];
}

type Held = ReadonlyMap<Kind, ReadonlyMap<string, Row>>;
export const NOTHING_HELD: Held = new Map();

/** What the other side has to be told to come from `held` to `rows`; null when that is nothing. */
export function rowsToSend(held: Held, rows: Rows): { sent: RowsSent | null; held: Held } {
  const next = new Map<Kind, ReadonlyMap<string, Row>>();
  const sent: RowsSent = { set: [], removed: [] };
  for (const [kind, list] of Object.entries(rows) as [Kind, Row[]][]) {
    const before = held.get(kind);
    const now = new Map(list.map((row) => [row.value.id, row]));
    for (const [id, row] of now) if (before?.get(id) !== row) sent.set.push(row);
    next.set(kind, now);
  }
  for (const [kind, before] of held) {
    for (const id of before.keys()) if (!next.get(kind)?.has(id)) sent.removed.push({ kind, id });
  }
  return { sent: sent.set.length + sent.removed.length === 0 ? null : sent, held: next };
}

/** What was sent taken in. */
export function withSent(held: Held, { set, removed }: RowsSent): Held {
  const next = new Map(held);
  const fresh = new Map<Kind, Map<string, Row>>();
  const shelf = (kind: Kind): Map<string, Row> => {
    const known = fresh.get(kind) ?? new Map(next.get(kind));
    fresh.set(kind, known);
    next.set(kind, known);
    return known;
  };
  for (const row of set) shelf(row.kind).set(row.value.id, row);
  for (const { kind, id } of removed) shelf(kind).delete(id);
  return next;
}

export function rowsOf(held: Held): Rows {
  const rows: Record<string, Row[]> = {};
  for (const [kind, shelf] of held) rows[kind] = [...shelf.values()];
  return rows as Rows;
}
