/** shared/ride/puzzle/weighed.ts - an exercise laid out for counting: the words this folder shares with the Decide room.
 *  May import: types of schema, shared/decide and shared/ride. Keeps rules P1-P9 (shared/ride/puzzle/RULES.md). */
import type { Way } from "../../../schema/guard.ts";
import type { Kind, Rows } from "../../../schema/record.ts";
import type { Puzzle } from "../../decide/puzzle.ts";
import type { PuzzleMemory } from "./puzzle-memory.ts";

export interface WeighOptions {
  /** Default: as the variant has it, else mounted. */
  way?: Way;
  /** Id of a variant of the exercise or the work. */
  variant?: string | null;
  /** Whether what the text leaves open over a small domain is completed one way and another; default true. */
  completions?: boolean;
  /** What was ridden for an earlier puzzle; it is used and added to. The answer is the same with and without. */
  memory?: PuzzleMemory;
}

/** Readings that do the same to the ride. The first by rank stands for all of them in the puzzle. */
export interface ReadingClass {
  reading: string;
  members: string[];
}

/** Something in the rows that is not as it should be; the count goes on without it. */
export interface Problem {
  kind: Kind;
  id: string;
  code: ProblemCode;
  sentence: string;
}

export type ProblemCode =
  | "crux_with_one_reading"
  | "crux_without_readings"
  | "all_readings_ruled_out"
  | "readings_of_equal_effect"
  | "slot_gone"
  | "slot_owned_twice"
  | "condition_circle"
  | "condition_unknown"
  | "confidence_missing"
  | "confidence_over_one";

/** A reading as the room shows it, whether it is counted or not. */
export interface WeighedReading {
  id: string;
  title: string;
  status: "standing" | "adopted" | "ruled out";
  /** What it was adopted for; "" without a condition. */
  condition: string;
  /** The first reading of its class, where that is another. */
  sameAs: string | null;
  /** Exact decimal as it was entered; null when none is given. */
  confidence: string | null;
}

export interface WeighedCrux {
  id: string;
  title: string;
  /** Its exercise; null when it spans the work. */
  exercise: string | null;
  leftFree: boolean;
  /** By rank. */
  readings: WeighedReading[];
}

/** A stage of the puzzle, as people know it. */
export interface WeighedStage {
  id: string;
  exercise: string;
  element: string;
  /** Whose part it is, where the exercise names roles; each role is ridden by itself. */
  role: string | null;
  is: "step" | "again" | "untreated";
  /** As printed under the readings the drill takes; null for what has no number, or is not there under them. */
  number: number | null;
  title: string;
}

export interface WeighedExercise {
  puzzle: Puzzle;
  /** By crux of the puzzle. */
  classes: ReadonlyMap<string, readonly ReadingClass[]>;
  /** Cruxes without effect on the ride: listed, not counted. */
  apparatus: { crux: string; why: string }[];
  problems: Problem[];
  stages: WeighedStage[];
  /** Every crux that is counted or listed, in the order of the text. */
  cruxes: WeighedCrux[];
  /** "" or which part the count is of, in words. */
  treated: string;
  rows: Rows;
  exercises: readonly string[];
  /** How it is ridden; missing or null where the variant or the usual way tells. */
  ridden: { way?: Way; variant?: string | null };
}
