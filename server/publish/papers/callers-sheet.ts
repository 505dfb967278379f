/** server/publish/papers/callers-sheet.ts - what to call out and when, in big type, with the stations.
 *  May import: schema types, siblings. Read aloud from the middle of the ground: no apparatus beyond one line a sign. */
import type { PlainBlock } from "../../../schema/paper.ts";
import { citationsOfElement } from "../cited.ts";
import { asRiddenBlocks } from "./as-ridden.ts";
import { calledSteps } from "./call-words.ts";
import { groundBlocks, groundsOnPaper } from "./kit-and-ground.ts";
import type { PaperContext } from "./paper-context.ts";
import { cautionBlock, occasionOf, openKey, type PaperBody, titleOf, treatedBlock } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { groundFigure } from "./part-figures.ts";
import { headLine } from "./part-head.ts";
import { readingsInOneLine } from "./readings-in-one-line.ts";
import { heading, joinedLines, paragraph, words } from "./spans.ts";
import { noSteps, rowsOfElement } from "./step-rows.ts";

/** Tallest plan of the ground, in millimetres. */
const PLAN = 90;

export function callersSheet(context: PaperContext): PaperBody {
  const titles = context.parts.map(({ drill }) => titleOf(drill.exercise)).join(" · ");
  return {
    title: `Calls: ${titles}`,
    running: titles,
    blocks: [
      ...context.parts.flatMap((part, index) => partBlocks(context, part, index === 0)),
      ...readingsInOneLine(context.signs),
      openKey(),
      cautionBlock(),
      ...groundsOnPaper(context).flatMap(({ ground, part }) => [
        heading(2, [words("The stations")]),
        groundFigure(context, part, ground, PLAN),
        ...groundBlocks(context, part, ground),
      ]),
    ],
  };
}

function partBlocks(context: PaperContext, part: BuiltPart, isFirst: boolean): PlainBlock[] {
  const { drill } = part;
  const { exercise } = drill;
  const items = calledSteps(part, context.signs, stationsOf(context, part)).map(
    ({ element, call, acts, when, open }) => ({
      of: rowsOfElement(element),
      element: element.id,
      shown: element.number === null ? null : String(element.number),
      call,
      ...(acts.length === 0 ? {} : { acts }),
      when,
      where: joinedLines([open, context.places.line(citationsOfElement(element))], " · "),
    }),
  );
  return [
    heading(1, [words(titleOf(exercise))], { of: [{ kind: "exercises", id: exercise.id }] }),
    ...(isFirst ? occasionOf(context.ask) : []),
    paragraph("small", headLine(context, part)),
    ...asRiddenBlocks(context, part),
    items.length === 0 ? noSteps() : { is: "calls", items },
    treatedBlock(part),
  ];
}

function stationsOf({ book }: PaperContext, { rows }: BuiltPart): ReadonlySet<string> {
  const { ground } = rows.exercise;
  return new Set(book.all("stations").flatMap((station) => (station.ground === ground ? [station.name] : [])));
}
