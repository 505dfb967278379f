/** server/publish/papers/set-aside.ts - rules of riding that somebody set aside at a step of the paper, each with its reason.
 *  May import: schema types, shared/ride, siblings. They print whether or not the ride of the day would break them. */
import type { PlainBlock } from "../../../schema/paper.ts";
import { compareCodeUnits } from "../../../shared/rank.ts";
import { ruleTable } from "../../../shared/ride/rules/index.ts";
import { stopped } from "../stopped.ts";
import { evidenceLines } from "./basis-lines.ts";
import { numbersWords } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { joinedLines, paragraph, words } from "./spans.ts";

/** In the order of the steps; nothing where no rule is set aside. */
export function setAsideBlocks(context: PaperContext, { rows, drill }: BuiltPart): PlainBlock[] {
  const waivers = rows.all("waivers").sort((a, b) => compareCodeUnits(a.id, b.id));
  const sentences = new Map(ruleTable(rows.all("rules")).map(({ code, sentence }) => [code, sentence]));
  return drill.elements.flatMap((element) =>
    waivers
      .filter((waiver) => waiver.element === element.id)
      .map(({ id, rule, reason, basis }) => {
        const at = `Set aside at ${numbersWords([element])}: “${stopped(sentences.get(rule) ?? rule)}” `;
        const rests = joinedLines(evidenceLines(context, basis), " ");
        const line = [words(at + stopped(reason)), ...(rests.length === 0 ? [] : [words(" "), ...rests])];
        return paragraph("small", line, [{ kind: "waivers", id }]);
      }),
  );
}
