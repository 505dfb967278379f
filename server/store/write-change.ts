/** server/store/write-change.ts - the one way in which rows are written: a request becomes rows and a logged change.
 *  May import: schema, Node's own modules, siblings in server/store, server/errors. Keeps rules S7-S20
 *  (server/store/RULES.md). */
import { createHash } from "node:crypto";
import type { Written } from "../../schema/api.ts";
import type { ChangeRequest } from "../../schema/change.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { editsOf, findChange } from "./log.ts";
import type { Store } from "./open-store.ts";
import { planEdits } from "./plan-edits.ts";
import { asRow, type StoredRow } from "./row-store.ts";
import { storeRows } from "./store-rows.ts";
import { inTransaction } from "./transaction.ts";

/** What comes from outside: the store has no clock. */
export interface WriteOptions {
  /** ISO 8601, UTC. */
  now: string;
}

/** Writes all edits of the request, or none. The request must have been parsed with `ChangeRequest`; the values in it
 *  are checked here. Sending the same request again gives the answer it had the first time. */
export function writeChange(store: Store, request: ChangeRequest, { now }: WriteOptions): Outcome<Written> {
  const requestHash = hashOf(request);
  return inTransaction(store, () => {
    const answered = answerAgain(store, request.id, requestHash);
    if (answered !== null) return answered;
    const plan = planEdits(store, request);
    if (!plan.ok) return plan;
    const { id, who, why, sitting, group } = request;
    const head = { id, when: now, who, why, sitting, group, undoes: null, requestHash };
    return storeRows(store, head, plan.value, true);
  });
}

/** Hash of a request, by which it is known when it is sent again. Keys in the order they were sent. */
export function hashOf(request: object): string {
  return createHash("sha256").update(JSON.stringify(request)).digest("hex");
}

/** The answer to a request that was stored before, a refusal when another one was stored under its id, else null. */
export function answerAgain(store: Store, id: string, requestHash: string): Outcome<Written> | null {
  const change = findChange(store, id);
  if (change === null) return null;
  if (change.requestHash !== requestHash) {
    return refused(
      "change_id_taken",
      `Change ${id} was stored before with other contents (number ${change.number}, by ${change.who}). Nothing was stored; make a new id for each change.`,
    );
  }
  const edits = editsOf(store, change.number);
  const rows = edits.flatMap(({ kind, version, after }): StoredRow[] =>
    after === null ? [] : [{ kind, version, value: after as StoredRow["value"] }],
  );
  const removed = edits.filter(({ after }) => after === null).map(({ kind, id: rowId }) => ({ kind, id: rowId }));
  return done({ change: change.number, rows: rows.map(asRow), removed, merged: change.merged });
}
