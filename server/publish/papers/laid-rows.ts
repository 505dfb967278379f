/** server/publish/papers/laid-rows.ts - rows laid out for the papers that are made from them, with the exercises that were
 *  compiled and ridden for one of them already.
 *  May import: schema types, shared/drill, server/publish, siblings. To compile and to ride is the dearest thing a paper does, and
 *  neither depends on its kind, its size or its cut. Pure over the rows: no paper is other for those made before it. */
import type { PaperAsk } from "../../../schema/paper.ts";
import type { Rows } from "../../../schema/record.ts";
import { type CompiledExercise, compileExercise } from "../../../shared/drill/compile.ts";
import { type ExerciseRows, exerciseRows, type WorkRows, workRows } from "../../../shared/drill/exercise-rows.ts";
import { Recent } from "../recent.ts";
import { type PartRides, rideCompiled } from "./part-rides.ts";

/** How an exercise is read: a version of the day brings its own way, and `way` is then not asked. */
export interface AskedReading extends Pick<PaperAsk, "choice" | "way"> {
  variant: string | null;
}

/** An exercise under one way of reading it. */
export interface ReadExercise {
  rows: ExerciseRows;
  compiled: CompiledExercise;
  /** Ridden when they are first asked for. */
  rides: () => PartRides;
}

export interface LaidRows {
  rows: Rows;
  /** Throws RangeError when the work is not among the rows. */
  book: (work: string) => WorkRows;
  /** Throws RangeError when the exercise, the version or a chosen reading is not among the rows. */
  read: (book: WorkRows, exercise: string, asked: AskedReading) => ReadExercise;
}

/** Exercises held as they were read: more than most books have. */
const MOST = 64;

export function layRows(rows: Rows): LaidRows {
  const books = new Recent<WorkRows>(1);
  const exercises = new Recent<ReadExercise>(MOST);
  return {
    rows,
    book: (work) => books.get(work, () => workRows(rows, work)),
    read: (book, exercise, { choice, way, variant }) => {
      const known = choice.filter(({ crux }) => book.cruxes.has(crux));
      const options = { choice: known, variant, ...(variant === null ? { way } : {}) };
      const key = JSON.stringify([
        exercise,
        options.variant,
        options.way,
        known.map(({ crux, reading }) => [crux, reading]),
      ]);
      return exercises.get(key, () => readExercise(rows, exercise, options, exerciseRows(rows, exercise, book)));
    },
  };
}

function readExercise(
  allRows: Rows,
  exercise: string,
  options: Pick<AskedReading, "choice" | "variant"> & Partial<Pick<AskedReading, "way">>,
  rows: ExerciseRows,
): ReadExercise {
  const compiled = compileExercise(allRows, exercise, options, rows);
  let rides: PartRides | null = null;
  return {
    rows,
    compiled,
    rides: () => {
      rides ??= rideCompiled(allRows, compiled, { ...options, way: compiled.drill.way });
      return rides;
    },
  };
}
