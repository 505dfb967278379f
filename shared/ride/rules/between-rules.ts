/** shared/ride/rules/between-rules.ts - what several riders on one ground keep between them, and how far.
 *  May import: siblings. Keeps rules V60-V63 (shared/ride/rules/RULES.md). Metres. Never part of a count. */
import type { RuleRow } from "./rule.ts";

export interface WholeRule extends RuleRow {
  /** Whether it is about bodies, about a point and a body, or about a gap that the text gives. */
  of: "bodies" | "point" | "gap";
  /** The least that is to lie between them, metres; at or below 0 they touch. Of a gap the text says it. */
  least: number;
}

export const WHOLE_RULES: readonly WholeRule[] = Object.freeze([
  {
    code: "bodies-clear",
    sentence: "No two horses touch.",
    basis: "common practice",
    source: "The body of a horse is 2.44 m by 0.8 m; the width with the rider’s knees is a guess.",
    severity: "bars",
    reach: "whole",
    of: "bodies",
    least: 0,
  },
  {
    code: "bodies-apart",
    sentence: "Horses keep a horse’s length (2.44 m) between them.",
    basis: "published source",
    source:
      "Equestrian Australia asks for it to the horse in front; that it holds to all sides is a choice of this design.",
    severity: "warns",
    reach: "whole",
    of: "bodies",
    least: 2.44,
  },
  {
    code: "points-clear",
    sentence: "No point comes nearer to another horse or rider than a step (0.75 m).",
    basis: "common practice",
    source: "No published distance between armed riders was found: this is a suggestion.",
    severity: "warns",
    reach: "whole",
    of: "point",
    least: 0.75,
  },
  {
    code: "gap-kept",
    sentence: "Riders keep the gap that the text asks them to keep.",
    basis: "the text",
    source:
      "The words of a demand that give a length. That “about so much” may be out by a quarter, and a pace is 0.8 m, are choices of this design.",
    severity: "warns",
    reach: "whole",
    of: "gap",
    least: 0,
  },
]);
