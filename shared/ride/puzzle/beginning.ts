/** shared/ride/puzzle/beginning.ts - the state in which a ride begins: what is carried and how, and where the horse stands.
 *  May import: schema types, shared/drill, shared/ground, shared/hands, shared/ride, siblings. Keeps rule P4
 *  (shared/ride/puzzle/RULES.md). Both look ahead: at what any later element names, and at the first figure. */
import type { ReadingOf } from "../../decide/puzzle.ts";
import { beginningState } from "../../drill/beginning-state.ts";
import { carriedObjects } from "../../drill/objects-used.ts";
import { compareRanked } from "../../rank.ts";
import { isRide } from "../horse-order.ts";
import { beginning } from "../ride-exercise.ts";
import { NOTHING_CARRIED_IN } from "../rules/carried-in.ts";
import { holdsAtFirst } from "../rules/holds-in-force.ts";
import { ByReadings } from "./by-readings.ts";
import type { ElementPlan, ElementPlans } from "./element-plans.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import type { ReadingTable } from "./reading-table.ts";
import type { Remembered } from "./remembered.ts";

export interface Beginning {
  begins: ByReadings<Remembered>;
  /** Every crux it could ask for. */
  reach: () => string[];
}

/** `tables`: by element, in the order of the exercise. An object that some element names under every reading is always
 *  there; for the others the elements that may name them are asked. `throughout`: cruxes that standing instructions may hang
 *  on. */
export function beginningOf(
  plans: ElementPlans,
  tables: ReadonlyMap<string, ReadingTable<ElementPlan>>,
  { usual }: PuzzleWorld,
  throughout: () => string[],
): Beginning {
  const all = [...tables.values()];
  const named = new Set(all.flatMap(({ values }) => values.flatMap(({ objects }) => objects)));
  const isAlways = (object: string): boolean =>
    all.some(({ values }) => values.length > 0 && values.every(({ objects }) => objects.includes(object)));
  const sometimes = [...named].filter((object) => !isAlways(object));
  const namers = [...tables].filter(
    ([, { values, alike }]) =>
      alike === null || values.some(({ objects }) => objects.some((object) => sometimes.includes(object))),
  );
  const rows = [...plans.laid.all("objects")].sort(compareRanked);
  const begins = new ByReadings((readingOf): Remembered => {
    const there = new Set([...named].filter(isAlways));
    for (const [element] of namers)
      for (const object of plans.plans.get(element)?.get(readingOf).objects ?? []) there.add(object);
    const { opening, context, objects, settlement } = plans.opening(readingOf);
    for (const object of objects) there.add(object);
    const carried = carriedObjects(rows.filter(({ id }) => there.has(id)));
    const state = beginningState(carried, settlement, opening, context);
    const { ground } = plans.ground(readingOf);
    const { pose } = beginning({ ground, usual }, firstFigure(plans, readingOf), state);
    const held = { ...NOTHING_CARRIED_IN, holds: holdsAtFirst(opening, state) };
    return { ...NOTHING_YET, carried: held, state, pose };
  });
  const asked = (): string[] => {
    const figures = [...tables].slice(0, untilSureFigure(all) + 1);
    const told = [...namers, ...figures].flatMap(([, { cruxes }]) => cruxes);
    return [...new Set([...told, ...throughout()])];
  };
  return { begins, reach: asked };
}

const NOTHING_YET: Omit<Remembered, "state" | "pose"> = Object.freeze({
  last: null,
  sizes: new Map(),
  began: new Map(),
  carried: NOTHING_CARRIED_IN,
  goingOn: new Set<string>(),
  firstHands: new Map(),
  demands: new Map(),
});

/** Index of the first element that rides a figure under every reading; the last where none does. */
function untilSureFigure(tables: readonly ReadingTable<ElementPlan>[]): number {
  const rides = ({ stages }: ElementPlan): boolean => stages.some(({ plan }) => plan.acts.some(isRide));
  const first = tables.findIndex(({ values }) => values.length > 0 && values.every(rides));
  return first === -1 ? tables.length : first;
}

/** The first stage with a figure, as a list of one; of none where nothing is ridden. No element after it is asked. */
function firstFigure(plans: ElementPlans, readingOf: ReadingOf) {
  for (const by of plans.plans.values()) {
    const found = by.get(readingOf).stages.find(({ plan }) => plan.acts.some(isRide));
    if (found) return [found.plan];
  }
  return [];
}
