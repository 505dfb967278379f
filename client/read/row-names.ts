/** client/read/row-names.ts - what the rows of this window are called, for everything that is said in words. */
import { computed } from "@preact/signals";
import { namesOf } from "../../shared/drill/names.ts";
import type { Names } from "../../shared/drill/words.ts";
import { rowsNow } from "../state/rows.ts";

export const names = computed<Names>(() => namesOf(rowsNow.value));

/** Words short enough for a sentence of the history or a heading. */
export function short(words: string, most = 60): string {
  return words.length > most ? `${words.slice(0, most - 1).trimEnd()}…` : words;
}
