/** shared/ride/choose-readings.ts - one reading for every crux, since only one of them can be ridden at a time.
 *  May import: schema types, shared/drill, types of siblings. Keeps rule R2 (shared/ride/RULES.md). What nobody has settled is
 *  shown under one reading, and said not to be settled. */
import type { Reading } from "../../schema/crux.ts";
import type { Drill, DrillCrux } from "../../schema/drill.ts";
import type { Way } from "../../schema/guard.ts";
import type { ExerciseRows } from "../drill/exercise-rows.ts";
import { type Choice, settle } from "../drill/settle.ts";

export interface ChosenReadings {
  choice: ReadonlyMap<string, string>;
  /** Those taken only so that something can be ridden. */
  supplied: ReadonlyMap<string, string>;
}

/** What the drill takes, and for the rest the reading that is preferred, else the first by rank that is not ruled out and goes with
 *  those taken. `preferred`: readings by crux. */
export function chooseReadings(
  rows: ExerciseRows,
  given: Choice,
  way: Way,
  variant: string | null,
  preferred: ReadonlyMap<string, string> = new Map(),
): ChosenReadings {
  const settlement = settle(rows, given, way, variant);
  const taken = new Map<string, string>();
  const choice = new Map(
    Array.isArray(given) ? given.map(({ crux, reading }) => [crux, reading] as const) : (given as Map<string, string>),
  );
  const open: string[] = [];
  for (const crux of [...rows.cruxes.keys()].sort()) {
    const reading = settlement.taken(crux, null)?.reading;
    if (reading) taken.set(crux, reading.id);
    else open.push(crux);
  }
  const supplied = new Map<string, string>();
  for (const crux of open) {
    const readings = rows.readingsOf(crux);
    const left = readings.filter(({ status }) => status.is !== "ruled out");
    const picked =
      left.find(({ id }) => id === preferred.get(crux)) ??
      left.find((reading) => goesWith(reading, taken)) ??
      left[0] ??
      readings[0];
    if (!picked) continue;
    supplied.set(crux, picked.id);
    choice.set(crux, picked.id);
    taken.set(crux, picked.id);
  }
  return { choice, supplied };
}

/** What is not taken yet stands in nobody's way. */
function goesWith({ requires, excludes }: Reading, taken: ReadonlyMap<string, string>): boolean {
  const reads = ({ crux, readings }: Reading["requires"][number]): boolean | null => {
    const reading = taken.get(crux);
    return reading === undefined ? null : readings.includes(reading);
  };
  return requires.every((one) => reads(one) !== false) && !excludes.some((one) => reads(one) === true);
}

/** A sentence for each crux of the drill that is shown under a reading nobody settled, in the order of the drill. */
export function unsettledWords(drill: Drill, supplied: ReadonlyMap<string, string>): string[] {
  const cruxes = [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes];
  return [...new Set(cruxes.flatMap((crux) => unsettledWord(crux, supplied) ?? []))];
}

function unsettledWord({ crux, title, taken }: DrillCrux, supplied: ReadonlyMap<string, string>): string | null {
  if (taken === null || supplied.get(crux) !== taken.reading) return null;
  return `† ${title}: shown as ‘${taken.title}’; not settled.`;
}
