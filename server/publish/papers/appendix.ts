/** server/publish/papers/appendix.ts - the book part: every exercise spelt out, each step cited back, with its apparatus.
 *  May import: schema types, siblings. In reading order: contents, how to read it, the witnesses, the exercises, glossary, indexes,
 *  bibliography. In a long one each exercise begins on a new page, as chapters do: it is found by leafing, and what lies between
 *  two breaks can be set side by side with the rest. */
import type { Block, PlainBlock } from "../../../schema/paper.ts";
import { asRiddenBlocks, inTheWayBlocks } from "./as-ridden.ts";
import { dayBlocks } from "./day-version.ts";
import { BIBLIOGRAPHY } from "./finish-paper.ts";
import { glossaryBlocks } from "./glossary.ts";
import { howToRead } from "./how-to-read.ts";
import { groundBlocks, groundsOnPaper, kitBlocks } from "./kit-and-ground.ts";
import type { PaperContext } from "./paper-context.ts";
import { cautionBlock, occasionOf, type PaperBody, titleOf, treatedBlock } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { groundFigure, withPlanBeside } from "./part-figures.ts";
import { headLine, sourceLine } from "./part-head.ts";
import { passageIndex } from "./passage-index.ts";
import { suppliedBlocks } from "./plan-supplies.ts";
import { questionBlocks, trialBlocks } from "./questions-and-trials.ts";
import { setAsideBlocks } from "./set-aside.ts";
import { heading, paragraph, soft, strong, words } from "./spans.ts";
import { fullStepsTable } from "./step-rows.ts";
import { thingIndex } from "./thing-index.ts";
import { neverMentionedBlocks, throughoutBlocks } from "./throughout.ts";
import { remarkBlocks, unsaidBlocks } from "./unsaid-words.ts";

/** Tallest plan, in millimetres. */
const PLAN = 84;

/** Most exercises that run on from one another. */
const RUN_ON = 12;

export function appendix(context: PaperContext): PaperBody {
  const { book, ask, parts } = context;
  const title = `The exercises of ${book.work.title}`;
  const back = [
    ...glossaryBlocks(context),
    ...passageIndex(context),
    ...thingIndex(context),
    ...bibliographyBlocks(context),
  ];
  const breaks: Block[] = parts.length > RUN_ON ? [{ is: "page break" }] : [];
  return {
    title,
    running: "Appendix",
    blocks: [
      heading(1, [words("The exercises")], { of: [{ kind: "works", id: book.work.id }] }),
      ...occasionOf(ask),
      cautionBlock(),
      { is: "contents", depth: 2 },
      { is: "page break" },
      ...howToRead(context),
      ...groundChapter(context),
      ...parts.flatMap((part) => [...breaks, ...exerciseBlocks(context, part)]),
      ...(back.length === 0 ? [] : breaks),
      ...back,
    ],
  };
}

function exerciseBlocks(context: PaperContext, part: BuiltPart): Block[] {
  const { drill, rows } = part;
  const { exercise } = drill;
  const source = sourceLine(context, part);
  const note = rows.exercise.note === "" ? [] : [paragraph("body", [words(rows.exercise.note)])];
  const beside = [
    ...(source.length === 0 ? [] : [paragraph("small", [soft("Source: "), ...source])]),
    ...note,
    treatedBlock(part),
    ...dayBlocks(part, 3),
    ...kitBlocks(context, part, 3),
    ...groundLine(context, part),
    ...throughoutBlocks(context, drill, 3),
  ];
  return [
    heading(2, [words(titleOf(exercise))], {
      anchor: `exercise-${exercise.id}`,
      of: [{ kind: "exercises", id: exercise.id }],
    }),
    paragraph("small", headLine(context, part, false)),
    ...asRiddenBlocks(context, part),
    ...withPlanBeside(context, part, PLAN, beside),
    heading(3, [words("Steps")]),
    fullStepsTable(context, part),
    ...inTheWayBlocks(part, 3),
    ...setAsideBlocks(context, part),
    ...untouchedCruxes(context, part),
    ...questionBlocks(context, part, 3),
    ...trialBlocks(context, part, 3),
    ...suppliedBlocks(context, part, 3),
    ...neverMentionedBlocks(context, drill, 3),
    ...remarkBlocks(context, part, 3),
    ...unsaidBlocks(part, 3),
  ];
}

/** Each ground once: most exercises of a book share one. */
function groundChapter(context: PaperContext): Block[] {
  return groundsOnPaper(context).flatMap(({ ground, part }): Block[] => [
    heading(2, [words(`The ground: ${ground.name}`)], {
      anchor: groundAnchor(ground.id),
      of: [{ kind: "grounds", id: ground.id }],
    }),
    {
      is: "beside",
      columns: "figures",
      left: groundBlocks(context, part, ground),
      right: [groundFigure(context, part, ground, PLAN)],
    },
  ]);
}

const groundAnchor = (ground: string): string => `ground-${ground}`;

function groundLine({ book }: PaperContext, { rows }: BuiltPart): PlainBlock[] {
  const ground = book.find("grounds", rows.exercise.ground ?? "");
  if (ground === undefined) return [];
  const name = { ...words(ground.name), to: `#${groundAnchor(ground.id)}` };
  return [paragraph("small", [soft("Ridden on: "), name])];
}

/** Cruxes of the exercise that stand at no step, so that each has its sign, and with it its note. */
function untouchedCruxes({ signs }: PaperContext, { drill }: BuiltPart): PlainBlock[] {
  if (drill.cruxes.length === 0) return [];
  const items = drill.cruxes.map(({ crux, title }) => ({
    words: [strong(title), ...signs.span(crux)],
    of: [{ kind: "cruxes" as const, id: crux }],
  }));
  return [heading(3, [words("Open places that bear on no step")]), { is: "list", ordered: false, items }];
}

/** The block whose entries are made once all that is cited is known. Nothing where there is no source; where none is
 *  cited, `finishPaper` takes it away. */
function bibliographyBlocks({ book }: PaperContext): PlainBlock[] {
  if (!book.all("sources").some(({ work }) => work === book.work.id)) return [];
  return [
    heading(2, [words("Bibliography")], { anchor: BIBLIOGRAPHY }),
    { is: "entries", as: "bibliography", items: [] },
  ];
}
