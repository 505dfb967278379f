/** server/publish/figures/publish-plan.ts - the plan of an exercise as bytes, for the window and the command line.
 *  May import: schema types, shared/ride, server/publish, server/store, siblings. The same rows give the same bytes. */
import type { Ridden } from "../../../shared/ride/ridden.ts";
import { rideExercise } from "../../../shared/ride/ride-exercise.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import type { Store } from "../../store/index.ts";
import { rowsForDrill } from "../publish-drill.ts";
import { type PaperFigure, planFigure } from "./plan-figure.ts";
import type { PlanOptions } from "./plan-options.ts";
import { pngOf } from "./png.ts";

export const PLAN_FORMS = ["svg", "png"] as const;
export type PlanForm = (typeof PLAN_FORMS)[number];

/** The figure, as an SVG file in UTF-8 or as PNG. */
export function publishPlan(store: Store, exercise: string, options: PlanOptions, form: PlanForm): Outcome<Uint8Array> {
  const figure = planOf(store, exercise, options);
  if (!figure.ok) return figure;
  const { svg, width } = figure.value;
  if (form === "png") return done(pngOf(svg, width));
  return done(new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`));
}

function planOf(store: Store, exercise: string, options: PlanOptions): Outcome<PaperFigure> {
  const rows = rowsForDrill(store, exercise, options);
  if (!rows.ok) return rows;
  const { choice, way, variant, steps, width, at } = options;
  const ridden = rideExercise(rows.value, exercise, { choice, variant, ...(way && { way }) });
  const stages = steps === null ? { from: 0, to: ridden.stages.length } : stagesOf(ridden, steps);
  if (stages === null) return refuseSteps(ridden, steps ?? { first: 1, last: 1 });
  const figure = planFigure(ridden, {
    fromStage: stages.from,
    toStage: stages.to,
    ...(width !== null && { millimetres: width }),
    ...(at !== null && { at }),
  });
  return done(figure);
}

/** The stages from the first that shows a number of the range to the last; null where none does. */
function stagesOf({ stages }: Ridden, { first, last }: { first: number; last: number }) {
  const within = (number: number | null) => number !== null && first <= number && number <= last;
  const from = stages.findIndex(({ number }) => within(number));
  if (from < 0) return null;
  return { from, to: stages.findLastIndex(({ number }) => within(number)) + 1 };
}

function refuseSteps({ title, stages }: Ridden, { first, last }: { first: number; last: number }) {
  const most = Math.max(0, ...stages.map(({ number }) => number ?? 0));
  const asked = first === last ? `a step ${first}` : `a step from ${first} to ${last}`;
  const has = most === 0 ? "no step is written out yet" : `its steps are 1 to ${most}`;
  return refused("selection_not_found", `“${title}” has not ${asked}: ${has}. Ask for steps that it has.`);
}
