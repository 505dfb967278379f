/** server/store/plan-edits.ts - what a request would do to each row: values checked, versions compared, fields merged.
 *  May import: schema, siblings in server/store, server/errors. Keeps rules S8, S9, S12, S13 (server/store/RULES.md).
 *  Reads the store, writes nothing. */
import type { ChangeRequest, Edit, FieldConflict } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { checkValue, unknownFields, withFields } from "./check-value.ts";
import type { RowValue } from "./field-table.ts";
import { editsSince, lastVersion, type MergedFields } from "./log.ts";
import type { Store } from "./open-store.ts";
import { type Problem, refuseFor } from "./problem.ts";
import { sameJson } from "./row-codec.ts";
import { kindName, rowName } from "./row-name.ts";
import { getRow, hasRow, rowsNaming, type StoredRow } from "./row-store.ts";

/** One row before and after; null where it is not there. */
export interface PlannedRow {
  kind: Kind;
  id: string;
  before: StoredRow | null;
  after: RowValue | null;
  /** Path of the value in what was sent, for sentences; the row's name for rows that were not sent. */
  where: string;
}

export interface Plan {
  rows: PlannedRow[];
  merged: MergedFields[];
}

/** The plan, or all problems of the request, or (when its values are right) all its conflicts. */
export function planEdits(store: Store, { edits }: Pick<ChangeRequest, "edits">): Outcome<Plan> {
  const problems = namedTwice(edits);
  const conflicts: FieldConflict[] = [];
  const rows: PlannedRow[] = [];
  const merged: MergedFields[] = [];
  for (const [index, edit] of edits.entries()) {
    const planned = planEdit(store, edit, `edits[${index}]`);
    problems.push(...(planned.problems ?? []));
    conflicts.push(...(planned.conflicts ?? []));
    if (planned.row !== undefined) rows.push(planned.row);
    if (planned.merged !== undefined && planned.merged.fields.length > 0) merged.push(planned.merged);
  }
  if (problems.length > 0) return refuseFor(problems);
  if (conflicts.length > 0) return refuseConflicts(conflicts);
  return done({ rows: [...rows, ...takenAlong(store, rows)], merged });
}

/** The refusal that lists what two writers both changed. */
export function refuseConflicts(conflicts: FieldConflict[]): Extract<Outcome<never>, { ok: false }> {
  const [first] = conflicts;
  const what = first === undefined ? "the same fields" : conflictName(first);
  const more = conflicts.length > 1 ? ` (and ${conflicts.length - 1} more)` : "";
  return refused(
    "conflict",
    `${first?.who ?? "Another writer"} changed ${what}${more} meanwhile. Nothing was stored and nothing is lost: compare both, choose, and save again.`,
    { conflicts },
  );
}

function conflictName({ kind, field }: FieldConflict): string {
  return field === "" ? `this ${kindName(kind)}` : `“${field}” of this ${kindName(kind)}`;
}

interface PlannedEdit {
  row?: PlannedRow;
  merged?: MergedFields;
  problems?: Problem[];
  conflicts?: FieldConflict[];
}

function planEdit(store: Store, edit: Edit, at: string): PlannedEdit {
  if (edit.kind === "passageTexts") {
    const problem = textProblem(store, edit, at);
    if (problem !== null) return { problems: [problem] };
  }
  if (edit.do === "create") return planCreate(store, edit, `${at}.value`);
  return edit.do === "set" ? planSet(store, edit, `${at}.fields`) : planRemove(store, edit, at);
}

function planCreate(store: Store, { kind, value }: Extract<Edit, { do: "create" }>, at: string): PlannedEdit {
  const checked = checkValue(kind, value, at);
  if (!checked.ok) return { problems: checked.problems };
  const { id } = checked.value;
  if (hasRow(store, kind, id)) {
    const sentence = `There is a ${kindName(kind)} with the id ${id} already. Make a new id for a new row, or set fields of that one.`;
    return { problems: [{ code: "id_taken", where: `${at}.id`, sentence }] };
  }
  if (lastVersion(store, kind, id) > 0) {
    const sentence = `The id ${id} belonged to a ${kindName(kind)} that was removed. Undo the removal to have it back, or make a new id.`;
    return { problems: [{ code: "id_removed", where: `${at}.id`, sentence }] };
  }
  return { row: { kind, id, before: null, after: checked.value, where: at } };
}

function planSet(store: Store, edit: Extract<Edit, { do: "set" }>, at: string): PlannedEdit {
  const { kind, id, fields } = edit;
  const unknown = unknownFields(kind, fields, at);
  if (unknown.length > 0) return { problems: unknown };
  const seen = compareVersions(store, edit, at);
  if (seen.problem !== undefined) return { problems: [seen.problem] };
  const { current, base, since } = seen;
  if (current === null) return { conflicts: [wholeRow(edit, base, null, fields, since)] };

  const others = since.length === 0 ? [] : changedFields(base ?? {}, current.value);
  const conflicts = others
    .filter((name) => name in fields && !sameJson(fields[name], current.value[name] ?? null))
    .map((field): FieldConflict => {
      const last = since.findLast(({ before, after }) => !sameJson(before?.[field] ?? null, after?.[field] ?? null));
      return {
        kind,
        id,
        field,
        base: base?.[field] ?? null,
        theirs: current.value[field] ?? null,
        yours: fields[field],
        who: last?.who ?? "",
        when: last?.when ?? "",
      };
    });
  if (conflicts.length > 0) return { conflicts };
  const checked = checkValue(kind, withFields(kind, current.value, fields), at);
  if (!checked.ok) return { problems: checked.problems };
  return {
    row: { kind, id, before: current, after: checked.value, where: at },
    merged: { kind, id, fields: others.filter((name) => !(name in fields)) },
  };
}

function planRemove(store: Store, edit: Extract<Edit, { do: "remove" }>, at: string): PlannedEdit {
  const seen = compareVersions(store, edit, at);
  if (seen.problem !== undefined) return { problems: [seen.problem] };
  const { current, base, since } = seen;
  // Both writers wanted it gone.
  if (current === null) return {};
  if (since.length > 0) return { conflicts: [wholeRow(edit, base, current.value, null, since)] };
  return { row: { kind: edit.kind, id: edit.id, before: current, after: null, where: at } };
}

interface Seen {
  /** The row now; null when it was removed meanwhile. */
  current: StoredRow | null;
  /** Its value at the version the writer had. */
  base: Record<string, unknown> | null;
  /** What was done to it since, oldest first. */
  since: ReturnType<typeof editsSince>;
  problem?: Problem;
}

function compareVersions(store: Store, edit: Extract<Edit, { base: number }>, at: string): Seen {
  const { kind, id, base } = edit;
  const current = getRow(store, kind, id);
  if (current !== null && current.version === base) return { current, base: current.value, since: [] };
  const nothing = { current, base: null, since: [] };
  const last = current?.version ?? lastVersion(store, kind, id);
  if (last === 0) {
    const sentence = `There is no ${kindName(kind)} with the id ${id}. Load the page again, or make the row first.`;
    return { ...nothing, problem: { code: "row_unknown", where: at, sentence } };
  }
  if (base > last) {
    const sentence = `The ${kindName(kind)} ${id} is at version ${last}; version ${base} was named. Load it again, then write.`;
    return { ...nothing, problem: { code: "version_unknown", where: at, sentence } };
  }
  const since = editsSince(store, kind, id, base);
  return { current, base: since[0]?.before ?? null, since };
}

function wholeRow(
  { kind, id }: { kind: Kind; id: string },
  base: unknown,
  theirs: unknown,
  yours: unknown,
  since: Seen["since"],
): FieldConflict {
  const last = since.at(-1);
  return { kind, id, field: "", base, theirs, yours, who: last?.who ?? "", when: last?.when ?? "" };
}

/** Names of the fields in which two values differ. */
export function changedFields(a: Record<string, unknown>, b: Record<string, unknown>): string[] {
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].filter((name) => !sameJson(a[name] ?? null, b[name] ?? null));
}

function namedTwice(edits: readonly Edit[]): Problem[] {
  const seen = new Set<string>();
  return edits.flatMap((edit, index): Problem[] => {
    const id = edit.do === "create" ? edit.value.id : edit.id;
    const key = `${edit.kind} ${id}`;
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const sentence = `An earlier edit of this change names the same ${kindName(edit.kind)} (${id}). Join the two.`;
    return [{ code: "row_named_twice", where: `edits[${index}]`, sentence }];
  });
}

/** A first text may come with its passage and go with it; all else about texts is done by amending, and undone. */
function textProblem(store: Store, edit: Edit, at: string): Problem | null {
  if (edit.do === "create") {
    if (edit.value.number === 1 || typeof edit.value.number !== "number") return null;
    const sentence = `Expected number 1, the first text of a passage in a revision; got ${edit.value.number}. Later texts come of amending.`;
    return { code: "text_invalid", where: `${at}.value.number`, sentence };
  }
  if (edit.do === "remove" && (getRow(store, "passageTexts", edit.id)?.value.number ?? 1) === 1) return null;
  const sentence =
    edit.do === "set"
      ? "The words of a passage text are never written over. Amend the passage instead: marks are carried along then."
      : "An amended text is taken back by undoing the amendment, so that its marks go back too.";
  return { code: "text_fixed", where: at, sentence };
}

/** Rows that go with the removed ones: what is part of them, and what is tied to them. Rows the request itself names
 *  are left to it. */
function takenAlong(store: Store, rows: readonly PlannedRow[]): PlannedRow[] {
  const named = new Set(rows.map(({ kind, id }) => `${kind} ${id}`));
  const along: PlannedRow[] = [];
  const todo = rows.filter(({ after }) => after === null);
  for (let next = todo.pop(); next !== undefined; next = todo.pop()) {
    for (const { row, whole } of rowsNaming(store, next.kind, next.id)) {
      const key = `${row.kind} ${row.value.id}`;
      if (!whole || named.has(key)) continue;
      named.add(key);
      const { kind, value } = row;
      const planned = { kind, id: value.id, before: row, after: null, where: rowName(kind, value) };
      along.push(planned);
      todo.push(planned);
    }
  }
  return along;
}
