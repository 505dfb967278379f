/** shared/ride/puzzle/beginning.ts - the state in which a ride begins: what is carried, and where the horse stands.
 *  May import: schema types, shared/drill, shared/ground, shared/hands, shared/ride, siblings. Keeps rule P4
 *  (shared/ride/puzzle/RULES.md). Both look ahead: at what any later element names, and at the first figure. */
import type { Way } from "../../../schema/guard.ts";
import type { ReadingOf } from "../../decide/puzzle.ts";
import { carriedObjects } from "../../drill/objects-used.ts";
import { startState } from "../../hands/state.ts";
import { compareRanked } from "../../rank.ts";
import { isRide } from "../horse-order.ts";
import { beginning } from "../ride-exercise.ts";
import { NOTHING_CARRIED_IN } from "../rules/carried-in.ts";
import { ByReadings } from "./by-readings.ts";
import type { ElementPlan, ElementPlans } from "./element-plans.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import type { ReadingTable } from "./reading-table.ts";
import type { Remembered } from "./remembered.ts";

/** `tables`: by element, in the order of the exercise. An object that some element names under every reading is always
 *  there; for the others the elements that may name them are asked. */
export function beginningOf(
  plans: ElementPlans,
  tables: ReadonlyMap<string, ReadingTable<ElementPlan>>,
  { usual }: PuzzleWorld,
  way: Way,
): ByReadings<Remembered> {
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
  return new ByReadings((readingOf) => {
    const there = new Set([...named].filter(isAlways));
    for (const [element] of namers)
      for (const object of plans.plans.get(element)?.get(readingOf).objects ?? []) there.add(object);
    const objects = carriedObjects(rows.filter(({ id }) => there.has(id)));
    const state = startState(objects, way);
    const { ground } = plans.ground(readingOf);
    const first = firstFigure(plans, readingOf);
    const { pose } = beginning({ ground, usual }, first, state);
    return {
      state,
      pose,
      last: null,
      sizes: new Map(),
      began: new Map(),
      carried: NOTHING_CARRIED_IN,
      goingOn: new Set(),
      firstHands: new Map(),
      demands: new Map(),
    };
  });
}

/** The first stage with a figure, as a list of one; of none where nothing is ridden. No element after it is asked. */
function firstFigure(plans: ElementPlans, readingOf: ReadingOf) {
  for (const by of plans.plans.values()) {
    const found = by.get(readingOf).stages.find(({ plan }) => plan.acts.some(isRide));
    if (found) return [found.plan];
  }
  return [];
}
