/** shared/ride/puzzle/exercise-puzzle.ts - the rows of exercises as a puzzle for shared/decide.
 *  May import: schema types, shared/decide, shared/drill, shared/ride, siblings. Keeps rules P1-P9
 *  (shared/ride/puzzle/RULES.md). */
import type { Rows } from "../../../schema/record.ts";
import type { Puzzle, Stage, Tie } from "../../decide/puzzle.ts";
import { citationsOf } from "../../drill/citations.ts";
import { type ExerciseRows, exerciseRows } from "../../drill/exercise-rows.ts";
import { rideWithContext } from "../ride-exercise.ts";
import { findingsOf } from "../rules/index.ts";
import type { WeighedCrux, WeighedExercise, WeighOptions } from "./weighed.ts";

/** Throws RangeError when an exercise or the variant is not among the rows. */
export function exercisePuzzle(rows: Rows, exercises: readonly string[], options: WeighOptions = {}): WeighedExercise {
  const laid = exercises.map((id) => exerciseRows(rows, id));
  const [home] = laid;
  if (home === undefined) throw new RangeError("At least one exercise was expected.");
  const cruxes = cruxesOf(home, exercises);
  const ids = cruxes.map(({ id }) => id);
  const stages = laid.flatMap((one) => stagesOf(rows, one, ids, options));
  return {
    puzzle: puzzleOf(
      home,
      cruxes,
      stages.map(({ stage }) => stage),
    ),
    classes: new Map(
      cruxes.map(({ id, readings }) => [id, readings.map((one) => ({ reading: one.id, members: [one.id] }))]),
    ),
    apparatus: [],
    problems: [],
    stages: stages.map(({ told }) => told),
    cruxes,
    treated: "",
    rows,
    exercises,
  };
}

function cruxesOf(rows: ExerciseRows, exercises: readonly string[]): WeighedCrux[] {
  return rows
    .all("cruxes")
    .filter(({ exercise, id }) => (exercise === null || exercises.includes(exercise)) && rows.readingsOf(id).length > 0)
    .map((crux) => ({
      id: crux.id,
      title: crux.title,
      exercise: crux.exercise,
      leftFree: crux.leftFree !== null,
      readings: rows.readingsOf(crux.id).map(({ id, title, status, confidence }) => ({
        id,
        title,
        status: status.is,
        condition: status.is === "adopted" ? status.condition : "",
        sameAs: null,
        confidence,
      })),
      citations: citationsOf(rows, "cruxes", crux.id),
    }));
}

function puzzleOf(rows: ExerciseRows, cruxes: readonly WeighedCrux[], stages: Stage[]): Puzzle {
  const known = new Set(cruxes.map(({ id }) => id));
  const ties = (which: "requires" | "excludes"): Tie[] =>
    cruxes.flatMap(({ id }) =>
      rows
        .readingsOf(id)
        .flatMap((reading) =>
          reading[which]
            .filter(({ crux }) => known.has(crux))
            .map(({ crux, readings }) => ({ crux: id, reading: reading.id, of: { crux, readings } })),
        ),
    );
  return {
    cruxes: cruxes.map(({ id, readings }) => ({
      id,
      readings: readings.map((one) => one.id),
      ruledOut: readings.filter(({ status }) => status === "ruled out").map((one) => one.id),
      arisesWhen: (rows.cruxes.get(id)?.arisesWhen ?? [])
        .filter(({ crux }) => known.has(crux))
        .map(({ crux, readings: of }) => ({ crux, readings: of })),
    })),
    requires: ties("requires"),
    excludes: ties("excludes"),
    start: ["start"],
    stages,
  };
}

function stagesOf(rows: Rows, laid: ExerciseRows, cruxes: readonly string[], options: WeighOptions) {
  const rides = new Map<string, ReadonlyMap<string, { rule: string; sure: boolean; bars: boolean }[]>>();
  const ride = (readingOf: (crux: string) => string | null) => {
    const choice = cruxes.flatMap((crux) => {
      const reading = readingOf(crux);
      return reading === null ? [] : [{ crux, reading }];
    });
    const key = JSON.stringify(choice);
    const held = rides.get(key);
    if (held) return held;
    const { ridden, context } = rideWithContext(rows, laid.exercise.id, { ...options, choice });
    const hits = new Map<string, { rule: string; sure: boolean; bars: boolean }[]>();
    for (const { rule, severity, verdict, waived, element } of findingsOf(ridden, context, {
      compareReadings: false,
    })) {
      if (waived !== null) continue;
      const list = hits.get(element) ?? [];
      list.push({ rule, sure: verdict === "broken", bars: severity === "bars" });
      hits.set(element, list);
    }
    rides.set(key, hits);
    return hits;
  };
  return laid.elements.map((element) => ({
    stage: {
      id: element.id,
      touches: cruxes,
      run: (state: string, readingOf: (crux: string) => string | null) => {
        const hits = (ride(readingOf).get(element.id) ?? []).filter(({ sure }) => sure);
        return [{ state, hits: hits.map(({ rule, bars }) => ({ rule, bars })) }];
      },
    },
    told: {
      id: element.id,
      exercise: laid.exercise.id,
      element: element.id,
      number: null,
      title: "title" in element ? element.title : "",
    },
  }));
}
