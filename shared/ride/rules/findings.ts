/** shared/ride/rules/findings.ts - the findings of a ride: what is in the way, with the words behind it and what lifts it.
 *  May import: schema types, shared/rank, types of shared/ride, siblings. Keeps rules V1-V9 (shared/ride/rules/RULES.md).
 *  Pure: the same rows in any order give the same findings, and the same breach always the same id. */
import type { Rule, Waiver } from "../../../schema/riding.ts";
import { citationsOfBasis } from "../../drill/citations.ts";
import { restsOf } from "../../drill/resolve-slot.ts";
import { compareCodeUnits } from "../../rank.ts";
import type { Finding, Ridden, RiddenStage, Severity } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { judgeRide, listedBreaches } from "./judge.ts";
import { type Lifted, type Lifting, liftingOf } from "./lifted.ts";
import type { Breach, RideRule } from "./rule.ts";
import { RIDE_RULES, ruleTable, type SetRule } from "./table.ts";
import { whereWords } from "./where-words.ts";
import { wordsBehind } from "./words-behind.ts";

export interface FindingOptions {
  /** Whether each finding is compared under the other readings of its cruxes; default true. Costs rides. */
  compareReadings?: boolean;
  /** Only what bars the ride: broken, and not set aside. Nothing is compared for the others. */
  barring?: boolean;
}

/** In the order of the ride; at one moment, in the order of the rules. */
export function findingsOf(ridden: Ridden, context: RideContext, options: FindingOptions = {}): Finding[] {
  const set = new Map(ruleTable(workRules(context)).map((rule) => [rule.code, rule]));
  const rules = RIDE_RULES.filter(({ code }) => set.get(code)?.severity !== "off");
  const lifting: Lifting = options.compareReadings === false ? () => null : liftingOf(ridden, context);
  const findings = judgeRide(ridden, context, rules).flatMap((judged) => {
    const rule = set.get(judged.rule.code);
    if (rule === undefined || rule.severity === "off") return [];
    const severity = rule.severity;
    const isWanted = ({ verdict, stage }: Breach): boolean =>
      options.barring !== true ||
      (severity === "bars" && verdict === "broken" && waivedAt(ridden, context, rule.code, stage) === null);
    const breaches = listedBreaches(judged).filter(isWanted);
    return breaches.map((breach) => ({
      breach,
      finding: findingOf(ridden, context, judged.rule, rule, severity, breach, lifting),
    }));
  });
  return findings
    .sort((a, b) => a.breach.stage - b.breach.stage || a.finding.from - b.finding.from)
    .map(({ finding }) => finding);
}

/** The rules a work has set, of those among the rows. */
export function workRules({ rows }: RideContext): Rule[] {
  return rows.all("rules").filter(({ work }) => work === rows.work.id);
}

function findingOf(
  ridden: Ridden,
  context: RideContext,
  rule: RideRule,
  set: SetRule,
  severity: Severity,
  breach: Breach,
  lifting: Lifting,
): Finding {
  const { code, reach } = rule;
  const stage = ridden.stages[breach.stage];
  if (stage === undefined) throw new RangeError(`The ride has no stage ${breach.stage}.`);
  const words = wordsBehind(ridden, context, rule, breach);
  const lifted = rule.words === "none" ? null : lifting(rule, breach);
  return {
    id: [code, ...stageKey(ridden, breach.stage), breach.about].join("/"),
    rule: code,
    // What cannot be told bars nothing, and warns of nothing.
    severity: breach.verdict === "broken" ? severity : "notes",
    verdict: breach.verdict,
    reach,
    stage: breach.stage,
    element: stage.element,
    action: breach.action,
    from: breach.from,
    to: breach.to,
    sentence: [
      `${whereWords(ridden, context, breach)}: ${breach.is}.`,
      words.sentence,
      breach.lift === "" ? "" : `${breach.lift}.`,
      lifted === null ? "" : readingWords(lifted, context.supplied),
    ]
      .filter((part) => part !== "")
      .join(" "),
    citations: [...words.citations, ...citationsOfBasis(context.rows, set.row?.support ?? [])],
    waived: waivedAt(ridden, context, code, breach.stage),
    reading: lifted?.reading ?? null,
  };
}

/** What a stage is, however long the ride: element, source, round; and which of several such, where an again holds an again. */
function stageKey({ stages }: Ridden, index: number): (string | number)[] {
  const stage = stages[index];
  if (stage === undefined) return [];
  const { element, source, round } = stage;
  let before = 0;
  for (let at = 0; at < index; at += 1) if (isSame(stages[at], stage)) before += 1;
  const key = [element, source, round].join("/");
  return before === 0 ? [key] : [key, `time ${before + 1}`];
}

function isSame(one: RiddenStage | undefined, other: RiddenStage): boolean {
  return one?.element === other.element && one.source === other.source && one.round === other.round;
}

function readingWords({ reading, surely }: Lifted, supplied: RideContext["supplied"]): string {
  const { crux, cruxTitle, readingTitle, lifting } = reading;
  const titles = lifting.map(({ title }) => `“${title}”`);
  const settled = supplied.has(crux) ? ", which nobody has settled" : "";
  const then = surely ? "it does not arise" : "it need not arise";
  return `It comes with the reading “${readingTitle}” of “${cruxTitle}”${settled}; under ${titles.join(" or ")} ${then}.`;
}

/** The reason, and what it rests on; null where nobody has set the rule aside there. Of several waivers, the first by id. */
function waivedAt({ stages }: Ridden, { rows }: RideContext, code: string, index: number): string | null {
  const stage = stages[index];
  const elements = stage === undefined ? [] : [stage.element, stage.source];
  const waivers = rows.all("waivers").filter(({ rule, element }) => rule === code && elements.includes(element));
  const [waiver] = [...waivers].sort((a: Waiver, b: Waiver) => compareCodeUnits(a.id, b.id));
  if (waiver === undefined) return null;
  const rests = restsOf(rows, waiver.basis);
  return rests.length === 0 ? waiver.reason : `${waiver.reason} (${rests.join("; ")})`;
}
