/** shared/ride/rules/turning.ts - the horse does not turn into a point, its rider's own or another's, and leads as it bends.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rules V20-V22 (shared/ride/rules/RULES.md).
 *  Hours are clock positions from the rider: 12 ahead, 3 right, 9 left. */
import { exactly, isKnown, mayBe, possible } from "../../hands/known.ts";
import { slotOf } from "../../hands/known-act.ts";
import type { Bearing, ControlState, Hand, Level, ObjectState, Zone } from "../../hands/state.ts";
import type { Ridden, RiddenStage, RiddenThreat } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { turnSide, type Window, type Windows } from "./moments.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict, verdictOfAll, verdictOver } from "./rule.ts";

/** The forward sector of a side. Straight ahead belongs to neither: the point goes round with the horse. */
export const FORWARD_SECTOR: Readonly<Record<Hand, readonly number[]>> = { left: [10, 11], right: [1, 2] };
export const LEVELS: readonly Level[] = ["low", "middle", "high", "ground"];
export const LOW: readonly Level[] = ["low", "middle"];
const HOURS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

function turnWindows(windows: Windows, stage: number): { window: Window; side: Hand }[] {
  return windows(stage).flatMap((window) => {
    const side = turnSide(window.piece);
    return side === null ? [] : [{ window, side }];
  });
}

/** Hours the point may look to; null where it looks at something named. */
export function hoursOf({ bearing }: ObjectState): number[] | null {
  if (bearing.is === "unknown") return HOURS;
  const hours = possible<Bearing>(bearing, []).map((one) => (one.is === "clock" ? one.hour : null));
  return hours.includes(null) ? null : hours.filter((hour) => hour !== null);
}

/** Planted, it stands in the world, and the horse goes round it; what is sheathed or in no hand has no point out. */
export function isPointOut({ contacts, grip, frame }: ObjectState): boolean {
  const sheathed =
    contacts.is === "known" && contacts.value.some((one) => one.with === "sheath" && one.degree === "bears");
  const inNoHand = (["left", "right"] as const).every((hand) => isKnown<Zone | null>(grip[hand], null));
  return !isKnown(frame, "planted") && !sheathed && !inNoHand;
}

function ownPointIn(held: ObjectState, side: Hand): Verdict {
  if (!isPointOut(held)) return "kept";
  const hours = hoursOf(held);
  if (hours === null) return "cannot tell";
  const cases = hours.flatMap((hour) =>
    possible(held.level, LEVELS).map((level) => FORWARD_SECTOR[side].includes(hour) && LOW.includes(level)),
  );
  return verdictOver(mayBe(held.frame, "planted") ? [...cases, false] : cases);
}

export const isWeapon = ({ object }: ObjectState): boolean => object.is === "shaft" || object.is === "blade";

/** The action that set where the point is, so that its words can be quoted. */
export function pointSetBy(ridden: Ridden, stage: number, object: string): { stage: number; action: string } | null {
  const key = ({ objects }: ControlState): string => {
    const held = objects.find((one) => one.object.id === object);
    return JSON.stringify([held?.bearing, held?.level, held?.frame]);
  };
  for (let at = stage; at >= 0; at -= 1) {
    const one = ridden.stages[at];
    for (let index = (one?.instants.length ?? 0) - 1; one !== undefined && index >= 0; index -= 1) {
      const before = index === 0 ? one.before : (one.instants[index - 1]?.after ?? one.before);
      const instant = one.instants[index];
      const action = instant?.actions.at(-1);
      if (instant !== undefined && action !== undefined && key(instant.after) !== key(before))
        return { stage: at, action };
    }
  }
  return null;
}

function checkOwnPoint(ridden: Ridden, _: RideContext, { windows }: Seen): Judgement[] {
  return ridden.stages.flatMap((__, stage) =>
    turnWindows(windows, stage).flatMap(({ window, side }) => {
      const weapons = window.states[0]?.objects.filter(isWeapon) ?? [];
      return weapons.map(({ object }): Judgement => {
        const verdicts = window.states.flatMap((state) =>
          state.objects.filter((held) => held.object.id === object.id).map((held) => ownPointIn(held, side)),
        );
        const verdict = verdictOfAll(verdicts);
        if (verdict === "kept") return kept(stage);
        // Where the step itself brings the point out of the way, it is taken to do so in time.
        const look = verdicts.at(-1) === "broken";
        const set = verdict === "broken" || look ? pointSetBy(ridden, stage, object.id) : null;
        const ride = window.ridden.action;
        return {
          verdict,
          stage,
          about: object.id,
          ...{ from: window.from, to: window.to, timed: true, lasts: false },
          action: set?.stage === stage ? set.action : ride,
          quote: [...(set === null ? [] : [set.action]), ...(ride === null ? [] : [ride])],
          is:
            verdict === "broken"
              ? `the horse turns ${side} while the point of the ${object.name} is forward on the ${side} and not high, so it turns into its own point`
              : `the horse turns ${side}, and in this step the point of the ${object.name} comes forward on the ${side} and not high; the words do not say whether before the turn or after it`,
          lift: `Either the point is raised, or brought ahead or to the ${side === "left" ? "right" : "left"}, before the turn; or it comes there after it`,
          look,
        };
      });
    }),
  );
}

export const ownPoint: RideRule = {
  code: "own-point",
  words: "says",
  sentence: "The horse does not turn toward its own point: low or middle, and forward on the side it turns to.",
  basis: "common practice",
  source:
    "Riding practice without a source. That forward means 10 and 11 o’clock to the left, 1 and 2 to the right, is a choice of this design; a planted weapon is left out.",
  severity: "bars",
  reach: "piece",
  check: checkOwnPoint,
};

/** A weapon abeam or before the rider on the side the horse turns to. */
function weaponIn({ hour, weaponSide }: RiddenThreat, side: Hand): Verdict {
  const nearSide = side === "left" ? [9, 10, 11, 12] : [12, 1, 2, 3];
  const hours = hour === null ? HOURS : [hour];
  const sides: readonly Hand[] = weaponSide === null ? ["left", "right"] : [weaponSide];
  return verdictOver(hours.flatMap((at) => sides.map((weapon) => nearSide.includes(at) && weapon === side)));
}

function checkThreatWeapon(ridden: Ridden, context: RideContext, { windows }: Seen): Judgement[] {
  return ridden.threats.flatMap((threat) =>
    turnWindows(windows, threat.stage)
      .filter(({ window }) => window.to > threat.from && window.from < threat.to)
      .map(({ window, side }): Judgement => {
        const verdict = weaponIn(threat, side);
        if (verdict === "kept") return kept(threat.stage);
        const name = context.names("threats", threat.threat) ?? threat.name;
        return {
          verdict,
          stage: threat.stage,
          about: threat.threat,
          ...{ from: window.from, to: window.to, timed: true, lasts: false },
          action: window.ridden.action,
          quote: window.ridden.action === null ? [] : [window.ridden.action],
          is:
            verdict === "broken"
              ? `the horse turns ${side}, where ${name} has the weapon`
              : `the horse turns ${side}, and it is not said on which side ${name} has the weapon, or from where he comes`,
          lift: "Either the turn goes to the other side, or the other’s weapon is dealt with first",
          look: threat.hour !== null || threat.weaponSide !== null,
        };
      }),
  );
}

export const threatWeapon: RideRule = {
  code: "threat-weapon",
  words: "says",
  sentence: "The horse does not turn toward the weapon of one who threatens.",
  basis: "common practice",
  source: "Riding practice without a source. The side of the weapon is the side seen from the rider.",
  severity: "warns",
  reach: "piece",
  check: checkThreatWeapon,
};

/** A lead said as inside or outside in the stage goes with every bend of it, or against it on purpose. */
function leadByBend(stage: number, { instants }: RiddenStage, context: RideContext): boolean {
  return instants.some(({ actions }) =>
    actions.some((id) => {
      const act = context.act(stage, id);
      const lead = act === null ? null : slotOf(act.known, "lead", "lead");
      const said = lead === null ? null : exactly(lead);
      return said === "inside" || said === "outside";
    }),
  );
}

function checkLead(ridden: Ridden, context: RideContext, { windows }: Seen): Judgement[] {
  return ridden.stages.flatMap((stage, index) =>
    turnWindows(windows, index)
      .filter(({ window }) => window.piece.is === "arc" && ["canter", "gallop"].includes(window.ridden.gait))
      .map(({ window, side }): Judgement => {
        const verdict = verdictOfAll(
          window.states.map(({ lead }) =>
            verdictOver(possible<Hand | null>(lead, ["left", "right"]).map((one) => one !== side)),
          ),
        );
        if (verdict === "kept" || leadByBend(index, stage, context)) return kept(index);
        return {
          verdict,
          stage: index,
          about: "lead",
          ...{ from: window.from, to: window.to, timed: true, lasts: false },
          action: window.ridden.action,
          quote: window.ridden.action === null ? [] : [window.ridden.action],
          is: `the horse bends ${side} at the ${window.ridden.gait} on the other lead`,
          lift: "Either the lead changes before it, or the text means the canter on the outside lead",
          look: false,
        };
      }),
  );
}

export const leadBend: RideRule = {
  code: "lead-bend",
  words: "says",
  sentence:
    "At the canter and the gallop the horse leads on the side it bends to, unless the outside lead is asked for.",
  basis: "common practice",
  source: "Riding guides; the canter on the outside lead is ridden on purpose only (facts of riding, counter-canter).",
  severity: "warns",
  reach: "piece",
  check: checkLead,
};
