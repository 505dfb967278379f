/** server/publish/figures/publish-plan.ts - the plan of an exercise as bytes, for the window and the command line.
 *  May import: shared/drill, server/publish, server/store, siblings. The same rows give the same bytes. */
import { compileDrill } from "../../../shared/drill/compile.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import type { Store } from "../../store/index.ts";
import { rowsForDrill } from "../publish-drill.ts";
import { exerciseRides, ridesWithin } from "./exercise-rides.ts";
import { type PaperFigure, type PlanRide, planOfRides } from "./plan-figure.ts";
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
  const asked = { choice, variant, ...(way && { way }) };
  const { elements } = compileDrill(rows.value, exercise, asked);
  const all = exerciseRides(rows.value, exercise, asked, elements);
  const rides = steps === null ? all : ridesWithin(all, ({ number }) => isWithin(steps, number));
  if (rides.length === 0) return refuseSteps(all, steps ?? { first: 1, last: 1 });
  return done(planOfRides(rides, { ...(width !== null && { millimetres: width }), ...(at !== null && { at }) }));
}

type Steps = NonNullable<PlanOptions["steps"]>;

function isWithin({ first, last }: Steps, number: number | null): boolean {
  return number !== null && first <= number && number <= last;
}

function refuseSteps(rides: readonly PlanRide[], { first, last }: Steps) {
  const most = Math.max(0, ...rides.flatMap(({ ride }) => ride.stages.map(({ number }) => number ?? 0)));
  const title = rides[0]?.ride.title ?? "";
  const asked = first === last ? `a step ${first}` : `a step from ${first} to ${last}`;
  const has = most === 0 ? "no step is written out yet" : `its steps are 1 to ${most}`;
  return refused("selection_not_found", `“${title}” has not ${asked}: ${has}. Ask for steps that it has.`);
}
