/** server/store/amend-passage.ts - typing on a passage: a new passage text, and every anchor carried to it, in one change.
 *  May import: schema, shared/text, uuidv7, siblings in server/store, server/errors. Keeps rules S20-S23
 *  (server/store/RULES.md). */
import { uuidv7 } from "uuidv7";
import type { Amendment, Written } from "../../schema/api.ts";
import { docFromJson } from "../../schema/editor.ts";
import type { TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import { applySteps, projectDoc } from "../../shared/text/index.ts";
import { type Outcome, refused } from "../errors.ts";
import { carryAnchors, textsOf } from "./carry-anchors.ts";
import type { RowValue } from "./field-table.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import { rowName } from "./row-name.ts";
import { asRow, getRow, rowsWhere } from "./row-store.ts";
import { storeRows } from "./store-rows.ts";
import { inTransaction } from "./transaction.ts";
import { answerAgain, hashOf, type WriteOptions } from "./write-change.ts";

export interface AmendOptions extends WriteOptions {
  /** Makes the id of the new text; a UUIDv7 when not given. */
  newId?: () => string;
}

/** Applies the editor's steps to the current text of the passage. Refused as `stale_text`, with the current row, when
 *  the steps start from an earlier one. Steps that change nothing store nothing. */
export function amendPassage(
  store: Store,
  passage: string,
  amendment: Amendment,
  { now, newId = uuidv7 }: AmendOptions,
): Outcome<Written> {
  const requestHash = hashOf({ passage, ...amendment });
  return inTransaction(store, () => {
    const answered = answerAgain(store, amendment.id, requestHash);
    if (answered !== null) return answered;
    const start = getRow(store, "passageTexts", amendment.text);
    const text = start?.value as unknown as PassageText | undefined;
    if (text === undefined || text.passage !== passage) {
      return refused(
        "row_unknown",
        `Expected a text of the passage ${passage}; there is none with the id ${amendment.text}. Load the passage again.`,
      );
    }
    const current = textsOf(store, text).at(-1);
    if (current === undefined || current.id !== text.id) {
      const row = current === undefined ? null : getRow(store, "passageTexts", current.id);
      return refused(
        "stale_text",
        `The passage was amended meanwhile: text ${text.number} was named, text ${current?.number} is current. Nothing was stored and nothing is lost; apply your change to the current text and save again.`,
        row === null ? {} : { current: asRow(row) },
      );
    }
    const applied = applySteps(docFromJson(text.doc), amendment.steps);
    if (!applied.ok) return refused("steps_invalid", `Nothing was stored. ${applied.sentence}`);
    const next: PassageText = {
      ...text,
      id: newId(),
      number: text.number + 1,
      doc: applied.doc.toJSON() as PassageText["doc"],
      text: projectDoc(applied.doc),
      steps: amendment.steps,
    };
    const unchanged = applied.doc.eq(docFromJson(text.doc));
    const rows = unchanged ? [] : [newText(next), ...carriedRows(store, text, next)];
    const { id, who, why, sitting } = amendment;
    const head = { id, when: now, who, why, sitting, group: null, undoes: null, requestHash };
    return storeRows(store, head, { rows, merged: [] }, false);
  });
}

function newText(next: PassageText): PlannedRow {
  return { kind: "passageTexts", id: next.id, before: null, after: plain(next), where: "steps" };
}

function carriedRows(store: Store, text: PassageText, next: PassageText): PlannedRow[] {
  const rows = rowsWhere(store, "anchors", { text: text.id });
  const carried = carryAnchors(
    [text, next],
    rows.map(({ value }) => value as unknown as TextAnchor),
  );
  return rows.map((before, index): PlannedRow => {
    const after = plain(carried[index]);
    return { kind: "anchors", id: before.value.id, before, after, where: rowName("anchors", before.value) };
  });
}

/** The value as it will be read back: a document's JSON holds objects without prototypes. */
function plain(value: unknown): RowValue {
  return JSON.parse(JSON.stringify(value)) as RowValue;
}
