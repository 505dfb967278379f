/** server/store/check-references.ts - nothing points at a row that is not there, and readings belong to their crux.
 *  May import: schema, siblings in server/store. Keeps rules S14 and S15 (server/store/RULES.md).
 *  Runs inside the transaction, after the rows were written. */
import type { Kind } from "../../schema/record.ts";
import { hasAttachment } from "./attachments.ts";
import { mentioning, namedBy } from "./mentions.ts";
import type { NamedId } from "./named-ids.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import type { Problem } from "./problem.ts";
import { kindName, listed, rowName } from "./row-name.ts";
import { getRow, hasRow, rowsNaming } from "./row-store.ts";

/** What a written row names must be there. */
export function checkNamed(store: Store, row: PlannedRow, named: readonly NamedId[]): Problem[] {
  if (row.after === null) return [];
  const before = row.before === null ? [] : namedBy(store, row.kind, row.before.value);
  const wasFrozen = new Set(before.filter(({ hold }) => hold === "frozen").map(({ to, id }) => `${to} ${id}`));
  const problems: Problem[] = [];
  for (const { to, id, path, hold, crux } of named) {
    // An old paper may name what has been removed since; what it names anew must be there.
    if (hold === "frozen" && wasFrozen.has(`${to} ${id}`)) continue;
    const where = `${row.where}.${path}`;
    if (!hasRow(store, to, id)) {
      const sentence = `Expected a ${kindName(to)} that is there; there is none with the id ${id}. Make it in the same change, or name another.`;
      problems.push({ code: "reference_unknown", where, sentence });
    } else if (crux !== undefined && to === "readings" && getRow(store, to, id)?.value.crux !== crux) {
      const sentence = `Expected a reading of the crux ${crux}; ${id} is a reading of another. Name one of its own readings.`;
      problems.push({ code: "reading_of_other_crux", where, sentence });
    }
  }
  return [...problems, ...checkAttachments(store, row)];
}

/** A row that was removed is needed by none that stay. */
export function checkRemoved(store: Store, { kind, id, before, after, where }: PlannedRow): Problem[] {
  if (after !== null || before === null) return [];
  const needed = [...rowsNaming(store, kind, id).map(({ row }) => row), ...mentioning(store, kind, id)];
  if (needed.length === 0) return [];
  const names = listed(needed.map((row) => rowName(row.kind, row.value)));
  const sentence = `The ${rowName(kind, before.value)} cannot be removed: ${names} still ${needed.length === 1 ? "needs" : "need"} it. Change or remove ${needed.length === 1 ? "that" : "those"} in the same change.`;
  return [{ code: kind === "passageTexts" ? "text_fixed" : "still_needed", where, sentence }];
}

const ATTACHED: { [K in Kind]?: (value: Record<string, unknown>) => [string, string | null][] } = {
  revisions: ({ attachment }) => [["attachment", attachment as string | null]],
  pictures: ({ attachment }) => [["attachment", attachment as string]],
  editions: ({ papers }) =>
    (papers as { attachment: string }[]).map(({ attachment }, index) => [`papers[${index}].attachment`, attachment]),
};

function checkAttachments(store: Store, { kind, after, where }: PlannedRow): Problem[] {
  return (ATTACHED[kind]?.(after ?? {}) ?? []).flatMap(([path, hash]): Problem[] => {
    if (hash === null || hasAttachment(store, hash)) return [];
    const sentence = `Expected the content hash of an attachment that is there; there is none with ${hash}. Bring the file in first.`;
    return [{ code: "attachment_unknown", where: `${where}.${path}`, sentence }];
  });
}
