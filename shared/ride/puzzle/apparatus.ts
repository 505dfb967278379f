/** shared/ride/puzzle/apparatus.ts - cruxes that are listed and not counted, each with the reason.
 *  May import: schema types, shared/drill, siblings. Keeps rule P6 (shared/ride/puzzle/RULES.md). */
import type { Crux } from "../../../schema/crux.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import type { ReadingsOf } from "./reading-table.ts";
import { canArise, type WeighedCruxes } from "./weigh-cruxes.ts";

/** Those of these exercises, and those of the work whose words stand in them or that are asked for, by title. */
export function apparatusOf(
  rows: ExerciseRows,
  exercises: readonly string[],
  { cruxes, asked }: Pick<WeighedCruxes, "cruxes" | "asked">,
  readingsOf: ReadingsOf,
): { crux: string; why: string }[] {
  const counted = new Set(cruxes.map(({ id }) => id));
  const passages = new Set(
    rows
      .all("passages")
      .filter(({ exercise }) => exercise !== null && exercises.includes(exercise))
      .map(({ id }) => id),
  );
  const whole = rows.all("exercises").every(({ id }) => exercises.includes(id));
  const isHere = ({ id, exercise }: Crux): boolean =>
    exercise !== null ? exercises.includes(exercise) : whole || asked.has(id) || speaksHere(rows, id, passages);
  return rows
    .all("cruxes")
    .filter((crux) => !counted.has(crux.id) && isHere(crux))
    .map((crux) => ({ crux: crux.id, why: why(rows, crux, asked, readingsOf) }));
}

function speaksHere(rows: ExerciseRows, crux: string, passages: ReadonlySet<string>): boolean {
  return rows
    .marksOf("cruxes", crux)
    .some(({ id }) => rows.anchorsOf(id).some((anchor) => anchor.is === "text" && passages.has(anchor.passage)));
}

function why(rows: ExerciseRows, { id }: Crux, asked: ReadonlySet<string>, readingsOf: ReadingsOf): string {
  const readings = rows.readingsOf(id);
  if (readings.length === 0) return "It has no reading yet.";
  if (!canArise(rows, id)) return "It never arises: what it arises under is no longer there.";
  if (readings.length === 1) return "It has only one reading, so there is nothing to choose.";
  if (!asked.has(id)) return "Nothing that is ridden here hangs on it.";
  return readingsOf(id).length === 1
    ? "Only one of its readings is not ruled out, so there is nothing to choose."
    : "Its readings do the same to the ride.";
}
