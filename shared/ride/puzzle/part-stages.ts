/** shared/ride/puzzle/part-stages.ts - the stages of one exercise, each with what may be asked in it and read after it.
 *  May import: schema types, shared/decide, shared/drill, siblings. Keeps rules P1 and P5 (shared/ride/puzzle/RULES.md). */
import type { Element } from "../../../schema/exercise.ts";
import type { ReadingOf, Stage } from "../../decide/puzzle.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import { isRide } from "../horse-order.ts";
import type { ByReadings } from "./by-readings.ts";
import type { ElementPlan, ElementPlans } from "./element-plans.ts";
import { elementStage } from "./element-stage.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import type { ReadingsOf, ReadingTable } from "./reading-table.ts";
import type { Remembered, StillRead } from "./remembered.ts";
import { type Demand, roundsIn, type Watched } from "./remembered-rules.ts";
import { type RiddenBefore, StageRides } from "./ride-on.ts";
import { statedIn } from "./stated-values.ts";
import type { WeighedStage } from "./weighed.ts";

type Table = ReadingTable<ElementPlan>;

export interface PartSources {
  laid: ExerciseRows;
  /** The stages to be made, in the order of the exercise. */
  told: readonly WeighedStage[];
  plans: ElementPlans;
  /** By element. */
  tables: ReadonlyMap<string, Table>;
  begins: ByReadings<Remembered>;
  beginning: ReadingTable<Remembered>;
  world: PuzzleWorld;
  readingsOf: ReadingsOf;
  completions: boolean;
}

export function partStages(part: PartSources, before: RiddenBefore, counted: ReadonlySet<string>): readonly Stage[] {
  const { laid, told, plans, tables, begins, beginning, world, readingsOf, completions } = part;
  const rides = new StageRides(world, before);
  const ridden = told.flatMap(({ element }) => laid.elements.filter(({ id }) => id === element));
  const demands = demandsOf(laid, world.bars);
  const toTheEnd = demands.filter(({ to }) => to === null).map(({ id }) => id);
  const waived = waiversOf(laid);
  const tableOf = ({ id }: Element): Table => tables.get(id) as Table;
  return ridden.map((element, index) => {
    const { id } = element;
    const rest = ridden.slice(index + 1);
    const later = rest.map(tableOf);
    const mayBegin = demands.filter(({ from }) => from === id || from === null);
    const ending = demands.filter(({ to }) => to === id || (to === null && rest.length === 0));
    const doneAgain = world.bars.has("again-fits") ? firstsOf([tableOf(element), ...later], laid) : NONE;
    const watched = (readingOf: ReadingOf): Watched => ({
      bars: world.bars,
      beginning: mayBegin.filter((demand) => plans.plans.get(demand.id)?.get(readingOf).present),
      ending,
      toTheEnd,
      doneAgain,
    });
    const asked = [
      ...tableOf(element).cruxes,
      ...(index === 0 ? beginning.cruxes : []),
      ...mayBegin.flatMap((demand) => tables.get(demand.id)?.cruxes ?? []),
    ];
    return elementStage(
      {
        id: told[index]?.id ?? id,
        touches: [...new Set(asked)].filter((crux) => counted.has(crux)),
        // What is done again is said where it was first said.
        stated: element.is === "step" ? statedOf(tableOf(element)) : [],
        plans: plans.plans.get(id) as ByReadings<ElementPlan>,
        begins: index === 0 ? begins : null,
        watched,
        still: stillRead(laid, later, demands, rest, world.bars),
        waived,
        completions,
        first: !ridden.slice(0, index).some((earlier) => mayRide(tableOf(earlier))),
      },
      world,
      rides,
      readingsOf,
    );
  });
}

function mayRide({ alike, values }: Table): boolean {
  return alike === null || values.some(({ stages }) => stages.some(({ plan }) => plan.acts.some(isRide)));
}

const NONE: ReadonlySet<string> = new Set();

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
