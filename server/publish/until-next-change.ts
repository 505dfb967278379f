/** server/publish/until-next-change.ts - what was worked out from the rows of a store, kept until anything is written.
 *  May import: server/store, siblings. The one place where server/publish keeps what came of rows. A change of another program ends
 *  it too, since the number is asked of the file; within a transaction nothing is kept, since that may be rolled back. */
import { isInTransaction, newestNumber, type Store } from "../store/index.ts";
import { Recent } from "./recent.ts";

/** Values of one kind by a key that names all they depend on besides rows; at most `most` of them a store. Whoever is given
 *  one changes nothing in it. */
export class UntilNextChange<T> {
  readonly #stores = new WeakMap<Store, { at: number; values: Recent<T> }>();

  constructor(readonly most: number) {}

  get(store: Store, key: string, make: () => T): T {
    if (isInTransaction(store)) return make();
    // Asked before the rows are read: what another program writes in between is then never taken for older.
    const at = newestNumber(store);
    const known = this.#stores.get(store);
    const kept = known?.at === at ? known : { at, values: new Recent<T>(this.most) };
    this.#stores.set(store, kept);
    return kept.values.get(key, make);
  }
}
