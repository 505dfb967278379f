/** server/store/index.ts - the store as the rest of the server sees it. Nothing else in server/store is imported from
 *  outside, and no SQL is written outside. Rules: server/store/RULES.md; refusals: server/errors.md.
 *
 *    openStore(path)                                     -> Outcome<Store>       (":memory:" for one that is not kept)
 *    writeChange(store, request: ChangeRequest, { now }) -> Outcome<Written>     request parsed with ChangeRequest
 *    amendPassage(store, passageId, Amendment, { now })  -> Outcome<Written>     "stale_text" gives the current row
 *    undoChange(store, { id, who, why, undoes }, { now }) -> Outcome<Written>    `undoes`: id of the change
 *    readContents(store)                                 -> Contents
 *    readBundle(store, { passage } | { exercise } | { work }) -> Outcome<Bundle>
 *    readHistory(store, { work?, before?, limit? })      -> HistoryEntry[]       newest first
 *    readChange(store, changeId)                         -> LoggedChange | null
 *    readDecisions(store, cruxId)                        -> Decision[]           newest first
 *    readChangesOf(store, ids, after)                    -> LoggedChange[]       those that touched the rows since
 *    readRow(store, kind, id), readRows(store, kind)     -> Row | null, Row[]
 *    readTextsAfter(store, passage, revision, number)    -> Row[]                oldest first
 *    newestNumber(store), kindsTouchedSince(store, change) -> number, Kind[]     see read-for-finding.ts for its others
 *    putAttachment(store, { mediaType, name, bytes })    -> hash; getAttachment(store, hash) -> Attachment | null
 *    inTransaction(store, work)                          -> Outcome<T>           a refusal undoes all that was done in it
 *    isInTransaction(store)                              -> boolean
 *    replay(store), allRows(store)                       -> Rows                 equal, always
 *    problemsOf(zodError, at), refuseFor(problems)       -> for a body that is not as expected
 *
 *  `now` is ISO 8601 in UTC. `Outcome`, `refused`, `statusOf` are in server/errors.ts. */
export { type AmendOptions, amendPassage } from "./amend-passage.ts";
export { type Attachment, getAttachment, putAttachment } from "./attachments.ts";
export { newestNumber } from "./log.ts";
export { openStore, type Store } from "./open-store.ts";
export { type Problem, problemsOf, refuseFor } from "./problem.ts";
export { type BundleOf, readBundle } from "./read-bundle.ts";
export { readContents } from "./read-contents.ts";
export { readDecisions } from "./read-decisions.ts";
export {
  type CurrentText,
  kindsTouchedSince,
  readCurrentTexts,
  readFirstPassage,
  readFirstPlace,
} from "./read-for-finding.ts";
export { type HistoryQuery, readChange, readChangesOf, readHistory } from "./read-history.ts";
export { readRow, readRows } from "./read-row.ts";
export { readTextsAfter } from "./read-texts.ts";
export { replay } from "./replay.ts";
export { allRows } from "./row-store.ts";
export { slotAt, slotKindAt, slotsIn } from "./slot-kind.ts";
export { inTransaction, isInTransaction } from "./transaction.ts";
export { type Undoing, undoChange } from "./undo-change.ts";
export { type WriteOptions, writeChange } from "./write-change.ts";
