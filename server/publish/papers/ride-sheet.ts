/** server/publish/papers/ride-sheet.ts - one exercise to be read at arm's length, outdoors, with the reins in one hand.
 *  May import: schema types, siblings. Few words a step; a sign wherever a reading is open or was chosen, with one line on it. */
import type { Block } from "../../../schema/paper.ts";
import { asRiddenBlocks } from "./as-ridden.ts";
import { beforeTheCut } from "./before-the-cut.ts";
import { dayBlocks } from "./day-version.ts";
import { movementBlocks } from "./movement-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { cautionBlock, lineKey, occasionOf, type PaperBody, titleOfPart, treatedBlock } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { withPlanBeside } from "./part-figures.ts";
import { headLine } from "./part-head.ts";
import { neededPictures, type Pictures } from "./picture-blocks.ts";
import { readingsInOneLine } from "./readings-in-one-line.ts";
import { setAsideBlocks } from "./set-aside.ts";
import { heading, paragraph, words } from "./spans.ts";
import { fewStepsTable } from "./step-rows.ts";
import { throughoutBlocks } from "./throughout.ts";

/** Tallest plan, in millimetres: it stands beside the head words, and the steps want the rest of the page. */
const PLAN = 78;

export function rideSheet(context: PaperContext, pictures: Pictures): PaperBody {
  const title = context.parts.map(titleOfPart).join(" · ");
  const end = [...readingsInOneLine(context), lineKey(true)];
  const shown = neededPictures(context, pictures);
  return {
    title,
    running: title,
    blocks: [
      ...context.parts.flatMap((part, index) => partBlocks(context, part, index === 0)),
      ...(shown.length === 0 ? end : [{ is: "beside" as const, columns: "figures" as const, left: end, right: shown }]),
      cautionBlock(),
    ],
  };
}

function partBlocks(context: PaperContext, part: BuiltPart, isFirst: boolean): Block[] {
  const { drill } = part;
  const { exercise } = drill;
  const head = [
    heading(1, [words(titleOfPart(part))], { of: [{ kind: "exercises", id: exercise.id }] }),
    ...(isFirst ? occasionOf(context.ask) : []),
    paragraph("small", headLine(context, part)),
    ...asRiddenBlocks(context, part),
    ...setAsideBlocks(context, part),
    ...dayBlocks(part, 2),
    ...throughoutBlocks(context, drill, 2),
    ...movementBlocks(context, [part], 2),
    ...beforeTheCut(context, part),
  ];
  return [...withPlanBeside(context, part, PLAN, head), fewStepsTable(context, part), treatedBlock(part)];
}
