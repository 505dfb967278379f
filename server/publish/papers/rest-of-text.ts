/** server/publish/papers/rest-of-text.ts - the words of an exercise that the steps on a paper do not give: in full, with why.
 *  May import: schema types, shared/cite, shared/drill, siblings. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Passage } from "../../../schema/work.ts";
import { formatReference } from "../../../shared/cite/format-reference.ts";
import { citationsOfElement } from "../cited.ts";
import { numbersWords } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { type CurrentText, leadingTextOf } from "./passage-texts.ts";
import { heading, paragraph, reference, said, soft, words } from "./spans.ts";

/** Passages that no step on the paper cites: those not written out, and those of steps that were cut away. Nothing when there
 *  is none. */
export function restOfText(context: PaperContext, part: BuiltPart, level: number): PlainBlock[] {
  const { rows, drill, before, after } = part;
  const cut = [...before, ...after];
  const steps = drill.elements.filter(({ is }) => is !== "untreated");
  const here = new Set(steps.flatMap(citationsOfElement).flatMap(({ references: [first] }) => keyOf(first)));
  const left = rows.passages.filter(({ references: [first] }) => !here.has(keyOf(first)));
  const blocks = left.flatMap((passage): PlainBlock[] => {
    const text = leadingTextOf(context.book, passage);
    const of = [{ kind: "passages" as const, id: passage.id }];
    const head: Line = [placeOf(passage), soft(` · ${whyNot(passage, part, cut)}`)];
    return [paragraph("open", head, of), ...textBlocks(text, of)];
  });
  return blocks.length === 0 ? [] : [heading(level, [words("The rest of the text")]), ...blocks];
}

/** Why a passage is not told in steps here. */
function whyNot(passage: Passage, { rows }: BuiltPart, cut: BuiltPart["before"]): string {
  const key = keyOf(passage.references[0]);
  const citing = cut
    .filter(({ is }) => is !== "untreated")
    .filter((element) => citationsOfElement(element).some(({ references: [first] }) => keyOf(first) === key));
  if (citing.length > 0) return `left out here: ${numbersWords(citing)}`;
  const order = rows.passages.map(({ id }) => id);
  const at = order.indexOf(passage.id);
  const noted = rows.elements.some(
    (element) =>
      element.is === "untreated" && order.indexOf(element.fromPassage) <= at && at <= order.indexOf(element.toPassage),
  );
  return noted ? "not yet written out as steps" : "nothing is said of it yet";
}

function textBlocks(current: CurrentText | null, of: { kind: "passages"; id: string }[]): PlainBlock[] {
  if (current === null) return [paragraph("open", [soft("It has no words in any text that is read now.")], of)];
  return current.text.text
    .split("\n")
    .filter((piece) => piece.trim() !== "")
    .map((piece) => paragraph("quote", [said(piece, current.layer.language)], of));
}

function placeOf({ references: [first] }: Passage) {
  return reference(first === undefined ? "" : formatReference(first));
}

function keyOf(first: Passage["references"][number] | undefined): string {
  return first === undefined ? "" : formatReference(first);
}
