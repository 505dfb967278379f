/** server/store/replay.ts - the rows as the log alone tells them: the proof that nothing was written beside it.
 *  May import: schema types, siblings in server/store. Keeps rule S11 (server/store/RULES.md). */
import type { Kind, Rows } from "../../schema/record.ts";
import type { RowValue } from "./field-table.ts";
import { allEdits } from "./log.ts";
import type { Store } from "./open-store.ts";
import { sameJson } from "./row-codec.ts";
import { gather, type StoredRow } from "./row-store.ts";

/** Every row from an empty store through all changes, by kind and id as `allRows` gives them. Throws Error naming the
 *  row where the log does not follow on itself. */
export function replay(store: Store): Rows {
  const rows = new Map<string, StoredRow>();
  for (const { kind, id, base, version, before, after } of allEdits(store)) {
    const key = `${kind} ${id}`;
    const now = rows.get(key);
    if (!sameJson(now?.value ?? null, before) || (now?.version ?? 0) !== base) {
      throw new Error(
        `The log does not follow on itself at ${key}, version ${version}: what it names as before is not.`,
      );
    }
    if (after === null) rows.delete(key);
    else rows.set(key, { kind, version, value: after as RowValue });
  }
  return gather([...rows.values()].sort((a, b) => byKindAndId(a, b)));
}

function byKindAndId(a: { kind: Kind; value: RowValue }, b: { kind: Kind; value: RowValue }): number {
  if (a.kind !== b.kind) return a.kind < b.kind ? -1 : 1;
  return a.value.id < b.value.id ? -1 : 1;
}
