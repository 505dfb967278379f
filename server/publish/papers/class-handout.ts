/** server/publish/papers/class-handout.ts - several exercises for one class: cut to what is ridden, with holds, ground,
 *  pictures, faults, and in full the text that is not told in steps.
 *  May import: schema types, siblings. */
import type { Block } from "../../../schema/paper.ts";
import { asRiddenBlocks } from "./as-ridden.ts";
import { beforeTheCut } from "./before-the-cut.ts";
import { dayBlocks } from "./day-version.ts";
import { faultBlocks } from "./faults.ts";
import { holdBlocks } from "./holds-page.ts";
import { groundBlocks, groundsOnPaper } from "./kit-and-ground.ts";
import { movementBlocks } from "./movement-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { cautionBlock, lineKey, occasionOf, type PaperBody, titleOfPart, treatedBlock } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { groundFigure, withPlanBeside } from "./part-figures.ts";
import { headLine } from "./part-head.ts";
import { type Pictures, pictureBlocks } from "./picture-blocks.ts";
import { readingsInOneLine } from "./readings-in-one-line.ts";
import { restOfText } from "./rest-of-text.ts";
import { setAsideBlocks } from "./set-aside.ts";
import { heading, paragraph, words } from "./spans.ts";
import { fewStepsTable } from "./step-rows.ts";
import { throughoutBlocks, throughoutOwn, throughoutWork } from "./throughout.ts";

/** Tallest plans, in millimetres: a line that is ridden, and the ground alone. */
const PLAN = 58;
const GROUND = 56;

export function classHandout(context: PaperContext, pictures: Pictures): PaperBody {
  const { book, parts, ask } = context;
  const [only, another] = parts;
  const title = only !== undefined && another === undefined ? titleOfPart(only) : `Exercises from ${book.work.title}`;
  return {
    title,
    running: "Class handout",
    blocks: [
      heading(1, [words(title)], { of: [{ kind: "works", id: book.work.id }] }),
      ...occasionOf(ask),
      ...(another === undefined ? [] : throughoutWork(context, 2)),
      ...parts.flatMap((part) => partBlocks(context, part, another !== undefined)),
      lineKey(true),
      cautionBlock(),
      ...movementBlocks(context, parts, 2),
      ...holdBlocks(context, 2),
      ...groundsOnPaper(context).flatMap(({ ground, part }): Block[] => [
        heading(2, [words(`The ground: ${ground.name}`)]),
        {
          is: "beside",
          columns: "figures",
          left: groundBlocks(context, part, ground),
          right: [groundFigure(context, part, ground, GROUND)],
        },
      ]),
      ...pictureBlocks(context, pictures, 2),
    ],
  };
}

/** `titled`: whether the exercise needs a heading of its own, since the paper has several. */
function partBlocks(context: PaperContext, part: BuiltPart, titled: boolean): Block[] {
  const { drill } = part;
  const of = [{ kind: "exercises" as const, id: drill.exercise.id }];
  const head = [
    ...(titled ? [heading(2, [words(titleOfPart(part))], { of })] : []),
    paragraph("small", headLine(context, part)),
    ...asRiddenBlocks(context, part),
    ...setAsideBlocks(context, part),
    ...dayBlocks(part, 3),
    ...(titled ? throughoutOwn(context, part, 3) : throughoutBlocks(context, drill, 3)),
    ...faultBlocks(context, part, 3),
    ...beforeTheCut(context, part),
  ];
  return [
    ...withPlanBeside(context, part, PLAN, head),
    fewStepsTable(context, part),
    ...readingsInOneLine(context, drill),
    treatedBlock(part),
    ...restOfText(context, part, 3),
  ];
}
