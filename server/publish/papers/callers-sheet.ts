/** server/publish/papers/callers-sheet.ts - what to call out and when, in big type, with the stations.
 *  May import: schema types, siblings. Read aloud from the middle of the ground: no apparatus beyond one line a sign. */
import type { Block, Line, PlainBlock } from "../../../schema/paper.ts";
import { citationsOfElement } from "../cited.ts";
import { asRiddenBlocks } from "./as-ridden.ts";
import { beforeTheCut } from "./before-the-cut.ts";
import { stationsOf } from "./call-when.ts";
import { calledSteps } from "./call-words.ts";
import { dayBlocks } from "./day-version.ts";
import { groundBlocks, groundsOnPaper } from "./kit-and-ground.ts";
import { mapLines } from "./map-lines.ts";
import { movementBlocks } from "./movement-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { cautionBlock, occasionOf, openKey, type PaperBody, titleOfPart, treatedBlock } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { groundFigure } from "./part-figures.ts";
import { headLine } from "./part-head.ts";
import { readingsInOneLine } from "./readings-in-one-line.ts";
import { setAsideBlocks } from "./set-aside.ts";
import { heading, joinedLines, paragraph, words } from "./spans.ts";
import { noSteps, rowsOfElement } from "./step-rows.ts";

/** Tallest plan of the ground, in millimetres. */
const PLAN = 60;

export function callersSheet(context: PaperContext): PaperBody {
  const titles = context.parts.map(titleOfPart).join(" · ");
  return {
    title: `Calls: ${titles}`,
    running: titles,
    blocks: [
      ...mapLines(
        context.parts.flatMap((part, index) => partBlocks(context, part, index === 0)),
        onlyOpen,
      ),
      ...readingsInOneLine(context),
      openKey(),
      cautionBlock(),
      ...groundsOnPaper(context).map(({ ground, part }): Block => {
        const left = [heading(2, [words("The stations")]), ...groundBlocks(context, part, ground)];
        return { is: "beside", columns: "figures", left, right: [groundFigure(context, part, ground, PLAN)] };
      }),
    ],
  };
}

/** Lines of warrants are for papers that have their key: here only what is not settled has one. */
const onlyOpen = (line: Line): Line =>
  line.map((span) =>
    span.is === "words" && span.standing !== "not settled" && span.standing !== null
      ? { ...span, standing: null }
      : span,
  );

function partBlocks(context: PaperContext, part: BuiltPart, isFirst: boolean): PlainBlock[] {
  const { drill } = part;
  const { exercise } = drill;
  const items = calledSteps(part, context.signs, stationsOf(context, part)).map((called) => {
    const { element, call, acts, when, open } = called;
    const cited = context.places.line(citationsOfElement(element));
    // A reminder has its place behind it and no line of its own for it.
    const isReminder = call.length === 0 && when.length === 0 && open.length === 0 && cited.length > 0;
    const told = isReminder ? acts.map((line) => [...line, words("  "), ...cited]) : acts;
    return {
      of: rowsOfElement(element),
      element: element.id,
      shown: element.number === null ? null : String(element.number),
      call,
      ...(told.length === 0 ? {} : { acts: told }),
      when,
      where: isReminder ? [] : joinedLines([open, cited], " · "),
    };
  });
  return [
    heading(1, [words(titleOfPart(part))], { of: [{ kind: "exercises", id: exercise.id }] }),
    ...(isFirst ? occasionOf(context.ask) : []),
    paragraph("small", headLine(context, part)),
    ...asRiddenBlocks(context, part),
    ...setAsideBlocks(context, part),
    ...dayBlocks(part, 2),
    ...beforeTheCut(context, part),
    items.length === 0 ? noSteps() : { is: "calls", items },
    ...movementBlocks(context, [part], 3),
    treatedBlock(part),
  ];
}
