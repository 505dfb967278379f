/** server/store/read-history.ts - what was changed, when, by whom and why; and one change whole.
 *  May import: schema types, shared/cite, siblings in server/store. */
import type { HistoryEntry } from "../../schema/api.ts";
import type { LoggedChange } from "../../schema/change.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import {
  changesBefore,
  changesTouching,
  editsOf,
  findChange,
  passageTouchedBy,
  type StoredChange,
  touchedBy,
} from "./log.ts";
import type { Store } from "./open-store.ts";
import { readRow } from "./read-row.ts";
import { undoneBy } from "./undo-change.ts";

export interface HistoryQuery {
  /** Only changes that touched this work. */
  work?: string;
  /** Only changes numbered below this one, to go on from the last that was read. */
  before?: number;
  /** How many at most; 50 when not given. */
  limit?: number;
}

/** Newest first. */
export function readHistory(store: Store, { work, before, limit = 50 }: HistoryQuery = {}): HistoryEntry[] {
  const undone = undoneBy(store);
  return changesBefore(store, { work: work ?? null, before: before ?? null, limit }).map((change) => ({
    ...headOf(change),
    undone: undone.has(change.id),
    sitting: sittingOf(store, change.sitting),
    touched: touchedBy(store, change.number),
    passage: passageOf(store, change.number),
  }));
}

function sittingOf(store: Store, sitting: string | null): HistoryEntry["sitting"] {
  const row = sitting === null ? null : readRow(store, "sittings", sitting);
  if (row === null) return null;
  const { id, on, who, place } = row.value;
  return { id, on, who, place };
}

function passageOf(store: Store, change: number): HistoryEntry["passage"] {
  const id = passageTouchedBy(store, change);
  const row = id === null ? null : readRow(store, "passages", id);
  if (row === null) return null;
  const [reference] = row.value.references;
  return { id: row.value.id, reference: reference === undefined ? "" : formatReference(reference) };
}

/** The change with all its rows, or null. */
export function readChange(store: Store, id: string): LoggedChange | null {
  const change = findChange(store, id);
  if (change === null) return null;
  return { ...headOf(change), sitting: change.sitting, edits: editsOf(store, change.number) };
}

/** Changes with all their rows that touched one of these after a change, oldest first. What was taken back since is left
 *  out, with what took it back. */
export function readChangesOf(store: Store, ids: readonly string[], after: number): LoggedChange[] {
  const undone = undoneBy(store);
  return changesTouching(store, ids, after)
    .filter(({ id, undoes }) => !undone.has(id) && undoes === null)
    .map((change) => ({ ...headOf(change), sitting: change.sitting, edits: editsOf(store, change.number) }));
}

function headOf({ number, id, when, who, why, group, undoes }: StoredChange) {
  return { number, id, when, who, why, group, undoes };
}
