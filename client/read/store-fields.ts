/** client/read/store-fields.ts - writing some fields of one row, without ever writing over what another window wrote.
 *  `base` is the version the writer saw when the typing began; left out, it is the one this window has now. */
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { one } from "../state/rows.ts";
import { conflict, set, write } from "../state/write.ts";

/** Fields of a row to set; null takes away one that may be missing. */
export type Fields<K extends Kind> =
  RecordOf<K> extends infer R ? (R extends unknown ? { [F in keyof R]?: R[F] | null } : never) : never;

export function fieldsEdit<K extends Kind>(kind: K, id: string, fields: Fields<K>, base?: number): Edit {
  const edit = set(kind, id, fields as unknown as Partial<RecordOf<K>>);
  return base === undefined ? edit : ({ ...edit, base } as Edit);
}

/** True when stored. A row that went meanwhile is a conflict, so that what was typed is shown and not lost. */
export function storeFields<K extends Kind>(
  kind: K,
  id: string,
  fields: Fields<K>,
  why: string,
  base?: number,
  also: Edit[] = [],
): Promise<boolean> {
  return storeEdits([...also, fieldsEdit(kind, id, fields, base)], why);
}

export async function storeEdits(edits: Edit[], why: string): Promise<boolean> {
  const gone = edits.flatMap((edit) =>
    edit.do === "set" && one(edit.kind, edit.id) === null
      ? [{ kind: edit.kind, id: edit.id, field: "", base: null, theirs: null, yours: edit.fields, who: "", when: "" }]
      : [],
  );
  if (gone.length > 0) {
    conflict.value = { why, edits, fields: gone };
    return false;
  }
  return write(edits, why);
}
