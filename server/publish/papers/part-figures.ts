/** server/publish/papers/part-figures.ts - the plan of an exercise, or of the part of it that is on the paper, and its ground.
 *  May import: schema types, server/publish, siblings. */
import type { PlainBlock } from "../../../schema/paper.ts";
import type { Ground } from "../../../schema/riding.ts";
import { exerciseRides, ridesWithin } from "../figures/exercise-rides.ts";
import { type PlanRide, planFigure, planOfRides } from "../figures/plan-figure.ts";
import { capital } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { listed } from "./part-head.ts";
import { soft, words } from "./spans.ts";

/** The exercise of a part as it is ridden, under the readings of the paper: one ride, or one of each role that rides. */
function ridesOf({ rows, ask }: PaperContext, { part, rows: own, whole }: BuiltPart): PlanRide[] {
  const choice = ask.choice.filter(({ crux }) => own.cruxes.has(crux));
  const { variant } = part;
  const options = { choice, variant, ...(variant === null ? { way: ask.way } : {}) };
  return exerciseRides(rows, part.exercise, options, whole.elements, own);
}

/** The lines that are ridden, of the elements on the paper alone. Nothing where none of them is ridden. `tallest` in
 *  millimetres. */
export function planBlocks(context: PaperContext, built: BuiltPart, tallest: number): PlainBlock[] {
  const { drill, cut } = built;
  const shown = new Set(drill.elements.map(({ id }) => id));
  const rides = ridesWithin(ridesOf(context, built), ({ element }) => shown.has(element));
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
      caption: [words(`${capital(groundName)}, with the line of ${cut ?? "the whole"}.${who}`), ...supplied],
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
  const { ride: ridden } = ridesOf(context, built)[0] as PlanRide;
  const { svg, width } = planFigure(ridden, { fromStage: 0, toStage: 0, tallest });
  const { ground } = ridden;
  const stations = ground.stations.map((station) => station.name);
  const size = `${metres(ground.width)} by ${metres(ground.length)} m`;
  const alternative = `Plan of ${name}, ${size}${stations.length === 0 ? "" : `, with ${listed(stations)}`}.`;
  const of = [{ kind: "grounds" as const, id }];
  return { is: "figure", anchor: null, svg, width, caption: [words(`${capital(name)}, ${size}.`)], alternative, of };
}

const metres = (value: number): string => String(Number(value.toFixed(2)));
