/** server/store/transaction.ts - runs work as one transaction: stored whole, or not at all when it is refused.
 *  May import: siblings in server/store, server/errors. Keeps rule S7 (server/store/RULES.md). */
import type { CodedRefusal, Outcome } from "../errors.ts";
import { type Store, storeError } from "./open-store.ts";

class Refused extends Error {
  constructor(readonly refusal: CodedRefusal) {
    super(refusal.error.sentence);
  }
}

/** Whether what is read now may still be rolled back. */
export function isInTransaction(store: Store): boolean {
  return store.db.inTransaction;
}

/** The lock for writing is taken first, so that what was read is still so when it is written over. A refusal rolls
 *  everything back; so does an error, which is thrown on unless it is one a person can do something about. */
export function inTransaction<T>(store: Store, work: () => Outcome<T>): Outcome<T> {
  const run = store.db.transaction((): Outcome<T> => {
    const outcome = work();
    if (!outcome.ok) throw new Refused(outcome.refusal);
    return outcome;
  });
  try {
    return run.immediate();
  } catch (error) {
    if (error instanceof Refused) return { ok: false, refusal: error.refusal };
    return storeError(error, store.path);
  }
}
