/** client/state/outline.ts - the exercises and passages of the whole work the open passage stands in, in the order of the
 *  book. The rows of this window hold one exercise only; these come from the contents. */
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf, Row } from "../../schema/record.ts";
import { contents, passage } from "./passage.ts";
import { versionOf } from "./rows.ts";

function rowsOfWork<K extends "exercises" | "passages" | "layers">(kind: K): Row<K>[] {
  const id = passage.value?.work;
  const found = contents.value?.works.find(({ rows }) => rows.works?.[0]?.value.id === id);
  return (found?.rows[kind] ?? []) as Row<K>[];
}

export const exercisesOfWork = (): Row<"exercises">[] => rowsOfWork("exercises");
export const passagesOfWork = (): Row<"passages">[] => rowsOfWork("passages");

/** An edit of a row that may not be among the rows of this window. */
export function setOutline<K extends Kind>(row: Row<K>, fields: Partial<RecordOf<K>>): Edit {
  const base = Math.max(row.version, versionOf(row.kind, row.value.id));
  return {
    do: "set",
    kind: row.kind,
    id: row.value.id,
    base,
    fields: fields as Extract<Edit, { do: "set" }>["fields"],
  };
}
