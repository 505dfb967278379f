/** shared/ride/rules/between-riders.ts - findings between riders: how near bodies and points come, and gaps that are not kept.
 *  May import: schema types, shared/ground, types of shared/ride, siblings. Keeps rules V60-V63 (shared/ride/rules/RULES.md).
 *  Samples with a bound on closing speed (shared/ground/distances.ts), so that no near miss is lost. Metres, seconds of the
 *  common clock. */
import type { Rule } from "../../../schema/riding.ts";
import { allDistances, type Nearest, type PairNearest } from "../../ground/distances.ts";
import { inWords } from "../../ground/figures/figure.ts";
import { placeInWords } from "../../ground/place-in-words.ts";
import type { Rider } from "../../ground/riders.ts";
import { clockTime } from "../clock-time.ts";
import type { Finding, Ridden } from "../ridden.ts";
import { WHOLE_RULES, type WholeRule } from "./between-rules.ts";
import { brokenGaps, type GapAsked, type GapBroken } from "./gaps.ts";
import { ruleTable } from "./table.ts";

export interface RiderOfRide {
  rider: Rider;
  ridden: Ridden;
  /** Absent or null where the exercise names no roles, or this rider does everything. */
  role?: string | null;
}

/** Findings of all riders together. `from` and `to` are seconds of the common clock; stage and element are the first
 *  rider's at that moment. Riders are told by their names, which must differ. `gaps`: those the text asks for. */
export function findingsBetween(
  riders: readonly RiderOfRide[],
  rules: readonly Rule[],
  gaps: readonly GapAsked[] = [],
): Finding[] {
  if (riders.length < 2) return [];
  const table = ruleTable(rules);
  const care = Math.max(...WHOLE_RULES.map(({ least }) => least)) + 0.01;
  const pairs = allDistances(
    riders.map(({ rider }) => rider),
    { within: 0.01, care },
  );
  const near = pairs.flatMap((pair) => {
    const { nearest } = pair;
    if (nearest === null) return [];
    return WHOLE_RULES.flatMap((rule) => {
      const severity = table.find(({ code }) => code === rule.code)?.severity ?? rule.severity;
      if (severity === "off" || !isBroken(rule, pair, nearest)) return [];
      return [{ ...findingOf(riders, rule, pair, nearest), severity }];
    });
  });
  const set = table.find(({ code }) => code === GAP_KEPT);
  if (set === undefined || set.severity === "off") return near;
  const { severity } = set;
  return [...near, ...brokenGaps(riders, gaps).map((broken) => ({ ...gapFinding(broken), severity }))];
}

const GAP_KEPT = "gap-kept";

function gapFinding({ asked, keeps, other, metres, seconds }: GapBroken) {
  const own = seconds - keeps.rider.starts;
  const stage = Math.max(
    0,
    keeps.ridden.stages.findLastIndex(({ from }) => from <= own + 1e-9),
  );
  const { gap, demand, citations } = asked;
  const size = `${gap.is === "about" ? "about" : gap.is} ${inWords(gap.metres)} m`;
  const is = `${keeps.rider.name} has ${inWords(Math.round(metres * 10) / 10)} m to ${other.rider.name}, where the text asks for ${size} (“${demand}”)`;
  const lift =
    metres > gap.metres ? "Let him set out sooner, or ride faster" : "Let him set out later, or ride at another pace";
  return {
    id: [GAP_KEPT, asked.element, keeps.rider.name, other.rider.name].join("/"),
    rule: GAP_KEPT,
    verdict: "broken" as const,
    reach: "whole" as const,
    stage,
    element: asked.element,
    action: null,
    from: seconds,
    to: seconds,
    sentence: `At ${clockTime(seconds)}: ${is}. ${lift}.`,
    citations: [...citations],
    waived: null,
    reading: null,
  };
}

/** What touches breaks the rule on touching; being too near as well would say it twice. */
function isBroken({ of, least }: WholeRule, { point }: PairNearest, { metres }: Nearest): boolean {
  if (of === "gap" || (of === "point") !== (point !== null)) return false;
  return least === 0 ? metres <= 0 : metres < least && (of === "point" || metres > 0);
}

function findingOf(riders: readonly RiderOfRide[], rule: WholeRule, pair: PairNearest, nearest: Nearest) {
  const ridden = riders.find(({ rider }) => rider === pair.a)?.ridden;
  const own = nearest.seconds - pair.a.starts;
  const at = ridden?.stages.findLastIndex(({ from }) => from <= own + 1e-9) ?? 0;
  const stage = Math.max(0, at);
  const head = ridden?.stages[stage];
  const where = head?.number === null || head === undefined ? "" : `, in step ${head.number} of ${pair.a.name}`;
  return {
    id: [rule.code, pair.a.name, pair.b.name, pair.point?.name ?? ""].filter((part) => part !== "").join("/"),
    rule: rule.code,
    verdict: "broken" as const,
    reach: rule.reach,
    stage,
    element: head?.element ?? "",
    action: null,
    from: nearest.seconds,
    to: nearest.seconds,
    sentence: `At ${clockTime(nearest.seconds)}${where}: ${wayWords(pair, nearest, rule)}${ridden ? `, ${placeInWords(ridden.ground, nearest.onB)}` : ""}. Start one of them later, or give the two more ground.`,
    citations: [],
    waived: null,
    reading: null,
  };
}

function wayWords({ a, b, point }: PairNearest, { metres }: Nearest, { least }: WholeRule): string {
  if (point === null && metres <= 0) return `${a.name} and ${b.name} ride into each other`;
  const distance = `${inWords(metres)} m`;
  if (point === null)
    return `${a.name} and ${b.name} come within ${distance} of each other; ${inWords(least)} m are to lie between them`;
  if (metres <= 0) return `the point of ${a.name}'s ${point.name} reaches ${b.name}`;
  return `the point of ${a.name}'s ${point.name} comes within ${distance} of ${b.name}; ${inWords(least)} m are to stay free`;
}
