/** shared/ride/puzzle/exercise-puzzle.ts - the rows of exercises as a puzzle for shared/decide.
 *  May import: schema types, shared/decide, shared/drill, shared/ride, siblings. Keeps rules P1-P9
 *  (shared/ride/puzzle/RULES.md). Pure: the same rows in any order give the same puzzle. */
import type { Reading } from "../../../schema/crux.ts";
import type { Rows } from "../../../schema/record.ts";
import { type ExerciseRows, exerciseRows } from "../../drill/exercise-rows.ts";
import { compareRanked } from "../../rank.ts";
import { rolesOf } from "../roles.ts";
import { apparatusOf } from "./apparatus.ts";
import { type ExercisePart, exercisePart } from "./exercise-part.ts";
import { mendedRows } from "./mended-rows.ts";
import { partRows } from "./part-rows.ts";
import { PuzzleMemory } from "./puzzle-memory.ts";
import { treatedWords } from "./treated-words.ts";
import { type WeighedCruxes, weighCruxes } from "./weigh-cruxes.ts";
import type { Problem, WeighedCrux, WeighedExercise, WeighOptions } from "./weighed.ts";

/** Several exercises are stages one after another, each from its own beginning. Throws RangeError when an exercise or the
 *  variant is not among the rows, or no exercise is asked for. */
export function exercisePuzzle(rows: Rows, exercises: readonly string[], options: WeighOptions = {}): WeighedExercise {
  const mended = mendedRows(rows, exercises);
  const readingsOf = readingsIn(mended.rows);
  const memory = options.memory ?? new PuzzleMemory();
  const laid: ExerciseRows[] = [];
  for (const id of exercises) laid.push(exerciseRows(mended.rows, id, laid[0]));
  const [home] = laid;
  if (home === undefined) throw new RangeError("At least one exercise was expected.");
  const { way, variant, completions } = options;
  const texts = partRows(mended.rows, exercises);
  const partOf = (one: ExerciseRows, role: string | null): ExercisePart => {
    const key = JSON.stringify([one.exercise.id, role, way, variant, completions]);
    return memory.part(key, texts.get(one.exercise.id) ?? "", () =>
      exercisePart(mended.rows, one, role, readingsOf, options),
    );
  };
  const byExercise = laid.map((one) => {
    const roles = rolesOf(one.elements);
    return (roles.length === 0 ? [null] : roles).map((role) => partOf(one, role));
  });
  const parts = byExercise.flat();
  const weighed = weighCruxes(
    home,
    parts.flatMap(({ bearings }) => bearings),
  );
  const { cruxes, requires, excludes, classes } = weighed;
  const counted = cruxes.map(({ id }) => id);
  return {
    puzzle: {
      cruxes,
      requires,
      excludes,
      start: ["start"],
      stages: parts.flatMap((part) => part.stages(memory.before(part.world), counted)),
    },
    classes,
    apparatus: apparatusOf(home, exercises, weighed, readingsOf),
    problems: [...mended.problems, ...equalReadings(home, weighed)],
    stages: parts.flatMap(({ told }) => told),
    cruxes: toldCruxes(home, parts, weighed),
    treated: treatedWords(laid.map((one, index) => ({ laid: one, present: byExercise[index]?.[0]?.present ?? [] }))),
    rows,
    exercises,
    ridden: { ...(way === undefined ? {} : { way }), ...(variant === undefined ? {} : { variant }) },
  };
}

/** The readings of each crux that are tried: those not ruled out; all of them where every one is. */
function readingsIn(rows: Rows): (crux: string) => readonly string[] {
  const byCrux = new Map<string, Reading[]>();
  for (const { value } of rows.readings ?? []) byCrux.set(value.crux, [...(byCrux.get(value.crux) ?? []), value]);
  const tried = new Map(
    [...byCrux].map(([crux, readings]) => {
      const ranked = readings.sort(compareRanked);
      const open = ranked.filter(({ status }) => status.is !== "ruled out");
      return [crux, (open.length > 0 ? open : ranked).map(({ id }) => id)];
    }),
  );
  return (crux) => tried.get(crux) ?? [];
}

/** Cruxes that are counted, in the order in which they first bear; then those that only hang on others. */
function toldCruxes(
  rows: ExerciseRows,
  parts: readonly ExercisePart[],
  { cruxes, classes }: WeighedCruxes,
): WeighedCrux[] {
  const bearing = new Set(parts.flatMap(({ bearings }) => bearings.flatMap((one) => one.asked)));
  const known = new Set(cruxes.map(({ id }) => id));
  const order = [...new Set([...[...bearing].filter((id) => known.has(id)), ...known])];
  return order.flatMap((id): WeighedCrux[] => {
    const crux = rows.cruxes.get(id);
    if (crux === undefined) return [];
    const first = new Map(
      (classes.get(id) ?? []).flatMap(({ reading, members }) => members.map((one) => [one, reading] as const)),
    );
    const readings = rows.readingsOf(id).map((reading) => {
      const { status } = reading;
      const same = first.get(reading.id) ?? reading.id;
      return {
        id: reading.id,
        title: reading.title,
        status: status.is,
        condition: status.is === "adopted" ? status.condition : "",
        sameAs: same === reading.id ? null : same,
        confidence: reading.confidence,
      };
    });
    return [{ id, title: crux.title, exercise: crux.exercise, leftFree: crux.leftFree !== null, readings }];
  });
}

/** Readings of equal effect are counted as one, and said to be. */
function equalReadings(rows: ExerciseRows, { classes }: WeighedCruxes): Problem[] {
  return [...classes].flatMap(([crux, list]) =>
    list.flatMap(({ members }): Problem[] => {
      if (members.length < 2) return [];
      const titles = rows
        .readingsOf(crux)
        .filter(({ id }) => members.includes(id))
        .map(({ title }) => `“${title}”`);
      const sentence = `The readings ${listed(titles)} of “${rows.cruxes.get(crux)?.title ?? ""}” do the same to the ride, so they are counted as one. If they mean different things, write down what each has the rider do.`;
      return [{ kind: "cruxes", id: crux, code: "readings_of_equal_effect", sentence }];
    }),
  );
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}
