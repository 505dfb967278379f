/** server/publish/papers/part-figures.ts - the plan of an exercise, or of the part of it that is on the paper, and its ground.
 *  May import: schema types, shared/ride, server/publish, siblings. */
import type { Block, PlainBlock, Span } from "../../../schema/paper.ts";
import type { Ground } from "../../../schema/riding.ts";
import { ridesWithin } from "../figures/exercise-rides.ts";
import { type PlanRide, planFigure, planOfRides } from "../figures/plan-figure.ts";
import { capital } from "../stopped.ts";
import { RIDDEN_FROM } from "./as-ridden.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { numberedReading } from "./paper-signs.ts";
import { listed } from "./part-head.ts";
import { soft, words } from "./spans.ts";

/** " Drawn with †b 1", since of what is not settled only one reading can be drawn; “the other hand” †b where the paper does not
 *  number its readings. */
function drawnWith({ ask, signs }: PaperContext, { drill, rides }: BuiltPart): Span[] {
  const { supplied, isInstead } = rides();
  const open = [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes].filter(
    ({ taken }) => taken === null,
  );
  const told = [...new Set(open.map(({ crux }) => crux))].flatMap((crux) => {
    const reading = supplied.get(crux);
    const [sign] = signs.span(crux);
    const numbered = reading === undefined ? null : numberedReading(signs, crux, reading);
    if (RIDDEN_FROM.has(ask.kind) && numbered !== null) return [numbered];
    // The sign as words: a caption calls no note.
    return reading === undefined || sign?.is !== "sign" ? [] : [`“${signs.readingTitle(reading)}” ${sign.sign}`];
  });
  if (told.length === 0) return [];
  const why = isInstead ? "; under the first readings it cannot be ridden" : "";
  return [soft(` Drawn with ${listed(told)}, which ${told.length === 1 ? "is" : "are"} not settled${why}.`)];
}

/** Blocks at the left with the plan at the right, where it costs no height of its own; the blocks alone where nothing is
 *  ridden. */
export function withPlanBeside(
  context: PaperContext,
  built: BuiltPart,
  tallest: number,
  left: readonly PlainBlock[],
): Block[] {
  const right = planBlocks(context, built, tallest);
  return right.length === 0 ? [...left] : [{ is: "beside", columns: "figures", left: [...left], right }];
}

/** The lines that are ridden, of the elements on the paper alone. Nothing where none of them is ridden. `tallest` in
 *  millimetres, of A4; less on a smaller sheet. */
export function planBlocks(context: PaperContext, built: BuiltPart, tallest: number): PlainBlock[] {
  const { drill, cut } = built;
  const rides = ridesShown(built);
  const [first] = rides;
  if (first === undefined) return [];
  const stations = stationsKnown(context, built);
  const { svg, width, alternative, hasTimes } = planOfRides(rides, { tallest: onSheet(context, tallest), stations });
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
        ...keyOf(context, built, first.ride.ground.trackOffset > 0),
        ...(hasTimes ? [soft(" ×2 and more: how often the line that begins there is ridden.")] : []),
      ],
      alternative,
      of: [{ kind: "exercises", id: drill.exercise.id }],
    },
  ];
}

function ridesShown(built: BuiltPart): PlanRide[] {
  const shown = new Set(built.drill.elements.map(({ id }) => id));
  return ridesWithin(built.rides().plan, ({ element }) => shown.has(element));
}

/** How a plan is read, under the first of a paper. */
function keyOf(context: PaperContext, built: BuiltPart, hasTrack: boolean): Span[] {
  const isFirst = context.parts.find((part) => ridesShown(part).length > 0) === built;
  const track = hasTrack ? "; the thin inner line is the track" : "";
  return isFirst ? [soft(` A number stands where a step begins; dotted: supplied${track}.`)] : [];
}

/** Stations that the book has named by the end of the exercise, those no words are marked for, and those the exercise asks
 *  for: what comes into a later part only is not there yet. */
function stationsKnown({ book, places }: PaperContext, { rows, whole }: BuiltPart): ReadonlySet<string> {
  const order = new Map(places.passages.map(({ id }, index) => [id, index]));
  const last = Math.max(...rows.passages.map(({ id }) => order.get(id) ?? -1));
  let asked: string | null = null;
  // Spelt out only where it is not known already: an exercise is long.
  const asksFor = (id: string): boolean => {
    asked ??= JSON.stringify(whole.elements);
    return asked.includes(`"${id}"`);
  };
  const known = book.all("stations").filter(({ id }) => {
    const named = book
      .marksOf("stations", id)
      .flatMap((mark) =>
        book.anchorsOf(mark.id).flatMap((anchor) => (anchor.is === "text" ? (order.get(anchor.passage) ?? []) : [])),
      );
    return named.length === 0 || Math.min(...named) <= last || asksFor(id);
  });
  return new Set(known.map(({ id }) => id));
}

/** A5 is read nearer, and holds less. */
const ON_A5 = 0.82;
const onSheet = ({ ask }: PaperContext, millimetres: number): number =>
  ask.size === "A5" ? millimetres * ON_A5 : millimetres;

/** The ground with its stations and no line on it. */
export function groundFigure(
  context: PaperContext,
  built: BuiltPart,
  { id, name }: Ground,
  tallest: number,
): PlainBlock {
  const { ride } = built.rides().plan[0] as PlanRide;
  const { svg, width } = planFigure(ride, { fromStage: 0, toStage: 0, tallest: onSheet(context, tallest) });
  const { ground } = ride;
  const stations = ground.stations.map((station) => station.name);
  const size = `${metres(ground.width)} by ${metres(ground.length)} m`;
  const alternative = `Plan of ${name}, ${size}${stations.length === 0 ? "" : `, with ${listed(stations)}`}.`;
  const of = [{ kind: "grounds" as const, id }];
  return { is: "figure", anchor: null, svg, width, caption: [words(`${capital(name)}, ${size}.`)], alternative, of };
}

const metres = (value: number): string => String(Number(value.toFixed(2)));
