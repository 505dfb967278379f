/** shared/drill/names.ts - what rows are called when something else speaks of them.
 *  May import: schema types, siblings in shared/drill. */
import type { Kind, RecordOf, Rows } from "../../schema/record.ts";
import { actWords } from "./act-words.ts";
import type { Names } from "./words.ts";

/** Names of the rows that values can point at. */
export function namesOf(rows: Rows): Names {
  const tables = new Map<Kind, Map<string, RecordOf<Kind>>>();
  const names: Names = (kind, id) => {
    let table = tables.get(kind);
    if (!table) {
      table = new Map((rows[kind] ?? []).map(({ value }) => [value.id, value]));
      tables.set(kind, table);
    }
    const row = table.get(id);
    if (row === undefined) return null;
    if (kind === "actions") return actWords((row as RecordOf<"actions">).act, names, null);
    if ("name" in row && typeof row.name === "string") return row.name;
    if ("title" in row && typeof row.title === "string") return row.title;
    return null;
  };
  return names;
}
