/** shared/ride/rules/lifted.ts - whether a breach comes from a reading, and which other readings of its crux lift it.
 *  May import: schema types, types of shared/ride, siblings. Keeps rule V70 (shared/ride/rules/RULES.md). Bounded: each other
 *  reading is ridden at most once for all findings together, the nearest cruxes first. */
import type { DrillCrux } from "../../../schema/drill.ts";
import type { Finding, Ridden, RiddenStage } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { isListed, judgeRide } from "./judge.ts";
import { type Breach, type RideRule, type Verdict, worst } from "./rule.ts";

/** Rides under other readings, at most, for one list of findings. */
export const MOST_RIDES = 24;

export interface Lifted {
  reading: NonNullable<Finding["reading"]>;
  /** False where under one of the lifting readings the rule cannot tell at that stage. */
  surely: boolean;
}
export type Lifting = (rule: RideRule, breach: Breach) => Lifted | null;

/** Breaches are compared by rule and stage. What is broken is lifted where the rule is not broken at that stage; a
 *  question, where the rule has nothing to list there. */
export function liftingOf(ridden: Ridden, context: RideContext): Lifting {
  const rides = new Map<string, ReadonlyMap<string, Verdict>>();
  const cruxes = cruxesBorne(ridden, context);

  /** The worst that is listed under another reading, by place; null past the limit. */
  const under = (crux: string, reading: string): ReadonlyMap<string, Verdict> | null => {
    const key = `${crux} ${reading}`;
    const known = rides.get(key);
    if (known !== undefined) return known;
    if (rides.size >= MOST_RIDES) return null;
    const other = context.rideUnder(crux, reading);
    const places = new Map<string, Verdict>();
    for (const { rule, judgements } of judgeRide(other.ridden, other.context)) {
      for (const breach of judgements.filter(isListed)) {
        const place = placeOf(rule.code, other.ridden.stages[breach.stage]);
        places.set(place, worst([breach.verdict, places.get(place) ?? "kept"]));
      }
    }
    rides.set(key, places);
    return places;
  };

  return (rule, breach) => {
    const place = placeOf(rule.code, ridden.stages[breach.stage]);
    for (const { crux, title, taken, others } of cruxesUpTo(cruxes, context, breach.stage)) {
      const reading = taken ?? suppliedReading(context, crux);
      if (reading === null) continue;
      const lifting = others
        .filter((other) => other.status !== "ruled out" && other.reading !== reading.reading)
        .flatMap((other) => {
          const verdict = under(crux, other.reading)?.get(place) ?? null;
          const lifted =
            rides.has(`${crux} ${other.reading}`) &&
            (verdict === null || (breach.verdict === "broken" && verdict !== "broken"));
          return lifted ? [{ other, surely: verdict === null }] : [];
        });
      if (lifting.length === 0) continue;
      return {
        reading: {
          crux,
          cruxTitle: title,
          reading: reading.reading,
          readingTitle: reading.title,
          lifting: lifting.map(({ other }) => ({ reading: other.reading, title: other.title })),
        },
        surely: lifting.every((one) => one.surely),
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

/** The cruxes each stage bears itself: those of what is done, then those of the element whose number it has. */
function cruxesBorne({ stages }: Ridden, context: RideContext): readonly (readonly DrillCrux[])[] {
  const ofElement = (id: string): readonly DrillCrux[] => context.element(id)?.cruxes ?? [];
  return stages.map(({ element, source }) => [...ofElement(source), ...ofElement(element)]);
}

/** The cruxes of the stage itself, then those of the stages before it, nearest first, then those of no stage. */
function cruxesUpTo(borne: readonly (readonly DrillCrux[])[], context: RideContext, stage: number): DrillCrux[] {
  const nearest = borne.slice(0, stage + 1).reverse();
  return [...new Map([...nearest.flat(), ...context.compiled.drill.cruxes].map((crux) => [crux.crux, crux])).values()];
}
