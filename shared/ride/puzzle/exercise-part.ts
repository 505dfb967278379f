/** shared/ride/puzzle/exercise-part.ts - one exercise of a puzzle: its elements under readings, and its stages.
 *  May import: schema types, shared/decide, shared/drill, shared/ride, siblings. Keeps rules P1-P5
 *  (shared/ride/puzzle/RULES.md). */
import type { Element } from "../../../schema/exercise.ts";
import type { Way } from "../../../schema/guard.ts";
import type { Rows } from "../../../schema/record.ts";
import type { ReadingOf, Stage } from "../../decide/puzzle.ts";
import { presentElement } from "../../drill/compile-element.ts";
import { type ExerciseRows, exerciseRows } from "../../drill/exercise-rows.ts";
import { namesOf } from "../../drill/names.ts";
import { settle } from "../../drill/settle.ts";
import { beginningOf } from "./beginning.ts";
import type { ByReadings } from "./by-readings.ts";
import { type ElementPlan, ElementPlans } from "./element-plans.ts";
import { elementStage } from "./element-stage.ts";
import { type PuzzleWorld, puzzleWorld } from "./puzzle-world.ts";
import { type ReadingsOf, type ReadingTable, readingTable } from "./reading-table.ts";
import { keyOf, type StillRead } from "./remembered.ts";
import { type Demand, roundsIn, type Watched } from "./remembered-rules.ts";
import type { StageRides } from "./ride-on.ts";
import { statedIn } from "./stated-values.ts";
import type { Bearing } from "./weigh-cruxes.ts";
import type { WeighedStage, WeighOptions } from "./weighed.ts";

export interface ExercisePart {
  laid: ExerciseRows;
  world: PuzzleWorld;
  /** What readings make a difference to: each element by its id, and the beginning. */
  bearings: readonly Bearing[];
  told: WeighedStage[];
  /** Elements that are part of the exercise as the drill has it, with their numbers. */
  present: { number: number | null; is: Element["is"] }[];
  /** `counted`: cruxes of the puzzle; any other is read as the first of its readings. */
  stages: (rides: StageRides, counted: ReadonlySet<string>) => Stage[];
}

type Table = ReadingTable<ElementPlan>;

/** Throws RangeError when the exercise or the variant is not among the rows. */
export function exercisePart(
  rows: Rows,
  exercise: string,
  readingsOf: ReadingsOf,
  options: WeighOptions,
): ExercisePart {
  const laid = exerciseRows(rows, exercise);
  const variant = options.variant ? laid.find("variants", options.variant) : null;
  if (variant === undefined)
    throw new RangeError(`The variant ${options.variant} is not among the rows that were given.`);
  const way: Way = options.way ?? variant?.way ?? "mounted";
  const world = puzzleWorld(rows, laid, way);
  const plans = new ElementPlans({ rows, exercise, way, variant, around: world });
  const everything = [...laid.cruxes.keys()].filter((crux) => readingsOf(crux).length > 1);
  const tables = new Map(
    [...plans.plans].map(([id, by]) => [
      id,
      orEverything(
        readingTable(by, readingsOf, ({ key }) => key),
        everything,
      ),
    ]),
  );
  const begins = beginningOf(plans, tables, world, way);
  const beginning = orEverything(readingTable(begins, readingsOf, keyOf), everything);
  const ridden = laid.elements.filter(({ is }) => is !== "advice");
  const demands = demandsOf(laid, world.bars);

  const stages = (rides: StageRides, counted: ReadonlySet<string>): Stage[] =>
    ridden.map((element, index) => {
      const by = plans.plans.get(element.id) as ByReadings<ElementPlan>;
      const mayBegin = demands.filter(({ from }) => from === element.id || from === null);
      const asked = [
        tables.get(element.id),
        ...(index === 0 ? [beginning] : []),
        ...mayBegin.map(({ id }) => tables.get(id)),
      ];
      const touches = [...new Set(asked.flatMap((table) => table?.cruxes ?? []))].filter((crux) => counted.has(crux));
      const later = ridden.slice(index + 1).map(({ id }) => tables.get(id) as Table);
      const still = stillRead(laid, later, demands, ridden.slice(index + 1), world.bars);
      const doneAgain = world.bars.has("again-fits")
        ? firstsOf([tables.get(element.id) as Table, ...later], laid)
        : NONE;
      const last = index === ridden.length - 1;
      const watched = (readingOf: ReadingOf): Watched => ({
        bars: world.bars,
        beginning: mayBegin.filter(({ id }) => plans.plans.get(id)?.get(readingOf).present),
        ending: demands.filter(({ to }) => to === element.id || (to === null && last)),
        doneAgain,
      });
      return elementStage(
        {
          id: element.id,
          touches,
          stated: statedOf(tables.get(element.id) as Table),
          plans: by,
          begins: index === 0 ? begins : null,
          watched,
          still,
          waived: waiversOf(laid),
          completions: options.completions ?? true,
        },
        world,
        rides,
        readingsOf,
      );
    });
  return {
    laid,
    world,
    bearings: [...tables.values(), beginning],
    ...presence(laid, rows, way, options.variant ?? null, ridden),
    stages,
  };
}

const NONE: ReadonlySet<string> = new Set();

/** Past the limit any crux may make a difference. */
function orEverything<T>(table: ReadingTable<T>, everything: readonly string[]): ReadingTable<T> {
  return table.alike === null ? { ...table, cruxes: everything, asked: everything } : table;
}

/** What later elements may still read. Of an element past the limit it is not known, so it may be anything. */
function stillRead(
  laid: ExerciseRows,
  later: readonly Table[],
  demands: readonly Demand[],
  elements: readonly Element[],
  bars: ReadonlySet<string>,
): StillRead {
  const ids = new Set(elements.map(({ id }) => id));
  const open = later.some(({ alike }) => alike === null);
  const plans = later.flatMap(({ values }) => values.flatMap((value) => value.stages));
  const everyElement = open ? laid.all("elements").map(({ id }) => id) : [];
  return {
    over: later.length === 0,
    sizes: new Set([
      ...plans.flatMap(({ sizesRead }) => sizesRead),
      ...(open ? laid.all("stations").map(({ id }) => id) : []),
    ]),
    began: new Set([...plans.flatMap(({ plan }) => plan.beginsLike ?? []), ...everyElement]),
    firstHands: bars.has("again-fits") ? firstsOf(later, laid) : NONE,
    demands: new Set(demands.filter(({ to }) => (to === null ? later.length > 0 : ids.has(to))).map(({ id }) => id)),
    bars,
  };
}

/** Elements with which a time of something done again begins. */
function firstsOf(tables: readonly Table[], laid: ExerciseRows): ReadonlySet<string> {
  if (tables.some(({ alike }) => alike === null)) return new Set(laid.all("elements").map(({ id }) => id));
  return new Set(
    tables.flatMap(({ values }) =>
      values.flatMap(({ stages }) => roundsIn(stages).flatMap(({ from }) => stages[from]?.plan.source ?? [])),
    ),
  );
}

function demandsOf(laid: ExerciseRows, bars: ReadonlySet<string>): Demand[] {
  return laid.elements.flatMap((element): Demand[] => {
    if (element.is !== "advice" || element.rule === null) return [];
    const code = laid.find("rules", element.rule)?.code;
    if ((code !== "same-hand" && code !== "back-where-begun") || !bars.has(code)) return [];
    return [{ id: element.id, from: element.from, to: element.to, rule: code }];
  });
}

function statedOf({ values }: Table): string[] {
  return [...new Set(values.flatMap(({ stages }) => stages.flatMap(statedIn)))].sort();
}

function waiversOf(laid: ExerciseRows): (rule: string, elements: readonly string[]) => boolean {
  const waived = new Set(laid.all("waivers").map(({ rule, element }) => `${rule} ${element}`));
  return (rule, elements) => elements.some((element) => waived.has(`${rule} ${element}`));
}

/** Numbers as the drill prints them: what waits for a crux is there. */
function presence(
  laid: ExerciseRows,
  rows: Rows,
  way: Way,
  variant: string | null,
  ridden: readonly Element[],
): Pick<ExercisePart, "told" | "present"> {
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
  return {
    told: ridden.flatMap((element): WeighedStage[] =>
      element.is === "advice"
        ? []
        : [
            {
              id: element.id,
              exercise: laid.exercise.id,
              element: element.id,
              is: element.is,
              number: numbers.get(element.id) ?? null,
              title: "title" in element ? element.title : "",
            },
          ],
    ),
    present: laid.elements.flatMap(({ id, is }) => {
      const at = numbers.get(id);
      return at === undefined ? [] : [{ number: at, is }];
    }),
  };
}
