/** server/store/undo-change.ts - takes a change back by a new change; a change of a group, with its whole group.
 *  May import: schema, siblings in server/store, server/errors. Keeps rules S24-S26 (server/store/RULES.md). */
import type { Written } from "../../schema/api.ts";
import type { FieldConflict } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import { type Outcome, refused } from "../errors.ts";
import type { RowValue } from "./field-table.ts";
import { changesOfGroup, editsOf, editsSince, findChange, type StoredChange, undoingChanges } from "./log.ts";
import type { Store } from "./open-store.ts";
import { changedFields, type PlannedRow, refuseConflicts } from "./plan-edits.ts";
import { sameJson } from "./row-codec.ts";
import { kindName } from "./row-name.ts";
import { getRow, type StoredRow } from "./row-store.ts";
import { storeRows } from "./store-rows.ts";
import { inTransaction } from "./transaction.ts";
import { answerAgain, hashOf, type WriteOptions } from "./write-change.ts";

export interface Undoing {
  /** Id of the new change, made by the writer. */
  id: string;
  who: string;
  why: string;
  /** Id of the change to take back. */
  undoes: string;
}

/** Takes the change back where its rows still are as it left them; else refuses, listing what was changed since and by
 *  whom. Undoing an undo does the first change again. */
export function undoChange(store: Store, undoing: Undoing, { now }: WriteOptions): Outcome<Written> {
  const requestHash = hashOf(undoing);
  return inTransaction(store, () => {
    const answered = answerAgain(store, undoing.id, requestHash);
    if (answered !== null) return answered;
    const change = findChange(store, undoing.undoes);
    if (change === null) {
      return refused(
        "change_unknown",
        `There is no change with the id ${undoing.undoes}. Load the history again and choose from it.`,
      );
    }
    const undoer = undoneBy(store).get(change.id);
    if (undoer !== undefined) {
      return refused(
        "already_undone",
        `Change ${change.number} was already taken back by ${undoer.who} (change ${undoer.number}). Undo that one to have it again.`,
      );
    }
    const { rows, conflicts } = planUndo(store, changesToUndo(store, change));
    if (conflicts.length > 0) return refuseConflicts(conflicts);
    const { id, who, why } = undoing;
    const head = { id, when: now, who, why, sitting: null, group: null, undoes: change.id, requestHash };
    return storeRows(store, head, { rows, merged: [] }, false);
  });
}

/** The change that takes each undone change back, by the undone one's id. A change whose undo was undone is not there. */
export function undoneBy(store: Store): Map<string, StoredChange> {
  const undone = new Map<string, StoredChange>();
  // Newest first, so whether an undo itself still counts is known before what it took back is looked at.
  for (const undoer of undoingChanges(store)) {
    if (undone.has(undoer.id)) continue;
    const change = undoer.undoes === null ? null : findChange(store, undoer.undoes);
    if (change === null) continue;
    const members = change.group === null ? [change] : changesOfGroup(store, change.group);
    for (const member of members) {
      if (member.number < undoer.number && !undone.has(member.id)) undone.set(member.id, undoer);
    }
  }
  return undone;
}

/** Newest first: the change, or all changes of its group that were not taken back. */
function changesToUndo(store: Store, change: StoredChange): StoredChange[] {
  if (change.group === null) return [change];
  const undone = undoneBy(store);
  return changesOfGroup(store, change.group)
    .filter(({ id }) => !undone.has(id))
    .reverse();
}

/** Goes back through the rows of the changes, from the last written to the first. */
function planUndo(store: Store, changes: readonly StoredChange[]): { rows: PlannedRow[]; conflicts: FieldConflict[] } {
  const planned = new Map<string, PlannedRow>();
  const conflicts: FieldConflict[] = [];
  for (const change of changes) {
    for (const edit of editsOf(store, change.number).reverse()) {
      const { kind, id, version } = edit;
      const key = `${kind} ${id}`;
      const before = planned.get(key)?.before ?? getRow(store, kind, id);
      const now = planned.has(key) ? (planned.get(key)?.after ?? null) : (before?.value ?? null);
      if (!sameJson(now, edit.after)) {
        conflicts.push(...differences(store, { kind, id, version }, now, edit.after, edit.before));
        continue;
      }
      const after = edit.before as RowValue | null;
      planned.set(key, { kind, id, before, after, where: `${kindName(kind)} ${id}` });
    }
  }
  return { rows: [...planned.values()], conflicts };
}

function differences(
  store: Store,
  { kind, id, version }: { kind: Kind; id: string; version: number },
  theirs: StoredRow["value"] | null,
  left: Record<string, unknown> | null,
  yours: Record<string, unknown> | null,
): FieldConflict[] {
  const since = editsSince(store, kind, id, version);
  const conflict = (field: string, base: unknown, their: unknown, your: unknown): FieldConflict => {
    const last =
      since.findLast((edit) => !sameJson(edit.before?.[field] ?? null, edit.after?.[field] ?? null)) ?? since.at(-1);
    return { kind, id, field, base, theirs: their, yours: your, who: last?.who ?? "", when: last?.when ?? "" };
  };
  if (theirs === null || left === null) return [conflict("", left, theirs, yours)];
  return changedFields(left, theirs).map((field) =>
    conflict(field, left[field] ?? null, theirs[field] ?? null, yours?.[field] ?? null),
  );
}
