/** server/publish/editions/reason-for.ts - why a paper says something otherwise than before, from the history.
 *  May import: schema types, server/store, siblings. */
import type { LoggedChange, LoggedEdit } from "../../../schema/change.ts";
import { ReadingStatus } from "../../../schema/crux.ts";
import { readChangesOf, type Store } from "../../store/index.ts";
import { stopped } from "../stopped.ts";
import type { Of } from "./paper-items.ts";

/** What the changes since gave as their reasons, each once, oldest first: a decision by its own reason, another change by
 *  the words it was written with. "" when no change of these rows is known. `after`: number of the change the older
 *  edition was made at. */
export function reasonFor(store: Store, of: Of, after: number): string {
  const ids = [...new Set(of.map(({ id }) => id))].sort();
  if (ids.length === 0) return "";
  const reasons = readChangesOf(store, ids, after).flatMap((change) => reasonsOf(change, new Set(ids)));
  return [...new Set(reasons)].join(" ");
}

function reasonsOf({ why, edits }: LoggedChange, ids: ReadonlySet<string>): string[] {
  const decided = edits.flatMap((edit) => decisionIn(edit, ids));
  return decided.length > 0 ? decided : [stopped(why)];
}

/** A reading that was adopted or ruled out, or a crux that was left free, with the reason that was given. */
function decisionIn({ kind, before, after }: LoggedEdit, ids: ReadonlySet<string>): string[] {
  if (after === null) return [];
  if (kind === "readings" && (ids.has(String(after.id)) || ids.has(String(after.crux)))) {
    const status = ReadingStatus.safeParse(after.status);
    const same = JSON.stringify(before?.status) === JSON.stringify(after.status);
    if (!status.success || same || status.data.is === "standing") return [];
    return [`“${after.title}” was ${status.data.is}: ${stopped(status.data.reason)}`];
  }
  if (kind === "cruxes" && ids.has(String(after.id)) && after.leftFree !== null) {
    const same = JSON.stringify(before?.leftFree) === JSON.stringify(after.leftFree);
    const reason = (after.leftFree as { reason?: unknown }).reason;
    if (!same && typeof reason === "string") return [`“${after.title}” was left to the rider: ${stopped(reason)}`];
  }
  return [];
}
