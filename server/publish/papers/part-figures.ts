/** server/publish/papers/part-figures.ts - the plan of an exercise, or of the part of it that is on the paper, and its ground.
 *  May import: schema types, shared/ride, server/publish, siblings. */
import type { PlainBlock, Span } from "../../../schema/paper.ts";
import type { Ground } from "../../../schema/riding.ts";
import { chooseReadings } from "../../../shared/ride/choose-readings.ts";
import { ridesWithin } from "../figures/exercise-rides.ts";
import { type PlanRide, planFigure, planOfRides } from "../figures/plan-figure.ts";
import { capital } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { listed } from "./part-head.ts";
import { ridesOf } from "./part-rides.ts";
import { heading, soft, words } from "./spans.ts";

/** " Drawn with “the other hand” †b", since of what is not settled only one reading can be drawn. */
function drawnWith({ ask, signs }: PaperContext, { part, rows, drill }: BuiltPart): Span[] {
  const choice = ask.choice.filter(({ crux }) => rows.cruxes.has(crux));
  const { supplied } = chooseReadings(rows, choice, drill.way, part.variant);
  const open = [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes].filter(
    ({ taken }) => taken === null,
  );
  const told = [...new Set(open.map(({ crux }) => crux))].flatMap((crux) => {
    const reading = supplied.get(crux);
    const [sign] = signs.span(crux);
    // The sign as words: a caption calls no note.
    return reading === undefined || sign?.is !== "sign" ? [] : [`“${signs.readingTitle(reading)}” ${sign.sign}`];
  });
  return told.length === 0
    ? []
    : [soft(` Drawn with ${listed(told)}, which ${told.length === 1 ? "is" : "are"} not settled.`)];
}

/** What the plan takes for granted that the text does not say, a sentence each, without what stood with an earlier exercise
 *  of the paper already. Nothing where nothing was supplied. */
export function suppliedBlocks(context: PaperContext, built: BuiltPart, level: number): PlainBlock[] {
  const suppliedIn = (part: BuiltPart): string[] => ridesOf(context, part).plan.flatMap(({ ride }) => ride.supplied);
  const before = context.parts.slice(0, context.parts.indexOf(built));
  const told = new Set(before.flatMap(suppliedIn));
  // What is not settled is told under the plan itself.
  const sentences = new Set(suppliedIn(built).filter((sentence) => !sentence.startsWith("†") && !told.has(sentence)));
  const items = [...sentences].map((sentence) => ({ words: [words(capital(sentence))], of: [] }));
  return items.length === 0
    ? []
    : [heading(level, [words("What the plan supplies")]), { is: "list", ordered: false, items }];
}

/** The lines that are ridden, of the elements on the paper alone. Nothing where none of them is ridden. `tallest` in
 *  millimetres. */
export function planBlocks(context: PaperContext, built: BuiltPart, tallest: number): PlainBlock[] {
  const { drill, cut } = built;
  const shown = new Set(drill.elements.map(({ id }) => id));
  const rides = ridesWithin(ridesOf(context, built).plan, ({ element }) => shown.has(element));
  const [first] = rides;
  if (first === undefined) return [];
  const { svg, width, alternative } = planOfRides(rides, { tallest });
  const { groundName, groundSupplied } = first.ride;
  const supplied = groundSupplied ? [soft(" The ground is supplied: the exercise names none.")] : [];
  const riders = rides.filter(({ letter }) => letter !== "").map(({ letter, role }) => `${letter}, ${role}`);
  const who = riders.length === 0 ? "" : ` ${listed(riders)}.`;
  return [
    {
      is: "figure",
      anchor: null,
      svg,
      width,
      caption: [
        words(`${capital(groundName)}, with the line of ${cut ?? "the whole"}.${who}`),
        ...supplied,
        ...drawnWith(context, built),
      ],
      alternative,
      of: [{ kind: "exercises", id: drill.exercise.id }],
    },
  ];
}

/** The ground with its stations and no line on it. */
export function groundFigure(
  context: PaperContext,
  built: BuiltPart,
  { id, name }: Ground,
  tallest: number,
): PlainBlock {
  const { ride } = ridesOf(context, built).plan[0] as PlanRide;
  const { svg, width } = planFigure(ride, { fromStage: 0, toStage: 0, tallest });
  const { ground } = ride;
  const stations = ground.stations.map((station) => station.name);
  const size = `${metres(ground.width)} by ${metres(ground.length)} m`;
  const alternative = `Plan of ${name}, ${size}${stations.length === 0 ? "" : `, with ${listed(stations)}`}.`;
  const of = [{ kind: "grounds" as const, id }];
  return { is: "figure", anchor: null, svg, width, caption: [words(`${capital(name)}, ${size}.`)], alternative, of };
}

const metres = (value: number): string => String(Number(value.toFixed(2)));
