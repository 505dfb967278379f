/** client/decide/words-of.ts - the words of a thing, as they are cited. */
import { computed } from "@preact/signals";
import type { Citation } from "../../schema/drill.ts";
import type { Markable } from "../../schema/mark.ts";
import { citationsOf } from "../../shared/drill/citations.ts";
import { workRows } from "../../shared/drill/exercise-rows.ts";
import { work } from "../state/passage.ts";
import { rowsNow } from "../state/rows.ts";

/** Laid out once for each change of rows. */
const laidRows = computed(() => (work.value ? workRows(rowsNow.value, work.value.id) : null));

/** In the order of the text; empty where it has no words in this window. */
export function citationsFor(of: Markable, id: string): Citation[] {
  return laidRows.value ? citationsOf(laidRows.value, of, id) : [];
}
