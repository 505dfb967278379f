/** server/publish/papers/part-figures.ts - the plan of an exercise, or of the part of it that is on the paper, and its ground.
 *  May import: schema types, shared/ride, server/publish, siblings. */
import type { PlainBlock } from "../../../schema/paper.ts";
import type { Ground } from "../../../schema/riding.ts";
import type { Ridden } from "../../../shared/ride/ridden.ts";
import { rideWithContext } from "../../../shared/ride/ride-exercise.ts";
import { planFigure } from "../figures/plan-figure.ts";
import { capital } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { listed } from "./part-head.ts";
import { soft, words } from "./spans.ts";

/** The exercise of a part as it is ridden, under the readings of the paper; what the rules find in it is not asked. */
export function riddenPart({ rows, ask }: PaperContext, { part, rows: own }: BuiltPart): Ridden {
  const choice = ask.choice.filter(({ crux }) => own.cruxes.has(crux));
  const { variant } = part;
  const options = { choice, variant, ...(variant === null ? { way: ask.way } : {}) };
  return rideWithContext(rows, part.exercise, options, own).ridden;
}

/** The line that is ridden, of the elements on the paper alone. Nothing where none of them is ridden. `tallest` in
 *  millimetres. */
export function planBlocks(ridden: Ridden, { drill, cut }: BuiltPart, tallest: number): PlainBlock[] {
  const shown = new Set(drill.elements.map(({ id }) => id));
  const stages = ridden.stages.flatMap(({ element }, index) => (shown.has(element) ? index : []));
  const [first, last] = [stages[0], stages.at(-1)];
  if (first === undefined || last === undefined) return [];
  const { svg, width, alternative } = planFigure(ridden, { fromStage: first, toStage: last + 1, tallest });
  const supplied = ridden.groundSupplied ? [soft(" The ground is supplied: the exercise names none.")] : [];
  return [
    {
      is: "figure",
      anchor: null,
      svg,
      width,
      caption: [words(`${capital(ridden.groundName)}, with the line of ${cut ?? "the whole"}.`), ...supplied],
      alternative,
      of: [{ kind: "exercises", id: drill.exercise.id }],
    },
  ];
}

/** The ground with its stations and no line on it. */
export function groundFigure(ridden: Ridden, { id, name }: Ground, tallest: number): PlainBlock {
  const { svg, width } = planFigure(ridden, { fromStage: 0, toStage: 0, tallest });
  const { ground } = ridden;
  const stations = ground.stations.map((station) => station.name);
  const size = `${metres(ground.width)} by ${metres(ground.length)} m`;
  const alternative = `Plan of ${name}, ${size}${stations.length === 0 ? "" : `, with ${listed(stations)}`}.`;
  const of = [{ kind: "grounds" as const, id }];
  return { is: "figure", anchor: null, svg, width, caption: [words(`${capital(name)}, ${size}.`)], alternative, of };
}

const metres = (value: number): string => String(Number(value.toFixed(2)));
