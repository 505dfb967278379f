/** shared/ride/rules/lifted.ts - whether a breach comes from a reading, and which other readings of its crux lift it.
 *  May import: schema types, types of shared/ride, siblings. Keeps rule V70 (shared/ride/rules/RULES.md). Bounded: each other
 *  reading is ridden at most once for all findings together, the nearest cruxes first. */
import type { DrillCrux } from "../../../schema/drill.ts";
import type { Finding, Ridden, RiddenStage } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { isListed, judgeRide } from "./judge.ts";
import type { Breach, RideRule } from "./rule.ts";

/** Rides under other readings, at most, for one list of findings. */
export const MOST_RIDES = 24;

export type Lifting = (rule: RideRule, breach: Breach) => Finding["reading"];

/** Breaches are compared by rule and stage: one is lifted where the rule has nothing to list at that stage. */
export function liftingOf(ridden: Ridden, context: RideContext): Lifting {
  const rides = new Map<string, Set<string> | null>();
  const near = (stage: number): DrillCrux[] => cruxesUpTo(ridden, context, stage);

  const breachesUnder = (crux: string, reading: string): Set<string> | null => {
    const key = `${crux} ${reading}`;
    const known = rides.get(key);
    if (known !== undefined || rides.has(key)) return known ?? null;
    if (rides.size >= MOST_RIDES) return null;
    const other = context.rideUnder(crux, reading);
    const found = judgeRide(other.ridden, other.context).flatMap(({ rule, judgements }) =>
      judgements.filter(isListed).map((breach) => placeOf(rule.code, other.ridden.stages[breach.stage])),
    );
    const set = new Set(found);
    rides.set(key, set);
    return set;
  };

  return (rule, breach) => {
    const place = placeOf(rule.code, ridden.stages[breach.stage]);
    for (const { crux, title, taken, others } of near(breach.stage)) {
      const reading = taken ?? suppliedReading(context, crux);
      if (reading === null) continue;
      const lifting = others
        .filter((other) => other.status !== "ruled out" && other.reading !== reading.reading)
        .filter((other) => breachesUnder(crux, other.reading)?.has(place) === false);
      if (lifting.length === 0) continue;
      return {
        crux,
        cruxTitle: title,
        reading: reading.reading,
        readingTitle: reading.title,
        lifting: lifting.map((other) => ({ reading: other.reading, title: other.title })),
      };
    }
    return null;
  };
}

function placeOf(rule: string, stage: RiddenStage | undefined): string {
  return [rule, stage?.element, stage?.source, stage?.round].join(" ");
}

function suppliedReading(context: RideContext, crux: string): { reading: string; title: string } | null {
  const reading = context.supplied.get(crux);
  if (reading === undefined) return null;
  return { reading, title: context.names("readings", reading) ?? "" };
}

/** The cruxes of the stage itself, then those of the stages before it, nearest first, then those of no stage. */
function cruxesUpTo({ stages }: Ridden, context: RideContext, stage: number): DrillCrux[] {
  const elements = stages.slice(0, stage + 1).flatMap(({ element, source }) => [element, source]);
  const borne = elements.reverse().flatMap((id) => context.element(id)?.cruxes ?? []);
  return [...new Map([...borne, ...context.compiled.drill.cruxes].map((crux) => [crux.crux, crux])).values()];
}
