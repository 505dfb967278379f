/** shared/ride/puzzle/exercise-part.ts - one exercise of a puzzle: its elements under every reading that bears on them.
 *  May import: schema types, shared/decide, shared/drill, shared/ride, siblings. Keeps rules P1-P5
 *  (shared/ride/puzzle/RULES.md). */
import type { Element } from "../../../schema/exercise.ts";
import type { Way } from "../../../schema/guard.ts";
import type { Rows } from "../../../schema/record.ts";
import type { Stage } from "../../decide/puzzle.ts";
import { presentElement } from "../../drill/compile-element.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import { namesOf } from "../../drill/names.ts";
import { settle } from "../../drill/settle.ts";
import { ridesIn, rolesOf } from "../roles.ts";
import { beginningOf } from "./beginning.ts";
import type { ByReadings } from "./by-readings.ts";
import { type ElementPlan, ElementPlans } from "./element-plans.ts";
import { partStages } from "./part-stages.ts";
import { type PuzzleWorld, puzzleWorld } from "./puzzle-world.ts";
import { type ReadingsOf, type ReadingTable, readingTable } from "./reading-table.ts";
import { keyOf } from "./remembered.ts";
import type { RiddenBefore } from "./ride-on.ts";
import type { Bearing } from "./weigh-cruxes.ts";
import type { WeighedStage, WeighOptions } from "./weighed.ts";
import { withinReach } from "./within-reach.ts";

export interface ExercisePart {
  world: PuzzleWorld;
  /** What readings make a difference to: each element by its id, and the beginning. */
  bearings: readonly Bearing[];
  told: WeighedStage[];
  /** Elements that are part of the exercise as the drill has it, with their numbers. */
  present: { number: number | null; is: Element["is"] }[];
  /** `counted`: cruxes of the puzzle; any other is read as the first of its readings. They are the same stages as the
   *  last time, with all they have found, while both are the same. */
  stages: (before: RiddenBefore, counted: readonly string[]) => readonly Stage[];
}

/** `role`: whose part of the exercise it is; null: all of it. `readingsOf` gives the readings to try of each crux. Throws
 *  RangeError when the variant is not among the rows. */
export function exercisePart(
  rows: Rows,
  laid: ExerciseRows,
  role: string | null,
  readingsOf: ReadingsOf,
  options: WeighOptions,
): ExercisePart {
  const variant = options.variant ? laid.find("variants", options.variant) : null;
  if (variant === undefined)
    throw new RangeError(`The variant ${options.variant} is not among the rows that were given.`);
  const way: Way = options.way ?? variant?.way ?? "mounted";
  const world = puzzleWorld(rows, laid, way);
  const plans = new ElementPlans({ rows, laid, role, way, variant, around: world });
  const open = (cruxes: readonly string[]): string[] => cruxes.filter((crux) => readingsOf(crux).length > 1);
  const tables = new Map(
    laid.elements.map((element) => {
      const by = plans.plans.get(element.id) as ByReadings<ElementPlan>;
      const table = readingTable(by, readingsOf, ({ key }) => key);
      return [element.id, orAll(table, () => open(withinReach(rows, laid, element)))];
    }),
  );
  const { begins, reach } = beginningOf(plans, tables, world, () => withinReach(rows, laid, null));
  const beginning = orAll(readingTable(begins, readingsOf, keyOf), () => open(reach()));
  const numbers = numbersIn(laid, rows, way, options.variant ?? null);
  const told = toldStages(laid, role, numbers);
  let last: { before: RiddenBefore; counted: string; stages: readonly Stage[] } | null = null;
  return {
    world,
    bearings: [...tables.values(), beginning],
    told,
    present: laid.elements.flatMap(({ id, is }) => {
      const number = numbers.get(id);
      return number === undefined ? [] : [{ number, is }];
    }),
    stages: (before, counted) => {
      const key = JSON.stringify(counted);
      if (last?.before !== before || last.counted !== key) {
        const completions = options.completions ?? true;
        const stages = partStages(
          { laid, told, plans, tables, begins, beginning, world, readingsOf, completions },
          before,
          new Set(counted),
        );
        last = { before, counted: key, stages };
      }
      return last.stages;
    },
  };
}

/** Past the limit any of these may make a difference. */
function orAll<T>(table: ReadingTable<T>, all: () => string[]): ReadingTable<T> {
  if (table.alike !== null) return table;
  const cruxes = all();
  return { ...table, cruxes, asked: cruxes };
}

/** Numbers as the drill prints them, null for what has none: what waits for a crux is there. */
function numbersIn(
  laid: ExerciseRows,
  rows: Rows,
  way: Way,
  variant: string | null,
): ReadonlyMap<string, number | null> {
  const base = { rows: laid, names: namesOf(rows), settlement: settle(laid, [], way, variant), wordless: true };
  const left = new Set(
    laid.find("variants", variant ?? "")?.deltas.flatMap((delta) => (delta.is === "leave out" ? [delta.element] : [])),
  );
  const numbers = new Map<string, number | null>();
  let number = 0;
  for (const element of laid.elements) {
    if (left.has(element.id) || presentElement(base, element) === null) continue;
    const counts = element.is === "step" || element.is === "again";
    if (counts) number += 1;
    numbers.set(element.id, counts ? number : null);
  }
  return numbers;
}

/** One for each element but advice that the role rides. Of what several roles ride the first has the element's own id. */
function toldStages(
  laid: ExerciseRows,
  role: string | null,
  numbers: ReadonlyMap<string, number | null>,
): WeighedStage[] {
  const [first] = rolesOf(laid.elements);
  return laid.elements.flatMap((element): WeighedStage[] => {
    if (element.is === "advice" || !ridesIn(element.role, role)) return [];
    const another = element.role === "" && role !== null && role !== first;
    return [
      {
        id: another ? `${element.id} ${role}` : element.id,
        exercise: laid.exercise.id,
        element: element.id,
        role,
        is: element.is,
        number: numbers.get(element.id) ?? null,
        title: "title" in element ? element.title : "",
      },
    ];
  });
}
