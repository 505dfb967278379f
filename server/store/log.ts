/** server/store/log.ts - the log of changes: added to by the write function, never edited, and read back.
 *  May import: schema types, siblings in server/store. Keeps rules S10 and S11 (server/store/RULES.md). */
import type { HistoryEntry } from "../../schema/api.ts";
import type { LoggedChange, LoggedEdit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import type { Store } from "./open-store.ts";

/** A change as it is added: without its number, with what makes a request known again. */
export interface NewChange extends Omit<LoggedChange, "number"> {
  requestHash: string;
  merged: MergedFields[];
  works: readonly string[];
}

export interface MergedFields {
  kind: Kind;
  id: string;
  fields: string[];
}

/** Adds the change and gives its number. */
export function addToLog(store: Store, change: NewChange): number {
  const number = newestNumber(store) + 1;
  store
    .prepare(
      `INSERT INTO "changes" ("number", "id", "when", "who", "why", "sitting", "group", "undoes", "request_hash", "merged")
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(
      number,
      change.id,
      change.when,
      change.who,
      change.why,
      change.sitting,
      change.group,
      change.undoes,
      change.requestHash,
      JSON.stringify(change.merged),
    );
  const insertRow = store.prepare(
    `INSERT INTO "change_rows" ("change", "seq", "kind", "id", "base", "version", "before", "after")
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  for (const [seq, { kind, id, base, version, before, after }] of change.edits.entries()) {
    insertRow.run(number, seq, kind, id, base, version, toJson(before), toJson(after));
  }
  const insertWork = store.prepare('INSERT INTO "change_works" ("work", "change") VALUES (?, ?)');
  for (const work of change.works) insertWork.run(work, number);
  return number;
}

/** Number of the newest change; 0 when there is none. */
export function newestNumber(store: Store): number {
  return Number(store.prepare('SELECT coalesce(max("number"), 0) FROM "changes"').pluck().get());
}

export interface StoredChange extends Omit<LoggedChange, "edits"> {
  requestHash: string;
  merged: MergedFields[];
}

const CHANGE_COLUMNS = `"number", "id", "when", "who", "why", "sitting", "group", "undoes",
  "request_hash" AS "requestHash", "merged"`;

/** The change without its rows, or null. */
export function findChange(store: Store, id: string): StoredChange | null {
  const row = store.prepare(`SELECT ${CHANGE_COLUMNS} FROM "changes" WHERE "id" = ?`).get(id);
  return row === undefined ? null : asChange(row);
}

/** Changes of a group, oldest first. */
export function changesOfGroup(store: Store, group: string): StoredChange[] {
  const rows = store.prepare(`SELECT ${CHANGE_COLUMNS} FROM "changes" WHERE "group" = ? ORDER BY "number"`).all(group);
  return rows.map(asChange);
}

/** Up to `limit` changes numbered below `before` (null: from the newest), newest first; of one work, or of all. */
export function changesBefore(
  store: Store,
  { work, before, limit }: { work: string | null; before: number | null; limit: number },
): StoredChange[] {
  const rows = store
    .prepare(
      `SELECT ${CHANGE_COLUMNS} FROM "changes"
       WHERE (@before IS NULL OR "number" < @before)
         AND (@work IS NULL OR "number" IN (SELECT "change" FROM "change_works" WHERE "work" = @work))
       ORDER BY "number" DESC LIMIT @limit`,
    )
    .all({ before, work, limit });
  return rows.map(asChange);
}

/** All changes that take another back, newest first. */
export function undoingChanges(store: Store): StoredChange[] {
  const rows = store
    .prepare(`SELECT ${CHANGE_COLUMNS} FROM "changes" WHERE "undoes" IS NOT NULL ORDER BY "number" DESC`)
    .all();
  return rows.map(asChange);
}

/** Rows of a change, in the order they were written. */
export function editsOf(store: Store, change: number): LoggedEdit[] {
  return store.prepare(`SELECT * FROM "change_rows" WHERE "change" = ? ORDER BY "seq"`).all(change).map(asEdit);
}

/** How many rows of each kind a change made, changed and removed, by kind. */
export function touchedBy(store: Store, change: number): HistoryEntry["touched"] {
  return store
    .prepare(
      `SELECT "kind", sum("before" IS NULL) AS "made", sum("before" IS NOT NULL AND "after" IS NOT NULL) AS "changed",
         sum("after" IS NULL) AS "removed"
       FROM "change_rows" WHERE "change" = ? GROUP BY "kind" ORDER BY "kind"`,
    )
    .all(change) as HistoryEntry["touched"];
}

/** The passage whose texts or anchors a change touched; null when there is none, or several. */
export function passageTouchedBy(store: Store, change: number): string | null {
  const [passage, another] = store
    .prepare(
      `SELECT DISTINCT json_extract(coalesce("after", "before"), '$.passage') AS "passage" FROM "change_rows"
       WHERE "change" = ? AND "kind" IN ('anchors', 'passageTexts') AND "passage" IS NOT NULL LIMIT 2`,
    )
    .pluck()
    .all(change) as string[];
  return another === undefined ? (passage ?? null) : null;
}

/** Every row of the log in the order of writing, one at a time. */
export function* allEdits(store: Store): Generator<LoggedEdit> {
  for (const row of store.prepare(`SELECT * FROM "change_rows" ORDER BY "change", "seq"`).iterate()) yield asEdit(row);
}

/** What was done to a row after it had the given version, oldest first, with who and when. */
export function editsSince(
  store: Store,
  kind: Kind,
  id: string,
  version: number,
): (LoggedEdit & { who: string; when: string })[] {
  const rows = store
    .prepare(
      `SELECT r.*, c."who", c."when" FROM "change_rows" r JOIN "changes" c ON c."number" = r."change"
       WHERE r."kind" = ? AND r."id" = ? AND r."version" > ? ORDER BY r."version"`,
    )
    .all(kind, id, version) as { who: string; when: string }[];
  return rows.map((row) => ({ ...asEdit(row), who: row.who, when: row.when }));
}

/** Every change of a crux and of its readings, newest first, each with who and when; of readings that are gone too. */
export function changesOfCrux(
  store: Store,
  crux: string,
): (LoggedEdit & { number: number; change: string; who: string; when: string; why: string })[] {
  const rows = store
    .prepare(
      `SELECT r.*, c."number", c."id" AS "changeId", c."who", c."when", c."why" FROM "change_rows" r
       JOIN "changes" c ON c."number" = r."change"
       WHERE (r."kind" = 'cruxes' AND r."id" = @crux)
         OR (r."kind" = 'readings' AND json_extract(coalesce(r."after", r."before"), '$.crux') = @crux)
       ORDER BY c."number" DESC, r."seq"`,
    )
    .all({ crux }) as { number: number; changeId: string; who: string; when: string; why: string }[];
  return rows.map((row) => {
    const { number, changeId, who, when, why } = row;
    return { ...asEdit(row), number, change: changeId, who, when, why };
  });
}

/** Changes after the one numbered `after` that touched one of these rows, or a row that is part of one (an action of an
 *  element, a reading of a crux), oldest first. Changes that were taken back are among them, and so is what took them back. */
export function changesTouching(store: Store, ids: readonly string[], after: number): StoredChange[] {
  const rows = store
    .prepare(
      `SELECT ${CHANGE_COLUMNS} FROM "changes" WHERE "number" > @after AND "number" IN (
         SELECT "change" FROM "change_rows" WHERE "change" > @after AND (
           "id" IN (SELECT "value" FROM json_each(@ids))
           OR ("kind" = 'actions' AND json_extract(coalesce("after", "before"), '$.owner') IN (SELECT "value" FROM json_each(@ids)))
           OR ("kind" = 'readings' AND json_extract(coalesce("after", "before"), '$.crux') IN (SELECT "value" FROM json_each(@ids)))
         )
       ) ORDER BY "number"`,
    )
    .all({ after, ids: JSON.stringify(ids) });
  return rows.map(asChange);
}

/** The highest version the row ever had; 0 when it never was. */
export function lastVersion(store: Store, kind: Kind, id: string): number {
  const sql = `SELECT coalesce(max("version"), 0) FROM "change_rows" WHERE "kind" = ? AND "id" = ?`;
  return Number(store.prepare(sql).pluck().get(kind, id));
}

function asChange(row: unknown): StoredChange {
  const { merged, ...change } = row as Omit<StoredChange, "merged"> & { merged: string };
  return { ...change, merged: JSON.parse(merged) as MergedFields[] };
}

function asEdit(row: unknown): LoggedEdit {
  const { kind, id, base, version, before, after } = row as Omit<LoggedEdit, "before" | "after"> & {
    before: string | null;
    after: string | null;
  };
  return { kind, id, base, version, before: fromJson(before), after: fromJson(after) };
}

function toJson(value: Record<string, unknown> | null): string | null {
  return value === null ? null : JSON.stringify(value);
}

function fromJson(text: string | null): Record<string, unknown> | null {
  return text === null ? null : (JSON.parse(text) as Record<string, unknown>);
}
