/** server/store/store-rows.ts - writes planned rows with their change: the one place where rows are put and taken away.
 *  May import: schema, siblings in server/store, server/errors. Keeps rules S7, S9, S10 (server/store/RULES.md).
 *  Called inside a transaction, by `writeChange`, `undoChange` and `amendPassage` alone. */
import type { Written } from "../../schema/api.ts";
import type { LoggedEdit } from "../../schema/change.ts";
import type { Anchor, TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import { done, type Outcome } from "../errors.ts";
import { carryAnchors, textsOf } from "./carry-anchors.ts";
import { checkCruxes } from "./check-cruxes.ts";
import { checkNamed, checkRemoved } from "./check-references.ts";
import { checkSlots } from "./check-slots.ts";
import { checkAnchor, checkTexts } from "./check-texts.ts";
import type { RowValue } from "./field-table.ts";
import { addToLog, lastVersion, type NewChange, newestNumber } from "./log.ts";
import { indexMentions, mentioning, namedBy } from "./mentions.ts";
import type { Store } from "./open-store.ts";
import type { Plan, PlannedRow } from "./plan-edits.ts";
import { type Problem, refuseFor } from "./problem.ts";
import { sameJson } from "./row-codec.ts";
import { asRow, deleteRow, getRow, hasRow, putRow, type StoredRow } from "./row-store.ts";
import { workOf } from "./work-of.ts";

export type ChangeHead = Omit<NewChange, "edits" | "merged" | "works">;

/** Writes, checks and logs. `made` is true when a person has just made these rows, false when they are carried or
 *  restored. A plan that changes nothing is not logged; the answer then has the number of the newest change. */
export function storeRows(store: Store, head: ChangeHead, plan: Plan, made: boolean): Outcome<Written> {
  const touched = plan.rows.filter(({ before, after }) => !sameJson(before?.value ?? null, after));
  const versions = new Map(touched.map((row) => [row, nextVersion(store, row)]));
  const put = (row: PlannedRow): void => {
    const version = versions.get(row) ?? 0;
    if (row.after === null) deleteRow(store, row.kind, row.id);
    else putRow(store, { kind: row.kind, version, value: row.after });
  };
  for (const row of touched) put(row);

  const problems: Problem[] = [];
  for (const row of touched) {
    if (row.kind !== "anchors" || row.after === null) continue;
    const problem = checkAnchor(store, row.after as unknown as Anchor, row.where, made && isPlaced(row));
    if (problem !== null) problems.push(problem);
    else if (carryToCurrent(store, row)) put(row);
  }
  problems.push(...checkRows(store, head, touched));
  if (problems.length > 0) return refuseFor(problems);

  const edits = touched.map((row) => logged(row, versions.get(row) ?? 0));
  const works = [...new Set(touched.flatMap((row) => workOf(store, row, plan.rows) ?? []))];
  const change =
    edits.length === 0 ? newestNumber(store) : addToLog(store, { ...head, edits, merged: plan.merged, works });
  const rows = plan.rows.flatMap((row): StoredRow[] => {
    const version = versions.get(row) ?? row.before?.version ?? 1;
    return row.after === null ? [] : [{ kind: row.kind, version, value: row.after }];
  });
  const removed = touched.filter(({ after }) => after === null).map(({ kind, id }) => ({ kind, id }));
  return done({ change, rows: rows.map(asRow), removed, merged: plan.merged });
}

function checkRows(store: Store, head: ChangeHead, rows: readonly PlannedRow[]): Problem[] {
  const problems: Problem[] = [];
  if (head.sitting !== null && !hasRow(store, "sittings", head.sitting)) {
    const sentence = `Expected a sitting that is there; there is none with the id ${head.sitting}. Make it in the same change, or name none.`;
    problems.push({ code: "reference_unknown", where: "sitting", sentence });
  }
  for (const row of rows) {
    const named = row.after === null ? null : namedBy(store, row.kind, row.after);
    indexMentions(store, row.kind, row.id, named);
    problems.push(...checkNamed(store, row, named ?? []));
  }
  // What a reading's value names depends on the slot it is given to, so a changed row renews the readings about it.
  for (const { kind, id, after } of rows) {
    if (after === null) continue;
    for (const reading of mentioning(store, kind, id, "readings")) {
      indexMentions(store, "readings", reading.value.id, namedBy(store, "readings", reading.value));
    }
  }
  for (const row of rows) problems.push(...checkRemoved(store, row));
  return [...problems, ...checkSlots(store, rows), ...checkCruxes(store, rows), ...checkTexts(store, rows)];
}

function nextVersion(store: Store, { kind, id, before, after }: PlannedRow): number {
  if (before !== null) return before.version + 1;
  return after === null ? 0 : lastVersion(store, kind, id) + 1;
}

function logged({ kind, id, before, after }: PlannedRow, version: number): LoggedEdit {
  return { kind, id, base: before?.version ?? 0, version, before: before?.value ?? null, after };
}

/** Whether the row puts its anchor somewhere, and is not only re-ordered or confirmed. */
function isPlaced({ before, after }: PlannedRow): boolean {
  return ["text", "from", "to"].some((field) => before?.value[field] !== after?.[field]);
}

/** An anchor that counts in a superseded text is brought to the current one; true when it was. */
function carryToCurrent(store: Store, row: PlannedRow): boolean {
  const anchor = row.after as unknown as Anchor;
  if (anchor.is === "region") return false;
  const text = getRow(store, "passageTexts", anchor.text)?.value as unknown as PassageText | undefined;
  if (text === undefined) return false;
  const later = textsOf(store, text).filter(({ number }) => number >= text.number);
  if (later.length < 2) return false;
  const [carried] = carryAnchors(later, [anchor satisfies TextAnchor]);
  row.after = carried as unknown as RowValue;
  return true;
}
