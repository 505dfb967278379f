/** server/publish/annotations/publish-annotations.ts - the marks of a work as JSON-LD, in bytes.
 *  May import: shared/drill, server/store, server/errors, siblings. The same rows give the same bytes. */
import { canonicalJson } from "../../../shared/drill/canonical-json.ts";
import { done, type Outcome } from "../../errors.ts";
import { readBundle, type Store } from "../../store/index.ts";
import { annotationCollection } from "./collection.ts";

/** UTF-8; refused where there is no such work. */
export function publishAnnotations(store: Store, work: string): Outcome<Uint8Array> {
  const bundle = readBundle(store, { work });
  if (!bundle.ok) return bundle;
  return done(new TextEncoder().encode(canonicalJson(annotationCollection(bundle.value.rows, work))));
}
