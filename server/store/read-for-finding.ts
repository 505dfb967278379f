/** server/store/read-for-finding.ts - what searching needs of the store besides whole rows: current texts without their
 *  documents, where things have their words, and which kinds have changed.
 *  May import: schema types, siblings in server/store. */
import type { Markable } from "../../schema/mark.ts";
import type { Kind } from "../../schema/record.ts";
import type { Store } from "./open-store.ts";

export interface CurrentText {
  id: string;
  passage: string;
  layer: string;
  text: string;
}

/** The current text of every passage in the newest revision of each layer, of all works, in no order. */
export function readCurrentTexts(store: Store): CurrentText[] {
  return store
    .prepare(
      `SELECT t."id", t."passage", r."layer", t."text" FROM "passage_texts" t
       JOIN "revisions" r ON r."id" = t."revision"
       WHERE NOT EXISTS (
           SELECT 1 FROM "revisions" n WHERE n."layer" = r."layer" AND (n."rank", n."id") > (r."rank", r."id"))
         AND NOT EXISTS (
           SELECT 1 FROM "passage_texts" l
           WHERE l."passage" = t."passage" AND l."revision" = t."revision" AND l."number" > t."number")`,
    )
    .all() as CurrentText[];
}

/** The passage where a thing has its first words, or null when it has none. Its own words come before evidence, and words
 *  that are there before lost ones. */
export function readFirstPlace(store: Store, of: Markable, target: string): string | null {
  const place = store
    .prepare(
      `SELECT a."passage" FROM "marks" m
       JOIN "anchors" a ON a."mark" = m."id" AND a."is" = 'text'
       JOIN "passages" p ON p."id" = a."passage"
       WHERE m."of" = ? AND m."target" = ?
       ORDER BY m."as" <> 'words', a."fate" = 'lost', p."rank", p."id", a."from" LIMIT 1`,
    )
    .pluck()
    .get(of, target);
  return (place as string | undefined) ?? null;
}

/** The first passage of an exercise, or of a work; null when there is none. */
export function readFirstPassage(store: Store, of: { exercise: string } | { work: string }): string | null {
  const [field, id] = "exercise" in of ? ["exercise", of.exercise] : ["work", of.work];
  const passage = store
    .prepare(`SELECT "id" FROM "passages" WHERE "${field}" = ? ORDER BY "rank", "id" LIMIT 1`)
    .pluck()
    .get(id);
  return (passage as string | undefined) ?? null;
}

/** Kinds of which a row was made, changed or removed after the change of that number. */
export function kindsTouchedSince(store: Store, change: number): Kind[] {
  return store.prepare(`SELECT DISTINCT "kind" FROM "change_rows" WHERE "change" > ?`).pluck().all(change) as Kind[];
}
