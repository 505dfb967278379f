/** shared/ride/rules/judge.ts - every rule over one ride: all verdicts, and which of them are to be listed.
 *  May import: types of shared/ride, siblings. Keeps rules V1-V5 (shared/ride/rules/RULES.md). */

import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { heldMoments } from "./holds-in-force.ts";
import { windowsOf } from "./moments.ts";
import { type Breach, type Judgement, type RideRule, type Seen, type Verdict, worst } from "./rule.ts";
import { RIDE_RULES } from "./table.ts";

export interface Judged {
  rule: RideRule;
  judgements: readonly Judgement[];
}

export function judgeRide(ridden: Ridden, context: RideContext, rules: readonly RideRule[] = RIDE_RULES): Judged[] {
  const seen: Seen = { moments: heldMoments(ridden, context), windows: windowsOf(ridden) };
  return rules.map((rule) => ({ rule, judgements: rule.check(ridden, context, seen) }));
}

/** The verdict of a rule at a stage; a rule that has nothing to judge there is left out. */
export interface StageVerdict {
  rule: string;
  stage: number;
  verdict: Verdict;
}

/** For the window and for counting: one verdict a rule and stage, by the rules' order and the stages'. */
export function verdictsOf(ridden: Ridden, context: RideContext): StageVerdict[] {
  return judgeRide(ridden, context).flatMap(({ rule, judgements }) => {
    const stages = new Map<number, Verdict[]>();
    for (const { stage, verdict } of judgements) stages.set(stage, [...(stages.get(stage) ?? []), verdict]);
    return [...stages]
      .sort(([a], [b]) => a - b)
      .map(([stage, verdicts]) => ({ rule: rule.code, stage, verdict: worst(verdicts) }));
  });
}

/** What is worth a person's eye: what is broken, and questions worth a look. */
export function isListed(judgement: Judgement): judgement is Breach {
  if (judgement.verdict === "kept") return false;
  return judgement.verdict === "broken" || judgement.look;
}

/** The breaches to list: what lasts is told where it begins, what comes again within a stage is told once, and there is
 *  at most one *cannot tell* a rule and stage. In the order of the ride. */
export function listedBreaches({ judgements }: Judged): Breach[] {
  const listed = judgements.filter(isListed).sort((a, b) => a.stage - b.stage || a.from - b.from);
  const told: Breach[] = [];
  for (const breach of listed) {
    const same = told.findLast((one) => one.about === breach.about && one.verdict === breach.verdict);
    const within =
      same !== undefined && (same.stage === breach.stage || (same.lasts && goesOn(judgements, same, breach)));
    const another = breach.verdict === "cannot tell" && told.some((one) => one.stage === breach.stage);
    // What is broken later in the stage is told instead of the question that came before it.
    const doubted = told.findIndex((one) => one.stage === breach.stage && one.about === breach.about);
    if (within) told[told.indexOf(same)] = { ...same, to: Math.max(same.to, breach.to) };
    else if (doubted !== -1 && breach.verdict === "broken") told[doubted] = breach;
    else if (!another) told.push(breach);
  }
  return told;
}

/** Whether one lasting breach is still the same at the other: nothing between them says otherwise of the same thing. */
function goesOn(judgements: readonly Judgement[], first: Breach, later: Breach): boolean {
  const ofStage = (stage: number): Judgement[] => judgements.filter((one) => one.stage === stage);
  for (let stage = first.stage + 1; stage < later.stage; stage += 1) {
    const between = ofStage(stage);
    if (between.length > 0 && !between.some((one) => one.verdict !== "kept" && one.about === first.about)) return false;
  }
  return true;
}
