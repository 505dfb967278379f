/** shared/ride/rules/threats.ts - against one who threatens: where a parry carries his point, and what a hold covers.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rules V23, V24 (shared/ride/rules/RULES.md).
 *  Hours are clock positions from the rider. */
import { isKnown, possible } from "../../hands/known.ts";
import { slotOf } from "../../hands/known-act.ts";
import { sideOf } from "../../hands/roles.ts";
import { type Bearing, HANDS, type Hand, type ObjectState, type Zone } from "../../hands/state.ts";
import type { Ridden, RiddenThreat } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict, verdictOver } from "./rule.ts";

const HOURS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

function sideOfHour(hour: number): Hand | null {
  return hour % 6 === 0 ? null : hour > 6 ? "left" : "right";
}

function checkParry(ridden: Ridden, _: RideContext, { moments }: Seen): Judgement[] {
  return ridden.threats.flatMap((threat) => {
    const here = moments.filter(({ stage }) => stage === threat.stage);
    return here.flatMap((moment) =>
      moment.acts
        .filter(({ known }) => known.verb === "parry")
        .map(({ id, known }): Judgement => {
          const to = slotOf(known, "to", "side");
          const sides = (to === null ? [] : possible(to, [])).flatMap(({ to: side }) =>
            possible(sideOf(side, moment.before), HANDS),
          );
          const hours = threat.hour === null ? HOURS : [threat.hour];
          const toSides: readonly Hand[] = sides.length === 0 ? HANDS : sides;
          // A point that comes from straight ahead or behind is carried off to either side alike.
          const across = hours.flatMap((hour) => {
            const from = sideOfHour(hour);
            return toSides.map((side) => from !== null && side !== from);
          });
          const verdict = verdictOver(across);
          if (verdict === "kept") return kept(threat.stage);
          const from = threat.hour === null ? null : sideOfHour(threat.hour);
          return {
            verdict,
            stage: threat.stage,
            about: id,
            ...{ from: moment.from, to: moment.from, timed: moment.timed, lasts: false },
            action: id,
            quote: [id],
            is:
              verdict === "broken"
                ? `the point of ${threat.name} comes from the ${from} and is parried to the ${toSides[0]}, across the rider’s own horse`
                : `${threat.name} is parried, and ${to === null ? "the words do not say to which side" : "it is not settled from where the point comes, or to which side it goes"}: it may be carried across the rider’s own horse`,
            lift: `Either it is carried off to the side it comes from${from === null ? "" : `, the ${from}`}, or the horse is brought round first`,
            look: threat.hour !== null,
          };
        }),
    );
  });
}

export const parryAcross: RideRule = {
  code: "parry-across",
  words: "says",
  sentence: "A parry does not carry the other’s point across the own horse.",
  basis: "common practice",
  source: "Practice of mounted fencing without a source.",
  severity: "warns",
  reach: "piece",
  check: checkParry,
};

/** How many hours to either side of its point a weapon covers. */
const COVERS = 2;

function apart(one: number, other: number): number {
  const round = Math.abs(one - other) % 12;
  return Math.min(round, 12 - round);
}

function covers(held: ObjectState, hour: number): Verdict {
  if (HANDS.every((hand) => isKnown<Zone | null>(held.grip[hand], null))) return "broken";
  if (held.bearing.is === "unknown") return "cannot tell";
  const hours = possible<Bearing>(held.bearing, []).map((one) => (one.is === "clock" ? one.hour : null));
  if (hours.includes(null)) return "cannot tell";
  return verdictOver(hours.map((at) => apart(at ?? 12, hour) > COVERS));
}

function checkCovered(ridden: Ridden): Judgement[] {
  return ridden.threats.map((threat): Judgement => {
    const stage = ridden.stages[threat.stage];
    const states = stage === undefined ? [] : [stage.before, ...stage.instants.map(({ after }) => after)];
    const weapons = states.flatMap(({ objects }) =>
      objects.filter(({ object }) => object.is !== "sheath" && object.is !== "other"),
    );
    const verdict = coveredVerdict(threat, weapons);
    if (stage === undefined || verdict === "kept") return kept(threat.stage);
    return {
      verdict,
      stage: threat.stage,
      about: threat.threat,
      ...{ from: threat.from, to: threat.to, timed: true, lasts: false },
      action: null,
      quote: [],
      is: `${threat.name} comes from ${threat.hour} o’clock, and at no moment of the step does anything carried look there`,
      lift: "Either the step ends in a hold that covers that side, or the horse itself is turned out of reach",
      look: false,
    };
  });
}

/** One weapon that covers the hour at one moment is enough. */
function coveredVerdict({ hour }: RiddenThreat, weapons: readonly ObjectState[]): Verdict {
  if (hour === null || weapons.length === 0) return "cannot tell";
  const verdicts = weapons.map((held) => covers(held, hour));
  if (verdicts.includes("kept")) return "kept";
  return verdicts.includes("cannot tell") ? "cannot tell" : "broken";
}

export const threatCovered: RideRule = {
  code: "threat-covered",
  words: "says",
  sentence: "The side that is threatened lies in what is carried covers.",
  basis: "common practice",
  source: "That a weapon covers two hours to either side of its point is a choice of this design.",
  severity: "notes",
  reach: "piece",
  check: checkCovered,
};
