/** server/publish/papers/before-the-cut.ts - for a part that does not begin at the beginning: where the rider is, and what hands,
 *  weapon and horse are doing, when its first step begins.
 *  May import: schema types, shared/ride, siblings. By the steps that were left out; what they leave open is said to be open. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { gaitTold, handTold, objectTold, type Told } from "../../../shared/ride/lane-words.ts";
import { stationsOf, whenOf } from "./call-when.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { joinedLines, paragraph, SILENT, soft, strong, words } from "./spans.ts";

/** Nothing where the part begins with the exercise. */
export function beforeTheCut(context: PaperContext, part: BuiltPart): PlainBlock[] {
  const { drill, whole, before, followed } = part;
  const [first] = drill.elements;
  const at = whole.elements.findIndex(({ id }) => id === first?.id);
  const state = followed[at - 1]?.after;
  if (first === undefined || before.length === 0 || state === undefined) return [];
  const last = before.findLast(({ number, role }) => number !== null && (role === "" || role === first.role)) ?? null;
  const start = drill.elements.find(({ number }) => number !== null) ?? first;
  const { names } = context;
  const onFoot = whole.way === "on foot";
  const lines: Line[] = [
    whenOf(start, last, context.signs, stationsOf(context, part)),
    ...(onFoot ? [] : [told("the horse", gaitTold(state, names))]),
    told("left hand", handTold(state, "left", names)),
    told("right hand", handTold(state, "right", names)),
    ...state.objects.map((held) => told(withoutArticle(held.object.name), objectTold(held, names))),
  ];
  const where = start.number === null ? "this" : `step ${start.number}`;
  return [paragraph("body", [strong(`Before ${where}: `), ...joinedLines(lines, "; ")])];
}

function told(name: string, { words: says, shows }: Told): Line {
  return [soft(`${name} `), ...(shows === "not said" ? [SILENT] : [words(says)])];
}
