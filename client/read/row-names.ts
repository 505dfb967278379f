/** client/read/row-names.ts - what the rows of this window are called, for everything that is said in words. */
import { computed } from "@preact/signals";
import type { Edit } from "../../schema/change.ts";
import { namesOf } from "../../shared/drill/names.ts";
import type { Names } from "../../shared/drill/words.ts";
import { rowsNow } from "../state/rows.ts";

export const names = computed<Names>(() => namesOf(rowsNow.value));

/** Names that know the rows a change is about to make, too. */
export function namesWith(edits: readonly Edit[]): Names {
  return (kind, id) => {
    const made = edits.find((edit) => edit.do === "create" && edit.kind === kind && edit.value.id === id);
    return made?.do === "create" && typeof made.value.name === "string" ? made.value.name : names.value(kind, id);
  };
}

/** Words short enough for a sentence of the history or a heading. */
export function short(words: string, most = 60): string {
  return words.length > most ? `${words.slice(0, most - 1).trimEnd()}…` : words;
}
