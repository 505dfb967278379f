/** server/store/carry-anchors.ts - anchors of an earlier passage text, brought to the current one.
 *  May import: schema, shared/text, siblings in server/store. Keeps rules S21-S23 (server/store/RULES.md). */
import type { StepMap } from "prosemirror-transform";
import { docFromJson } from "../../schema/editor.ts";
import type { TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import { carryAll, fateOf, mapsOfSteps } from "../../shared/text/index.ts";
import type { Store } from "./open-store.ts";
import { rowsWhere } from "./row-store.ts";

/** All texts of a passage in a revision, by number from 1. */
export function textsOf(store: Store, { passage, revision }: Pick<PassageText, "passage" | "revision">): PassageText[] {
  const texts = rowsWhere(store, "passageTexts", { passage, revision }).map(({ value }) => value);
  return (texts as unknown as PassageText[]).sort((a, b) => a.number - b.number);
}

/** The anchors as they stand in the last of `texts`, which follow each other; they count in the first. What a person
 *  quoted stays as it is; the fate says whether those words stand there. */
export function carryAnchors(texts: readonly PassageText[], anchors: readonly TextAnchor[]): TextAnchor[] {
  const maps = texts.slice(1).flatMap((text) => mapsOfSteps(text.steps));
  return carryThrough(texts, maps, anchors);
}

function carryThrough(
  texts: readonly PassageText[],
  maps: readonly StepMap[],
  anchors: readonly TextAnchor[],
): TextAnchor[] {
  const first = texts[0];
  const last = texts.at(-1);
  if (first === undefined || last === undefined) throw new RangeError("Anchors are carried from one text to another.");
  const carried = carryAll(docFromJson(first.doc), docFromJson(last.doc), maps, anchors);
  return anchors.map((anchor, index) => {
    const result = carried[index];
    if (result === undefined) throw new TypeError("carryAll answers once per anchor; it gave no answer.");
    const range = result.ok && anchor.fate !== "lost" ? result.range : null;
    const fate = fateOf(anchor, last.text, range, first.text);
    if (fate.fate === "lost") {
      const gap = result.ok ? result.range.from : result.near.from;
      return { ...anchor, text: last.id, from: gap, to: gap, fate: "lost" };
    }
    // Words that moved are not "the same" again because the next change left them alone: a person has not seen them yet.
    const kept = fate.fate === "same" && anchor.fate === "moved" ? "moved" : fate.fate;
    return { ...anchor, text: last.id, from: fate.from, to: fate.to, fate: kept };
  });
}
