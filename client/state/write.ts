/** client/state/write.ts - every change of rows from this window; conflicts are kept until a person has decided.
 *  A write that meets a conflict stores nothing and loses nothing: what was typed waits in `conflict`. */
import { signal } from "@preact/signals";
import { uuidv7 } from "uuidv7";
import type { Amendment, Written } from "../../schema/api.ts";
import type { ChangeRequest, Edit, FieldConflict } from "../../schema/change.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { type Answer, ask, type Refused } from "./api.ts";
import { refreshPassage } from "./passage.ts";
import { absorb, showAhead, versionOf } from "./rows.ts";
import { sitting, who } from "./session.ts";

export const newId = uuidv7;

export const create = <K extends Kind>(kind: K, value: RecordOf<K>): Edit => ({
  do: "create",
  kind,
  value: value as Extract<Edit, { do: "create" }>["value"],
});
export const set = <K extends Kind>(kind: K, id: string, fields: Partial<RecordOf<K>>): Edit => ({
  do: "set",
  kind,
  id,
  base: versionOf(kind, id),
  fields: fields as Extract<Edit, { do: "set" }>["fields"],
});
export const remove = (kind: Kind, id: string): Edit => ({ do: "remove", kind, id, base: versionOf(kind, id) });

/** A write another writer was before: nothing of it is stored until it is decided. */
export interface Conflict {
  why: string;
  edits: Edit[];
  fields: FieldConflict[];
}
export const conflict = signal<Conflict | null>(null);
/** The last refusal, shown until it is dismissed or the next write succeeds. */
export const refusal = signal<Refused | null>(null);
/** What was last written, for "undo" right after it. */
export const lastWritten = signal<{ id: string; why: string } | null>(null);
const own = new Set<string>();
/** Whether a change was written by this window. */
export const isOwn = (change: string) => own.has(change);
/** How many writes are under way. */
export const writing = signal(0);
/** What was merged in from another window with the last write, in a sentence; empty when nothing. */
export const mergedNote = signal("");

/** Writes go one after another. A later one that was begun on a version which an own write has meanwhile replaced is
 *  sent against the newer one; versions of other windows are never stepped over. */
let line: Promise<unknown> = Promise.resolve();
function inLine<T>(work: () => Promise<T>): Promise<T> {
  const next = line.then(work);
  line = next.catch(() => undefined);
  return next;
}
const ownVersions = new Set<string>();
function onOwnVersion(edit: Edit): Edit {
  if (edit.do === "create") return edit;
  let { base } = edit;
  while (ownVersions.has(`${edit.kind} ${edit.id} ${base + 1}`)) base += 1;
  return { ...edit, base };
}

/** Writes edits as one change; they show at once. True when stored; otherwise the rows are fetched anew, and `conflict`
 *  or `refusal` says why. */
export async function write(edits: Edit[], why: string): Promise<boolean> {
  const id = newId();
  own.add(id);
  showAhead(edits);
  const done = await tracked(
    inLine(async () => {
      const sent = edits.map(onOwnVersion);
      const request: ChangeRequest = { id, who: who.value, why, sitting: sitting.value, group: null, edits: sent };
      return take(id, why, edits, await ask<Written>("/api/changes", request));
    }),
  );
  if (!done) await refreshPassage();
  return done;
}

/** Takes a change back, by a change of its own: taking that back in turn is doing it again. */
export async function undo(change: string, why: string): Promise<boolean> {
  const id = newId();
  own.add(id);
  const body = { id, who: who.value, why };
  const done = await tracked(
    inLine(async () => take(id, why, [], await ask<Written>(`/api/changes/${change}/undo`, body))),
  );
  // What an amendment or a removal had put aside comes back from the server only.
  if (done) await refreshPassage();
  return done;
}

/** Sends steps typed on the unlocked text. Unlike other writes, a refusal is the caller's to show beside the text. */
export async function amend(
  passage: string,
  text: string,
  steps: { stepType: string }[],
  why: string,
): Promise<Answer<Written>> {
  const id = newId();
  own.add(id);
  const request: Amendment = { id, who: who.value, why, sitting: sitting.value, text, steps };
  const answer = await tracked(ask<Written>(`/api/passages/${passage}/amend`, request));
  if (answer.ok) take(id, why, [], answer);
  return answer;
}

function take(id: string, why: string, edits: Edit[], answer: Answer<Written>): boolean {
  if (answer.ok) {
    for (const row of answer.value.rows) ownVersions.add(`${row.kind} ${row.value.id} ${row.version}`);
    absorb(answer.value);
    lastWritten.value = { id, why };
    refusal.value = null;
    mergedNote.value = answer.value.merged.length
      ? `Merged with what another window changed meanwhile: ${answer.value.merged.flatMap((merge) => merge.fields).join(", ")}.`
      : "";
    return true;
  }
  if (answer.error.conflicts?.length && edits.length) conflict.value = { why, edits, fields: answer.error.conflicts };
  else refusal.value = answer.error;
  return false;
}

async function tracked<T>(promise: Promise<T>): Promise<T> {
  writing.value += 1;
  try {
    return await promise;
  } finally {
    writing.value -= 1;
  }
}
