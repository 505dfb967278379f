/** server/demo/load.ts - puts the invented book into a store that nothing was ever written to.
 *  May import: schema types, server/store, siblings. */
import type { Written } from "../../schema/api.ts";
import type { Outcome } from "../errors.ts";
import { putAttachment, readHistory, type Store, writeChange } from "../store/index.ts";
import { demoBook } from "./book.ts";
import { demoId } from "./demo-id.ts";

/** Well past the rows' own ids, which count up from 1. */
const CHANGE = demoId(1_000_000);
const GROUP = demoId(1_000_001);

/** Writes the book as one change that can be undone whole. Null when the store has a history already: then nothing is
 *  written, not even where the book was taken out again. `now` is ISO 8601 in UTC. */
export function loadDemo(store: Store, now: string): Outcome<Written> | null {
  if (readHistory(store, { limit: 1 }).length > 0) return null;
  const { edits, files } = demoBook();
  for (const file of files) putAttachment(store, file);
  const request = {
    id: CHANGE,
    who: "Passagework",
    why: "The invented book that comes with Passagework",
    sitting: null,
    group: GROUP,
    edits,
  };
  return writeChange(store, request, { now });
}
