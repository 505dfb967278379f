/** server/store/check-texts.ts - passage texts agree with their documents and follow each other; anchors lie in them.
 *  May import: schema, shared/text, siblings in server/store. Keeps rules S20-S22 (server/store/RULES.md).
 *  Runs inside the transaction, after the rows were written. */
import { docFromJson } from "../../schema/editor.ts";
import type { Anchor, TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import { isGraphemeBoundary, projectDoc } from "../../shared/text/index.ts";
import { textsOf } from "./carry-anchors.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import type { Problem } from "./problem.ts";
import { getRow } from "./row-store.ts";

/** Each written text has the words its document gives, and the texts of a passage count 1, 2, 3 in each revision. */
export function checkTexts(store: Store, rows: readonly PlannedRow[]): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const { kind, before, after, where } of rows) {
    if (kind !== "passageTexts") continue;
    if (after !== null) problems.push(...checkDocument(after as unknown as PassageText, where));
    const text = (after ?? before?.value) as unknown as PassageText;
    const key = `${text.passage} ${text.revision}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const numbers = textsOf(store, text).map(({ number }) => number);
    if (numbers.every((number, index) => number === index + 1)) continue;
    const sentence =
      after === null
        ? "Later texts of the passage rest on this one. Undo the later amendments first."
        : `Expected texts numbered 1, 2, 3 for this passage and revision; it would have ${numbers.join(", ")}. Amend the current text instead.`;
    problems.push({ code: after === null ? "text_fixed" : "text_invalid", where, sentence });
  }
  return problems;
}

function checkDocument({ doc, text, steps, number }: PassageText, where: string): Problem[] {
  const problem = (path: string, sentence: string): Problem[] => [
    { code: "text_invalid", where: `${where}.${path}`, sentence },
  ];
  if ((number === 1) !== (steps.length === 0)) {
    return problem("steps", "Expected steps for every text but the first, and none for the first.");
  }
  let words: string;
  try {
    words = projectDoc(docFromJson(doc));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return problem("doc", `The document is not one a passage can hold: ${reason.replace(/\.$/, "")}.`);
  }
  if (words === text) return [];
  return problem("text", "The text is not what its document gives. Make it with the offset projection of shared/text.");
}

/** The anchor as it was sent, against the text it names; null for regions and for texts that are not there (that is
 *  found with the other references). `made` is true for one a person has just set. */
export function checkAnchor(store: Store, anchor: Anchor, where: string, made: boolean): Problem | null {
  if (anchor.is === "region") return null;
  const text = getRow(store, "passageTexts", anchor.text)?.value as unknown as PassageText | undefined;
  if (text === undefined) return null;
  if (text.passage !== anchor.passage) {
    const sentence = `The text is one of passage ${text.passage}; the anchor names ${anchor.passage}. Name the text's own passage.`;
    return { code: "anchor_outside", where: `${where}.passage`, sentence };
  }
  if (anchor.to > text.text.length) {
    const sentence = `Expected a range within the ${text.text.length} units of the text; got ${anchor.from} to ${anchor.to}. Mark the words again.`;
    return { code: "anchor_outside", where: `${where}.to`, sentence };
  }
  if (anchor.fate === "reworded" || anchor.fate === "lost") return null;
  return quoteProblem(anchor, text.text, where, made);
}

function quoteProblem(anchor: TextAnchor, text: string, where: string, made: boolean): Problem | null {
  const words = text.slice(anchor.from, anchor.to);
  if (words !== anchor.quote) {
    const sentence = `The anchor quotes “${anchor.quote}”, and the text has “${words}” there. Mark the words again, or say that they were reworded.`;
    return { code: "anchor_quote_differs", where: `${where}.quote`, sentence };
  }
  const cut = [anchor.from, anchor.to].find((offset) => !isGraphemeBoundary(text, offset));
  if (!made || cut === undefined) return null;
  const sentence = `Offset ${cut} is inside a character. Take the whole character in, or leave it out.`;
  return { code: "anchor_outside", where, sentence };
}
