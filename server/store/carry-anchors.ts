/** server/store/carry-anchors.ts - anchors of an earlier passage text, brought to the current one.
 *  May import: schema, shared/text, siblings in server/store. Keeps rules S21-S23 (server/store/RULES.md). */
import type { Node as DocNode } from "prosemirror-model";
import type { StepMap } from "prosemirror-transform";
import { docFromJson } from "../../schema/editor.ts";
import type { TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import { applySteps, type CarryResult, carryAll, fateOf } from "../../shared/text/index.ts";
import type { Store } from "./open-store.ts";
import { rowsWhere } from "./row-store.ts";

/** All texts of a passage in a revision, by number from 1. */
export function textsOf(store: Store, { passage, revision }: Pick<PassageText, "passage" | "revision">): PassageText[] {
  const texts = rowsWhere(store, "passageTexts", { passage, revision }).map(({ value }) => value);
  return (texts as unknown as PassageText[]).sort((a, b) => a.number - b.number);
}

/** The anchors as they stand in the last of `texts`, which follow each other; they count in the first. What a person
 *  quoted stays as it is; the fate says whether those words stand there. Throws Error when kept steps do not lead from
 *  one text to the next. */
export function carryAnchors(texts: readonly PassageText[], anchors: readonly TextAnchor[]): TextAnchor[] {
  const first = texts[0];
  const last = texts.at(-1);
  if (first === undefined || last === undefined) throw new RangeError("Anchors are carried from one text to another.");
  const start = docFromJson(first.doc);
  let doc = start;
  const maps: StepMap[] = [];
  const docs: DocNode[] = [];
  for (const text of texts.slice(1)) {
    const applied = applySteps(doc, text.steps);
    if (!applied.ok) throw new Error(`The steps kept with passage text ${text.id} do not apply: ${applied.sentence}`);
    maps.push(...applied.maps);
    docs.push(...applied.docs);
    doc = applied.doc;
  }
  const carried = carryAll(start, doc, maps, anchors, docs);
  return anchors.map((anchor, index) => {
    const result = carried[index];
    if (result === undefined) throw new TypeError("carryAll answers once per anchor; it gave no answer.");
    return { ...anchor, text: last.id, ...placeOf(anchor, result, first.text, last.text) };
  });
}

function placeOf(
  anchor: TextAnchor,
  result: CarryResult,
  oldText: string,
  newText: string,
): Pick<TextAnchor, "from" | "to" | "fate"> {
  const range = result.ok && anchor.fate !== "lost" ? result.range : null;
  const found = fateOf(anchor, newText, range, oldText);
  if (found.fate === "lost") {
    const gap = result.ok ? result.range.from : result.near.from;
    return { from: gap, to: gap, fate: "lost" };
  }
  // Words that moved are not "the same" again because the next change left them alone: nobody has looked at them yet.
  const fate = found.fate === "same" && anchor.fate === "moved" ? "moved" : found.fate;
  return { from: found.from, to: found.to, fate };
}
