/** shared/ride/puzzle/puzzle-world.ts - what is the same for every stage that is counted: the rules that bar, the way, the kit.
 *  May import: schema types, shared/drill, shared/ground, shared/ride and its rules. Keeps rule P1
 *  (shared/ride/puzzle/RULES.md). */
import type { Way } from "../../../schema/guard.ts";
import type { Rows } from "../../../schema/record.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import { namesOf } from "../../drill/names.ts";
import { USUAL, type Usual } from "../../ground/usual.ts";
import type { RideContext } from "../ride-context.ts";
import type { RideRule } from "../rules/rule.ts";
import { RIDE_RULES, ruleTable } from "../rules/table.ts";
import type { Surroundings } from "./stage-plan.ts";

/** Rules that look over several elements; they are judged in remembered-rules.ts. */
export const REMEMBERING = ["again-fits", "same-hand", "back-where-begun"] as const;

export interface PuzzleWorld extends Surroundings {
  /** Equal for two worlds in which every stage is ridden and judged alike. */
  key: string;
  way: Way;
  usual: Usual;
  /** Those that look at one stage at a time, in their order. */
  rules: readonly RideRule[];
  lookUps: Pick<RideContext, "allRows" | "rows" | "names" | "options" | "supplied">;
}

export function puzzleWorld(allRows: Rows, rows: ExerciseRows, way: Way): PuzzleWorld {
  const set = ruleTable(rows.all("rules").filter(({ work }) => work === rows.work.id));
  const bars = new Set(set.filter(({ severity, checked }) => severity === "bars" && checked).map(({ code }) => code));
  const rules = RIDE_RULES.filter(({ code }) => bars.has(code) && !(REMEMBERING as readonly string[]).includes(code));
  const objects = rows.all("objects").map(({ id, is, name, slots }) => [id, is, name, slots.length]);
  const holds = rows.all("holds").map(({ id, strong, slots }) => [id, strong, slots.reinZone]);
  const holdsInCrux = rows.all("holds").flatMap(({ id, slots }) => (slots.reinZone?.is === "in crux" ? [id] : []));
  return {
    key: JSON.stringify([way, [...bars].sort(), objects, holds]),
    way,
    usual: USUAL,
    bars,
    holdsInCrux,
    rules,
    lookUps: { allRows, rows, names: namesOf(allRows), options: {}, supplied: new Map() },
  };
}
