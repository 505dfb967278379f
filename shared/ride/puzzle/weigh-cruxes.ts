/** shared/ride/puzzle/weigh-cruxes.ts - which cruxes are counted, which readings of them are one, and how they are tied.
 *  May import: schema types, shared/decide, shared/drill, siblings. Keeps rules P2 and P6 (shared/ride/puzzle/RULES.md). */
import type { Crux, Reading } from "../../../schema/crux.ts";
import type { ReadingCondition } from "../../../schema/guard.ts";
import type { PuzzleCrux, ReadIn, Tie } from "../../decide/puzzle.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import type { ReadingClass } from "./weighed.ts";

/** Something the readings make a difference to: an element, the beginning. */
export interface Bearing {
  /** Cruxes that make a difference to it. */
  cruxes: readonly string[];
  asked: readonly string[];
  alike: ((crux: string, first: string, second: string) => boolean) | null;
}

export interface WeighedCruxes {
  cruxes: PuzzleCrux[];
  requires: Tie[];
  excludes: Tie[];
  classes: Map<string, readonly ReadingClass[]>;
  /** Cruxes that something asks for, whether or not they make a difference. */
  asked: ReadonlySet<string>;
}

export function weighCruxes(rows: ExerciseRows, bearings: readonly Bearing[]): WeighedCruxes {
  const asked = new Set(bearings.flatMap((bearing) => bearing.asked));
  const counted = countedCruxes(rows, bearings, asked);
  const classes = new Map(counted.map((crux) => [crux.id, classesOf(rows, crux, counted, bearings)]));
  const rank = new Map(
    [...classes].flatMap(([, list]) => list.flatMap(({ reading, members }) => members.map((one) => [one, reading]))),
  );
  const known = new Set(counted.map(({ id }) => id));
  const readIn = ({ crux, readings }: ReadingCondition): ReadIn => ({
    crux,
    readings: [...new Set(readings.flatMap((reading) => rank.get(reading) ?? []))],
  });
  const standsFor = (crux: Crux): Reading[] => rows.readingsOf(crux.id).filter(({ id }) => rank.get(id) === id);
  const ties = (which: "requires" | "excludes"): Tie[] =>
    counted.flatMap((crux) =>
      standsFor(crux).flatMap((reading) =>
        reading[which]
          .filter((tie) => known.has(tie.crux))
          .map((tie) => ({ crux: crux.id, reading: reading.id, of: readIn(tie) })),
      ),
    );
  return {
    cruxes: counted.map((crux) => ({
      id: crux.id,
      readings: standsFor(crux).map(({ id }) => id),
      ruledOut: standsFor(crux)
        .filter((reading) => isRuledOut(reading) || reading.requires.some((tie) => !known.has(tie.crux)))
        .map(({ id }) => id),
      arisesWhen: crux.arisesWhen.map(readIn),
    })),
    requires: ties("requires"),
    excludes: ties("excludes"),
    classes,
    asked,
  };
}

const isRuledOut = ({ status }: Reading): boolean => status.is === "ruled out";

/** Those that make a difference, or have a reading that is ruled out where they are asked for; and those they hang on. */
function countedCruxes(rows: ExerciseRows, bearings: readonly Bearing[], asked: ReadonlySet<string>): Crux[] {
  const wanted = new Set(bearings.flatMap(({ cruxes }) => cruxes));
  for (const id of asked) if (rows.readingsOf(id).some(isRuledOut)) wanted.add(id);
  const todo = [...wanted];
  const add = (id: string): void => {
    if (wanted.has(id) || !canArise(rows, id)) return;
    wanted.add(id);
    todo.push(id);
  };
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    for (const condition of rows.cruxes.get(id)?.arisesWhen ?? []) add(condition.crux);
    for (const { requires, excludes } of rows.readingsOf(id))
      for (const tie of [...requires, ...excludes]) add(tie.crux);
  }
  return rows.all("cruxes").filter(({ id }) => wanted.has(id) && canArise(rows, id));
}

/** Whether it has readings, and conditions that can be met. Conditions are in no circle here (mended-rows.ts). */
export function canArise(rows: ExerciseRows, id: string): boolean {
  const crux = rows.cruxes.get(id);
  if (crux === undefined || rows.readingsOf(id).length === 0) return false;
  return crux.arisesWhen.every(
    (condition) =>
      canArise(rows, condition.crux) &&
      rows.readingsOf(condition.crux).some((reading) => condition.readings.includes(reading.id)),
  );
}

/** Readings that do the same wherever they bear and are tied alike; a reading that is ruled out stands alone. */
function classesOf(
  rows: ExerciseRows,
  crux: Crux,
  counted: readonly Crux[],
  bearings: readonly Bearing[],
): ReadingClass[] {
  const classes: { first: Reading; members: string[] }[] = [];
  for (const reading of rows.readingsOf(crux.id)) {
    const same = isRuledOut(reading)
      ? undefined
      : classes.find(({ first }) => !isRuledOut(first) && alike(rows, crux.id, first, reading, counted, bearings));
    if (same) same.members.push(reading.id);
    else classes.push({ first: reading, members: [reading.id] });
  }
  return classes.map(({ first, members }) => ({ reading: first.id, members }));
}

export function alike(
  rows: ExerciseRows,
  crux: string,
  first: Reading,
  second: Reading,
  counted: readonly Crux[],
  bearings: readonly Bearing[],
): boolean {
  const tied = ({ requires, excludes }: Reading): string =>
    JSON.stringify([requires, excludes].map((list) => list.map(conditionKey).sort()));
  const namedAlike = ({ crux: of, readings }: ReadingCondition): boolean =>
    of !== crux || readings.includes(first.id) === readings.includes(second.id);
  return (
    tied(first) === tied(second) &&
    bearings.every((bearing) => bearing.alike === null || bearing.alike(crux, first.id, second.id)) &&
    bearings.every((bearing) => bearing.alike !== null || !bearing.asked.includes(crux)) &&
    counted.every(
      ({ id, arisesWhen }) =>
        arisesWhen.every(namedAlike) &&
        rows.readingsOf(id).every(({ requires, excludes }) => [...requires, ...excludes].every(namedAlike)),
    )
  );
}

function conditionKey({ crux, readings }: ReadingCondition): string {
  return JSON.stringify([crux, [...readings].sort()]);
}
