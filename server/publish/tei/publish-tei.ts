/** server/publish/tei/publish-tei.ts - the edition of a work as TEI, in bytes, for the window and the command line.
 *  May import: server/store, server/errors, siblings. The same rows give the same bytes. */
import { done, type Outcome } from "../../errors.ts";
import { readBundle, type Store } from "../../store/index.ts";
import { teiEdition } from "./edition.ts";

/** UTF-8; refused where there is no such work. */
export function publishTei(store: Store, work: string): Outcome<Uint8Array> {
  const bundle = readBundle(store, { work });
  return bundle.ok ? done(new TextEncoder().encode(teiEdition(bundle.value.rows, work))) : bundle;
}
