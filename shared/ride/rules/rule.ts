/** shared/ride/rules/rule.ts - what a rule is, and what it says of one place of a ride.
 *  May import: schema types, types of shared/ride, siblings. Keeps rules V1-V5 (shared/ride/rules/RULES.md).
 *  A rule only reads: it is told what was ridden and changes nothing of it. Seconds from the start of the ride. */
import type { Rule } from "../../../schema/riding.ts";
import type { Ridden, RuleReach, Severity } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import type { HeldMoment } from "./holds-in-force.ts";
import type { Windows } from "./moments.ts";

export type Verdict = "kept" | "broken" | "cannot tell";

/** The line of the table that people see and set. */
export interface RuleRow {
  code: string;
  sentence: string;
  basis: Rule["basis"];
  /** Where it comes from, in words: a publication, a choice of this design, practice without a source. */
  source: string;
  severity: Severity;
  reach: RuleReach;
}

/** A place where a rule was kept: nothing is to be said of it. */
export interface Kept {
  verdict: "kept";
  stage: number;
}

/** A place where a rule is broken, or where it cannot be told. */
export interface Breach {
  verdict: "broken" | "cannot tell";
  stage: number;
  /** What it is about within its stage, the same for the same breach: "left hand", the id of an object. */
  about: string;
  from: number;
  to: number;
  /** Whether the moment is named: not where the text leaves it open, nor where it is the stage as a whole. */
  timed: boolean;
  /** It goes on from here until the state changes, so that later stages are not told again. */
  lasts: boolean;
  /** The action it hangs on; null when it hangs on the stage as a whole. */
  action: string | null;
  /** Actions whose words are quoted, the weightiest first; none: the words of the stage. */
  quote: readonly string[];
  /** What is in the way: a clause that begins small and has no stop. */
  is: string;
  /** What would lift it: a sentence without its stop, or "". */
  lift: string;
  /** Whether a verdict of *cannot tell* is a question worth a look; the others are counted and not listed. */
  look: boolean;
}

export type Judgement = Kept | Breach;

/** What several rules look at, worked out once for all of them. */
export interface Seen {
  /** Those of the ride, in order. */
  moments: readonly HeldMoment[];
  windows: Windows;
}

export interface RideRule extends RuleRow {
  /** How the words behind are brought in: "says"; "says only", where the fault is what they leave out; or not at all, where
   *  a remark is no fault, and then no other reading is looked at either. */
  words: "says" | "says only" | "none";
  check: (ridden: Ridden, context: RideContext, seen: Seen) => Judgement[];
}

export const kept = (stage: number): Kept => ({ verdict: "kept", stage });

/** Broken where every case is, kept where none is, else it cannot be told. No cases: it cannot be told. */
export function verdictOver(cases: readonly boolean[]): Verdict {
  if (cases.length === 0) return "cannot tell";
  if (cases.every(Boolean)) return "broken";
  return cases.some(Boolean) ? "cannot tell" : "kept";
}

/** The same for verdicts: what holds of all, else it cannot be told. */
export function verdictOfAll(verdicts: readonly Verdict[]): Verdict {
  const [first] = verdicts;
  return first !== undefined && verdicts.every((verdict) => verdict === first) ? first : "cannot tell";
}

/** The worst: one broken part breaks the whole. */
export function worst(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes("broken")) return "broken";
  return verdicts.includes("cannot tell") ? "cannot tell" : "kept";
}
