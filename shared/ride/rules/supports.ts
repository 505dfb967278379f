/** shared/ride/rules/supports.ts - everything carried is held up by something, and a strong hold by two things.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rules V11, V12 (shared/ride/rules/RULES.md). */
import { surelyBearing } from "../../hands/derived.ts";
import { isKnown, mayBe } from "../../hands/known.ts";
import { HANDS, type ObjectState, type Zone } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { type HeldMoment, sinceMoment } from "./holds-in-force.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict } from "./rule.ts";

/** Hands that may be on it, bearing contacts that may be there; any number where contacts are not known. */
function mostBearing({ grip, contacts, frame }: ObjectState): number {
  const hands = HANDS.filter((hand) => !isKnown<Zone | null>(grip[hand], null)).length;
  if (contacts.is === "unknown") return Number.POSITIVE_INFINITY;
  const lists = contacts.is === "known" ? [contacts.value] : contacts.values;
  const borne = Math.max(...lists.map((list) => list.filter(({ degree }) => degree === "bears").length));
  return hands + borne + (mayBe(frame, "planted") ? 1 : 0);
}

const inNoHand = ({ grip }: ObjectState): boolean => HANDS.every((hand) => isKnown<Zone | null>(grip[hand], null));

function supported(held: ObjectState): Verdict {
  if (surelyBearing(held) > 0 || isKnown(held.level, "ground")) return "kept";
  return mostBearing(held) === 0 && !mayBe(held.level, "ground") ? "broken" : "cannot tell";
}

function checkSupported(_: Ridden, __: RideContext, { moments }: Seen): Judgement[] {
  return moments.flatMap((moment, at) => {
    if (!moment.stands) return [];
    // A sheath is worn; what bears it is no concern of the hands.
    return moment.state.objects
      .filter(({ object }) => object.is !== "sheath")
      .map((held): Judgement => {
        const verdict = supported(held);
        if (verdict === "kept") return kept(moment.stage);
        const letGo = !inNoHand(held)
          ? null
          : sinceMoment(moments, at, ({ objects }) => objects.some((one) => same(one, held) && inNoHand(one)));
        const name = held.object.name;
        return {
          verdict,
          stage: moment.stage,
          about: held.object.id,
          ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
          action: letGo?.stage === moment.stage ? (letGo.actions.at(-1) ?? null) : null,
          quote: letGo?.actions ?? [],
          is:
            verdict === "broken"
              ? `nothing holds the ${name}: no hand is on it, it rests on nothing, and it does not stand in the ground`
              : `no hand is on the ${name} any longer, and it is not said what bears it`,
          lift: "Either a hand keeps it, or it rests on something, or it is planted or put away",
          look: letGo !== null,
        };
      });
  });
}

const same = (one: ObjectState, other: ObjectState): boolean => one.object.id === other.object.id;

export const objectSupported: RideRule = {
  code: "object-supported",
  words: "says only",
  sentence: "Everything carried has a hand, something that bears it, or the ground.",
  basis: "common practice",
  source: "It would fall otherwise.",
  severity: "bars",
  reach: "instant",
  check: checkSupported,
};

function checkStrong(_: Ridden, context: RideContext, { moments }: Seen): Judgement[] {
  return moments.flatMap((moment) => {
    if (!moment.stands) return [];
    return [...moment.holds.values()].flatMap((inForce) => {
      const row = context.rows.find("holds", inForce.hold);
      const held = moment.state.objects.find(({ object }) => object.id === inForce.object);
      if (!row?.strong || held === undefined) return [];
      return [strongAt(moment, inForce.action, held, row.name, context)];
    });
  });
}

function strongAt(
  moment: HeldMoment,
  action: string,
  held: ObjectState,
  name: string,
  context: RideContext,
): Judgement {
  const verdict: Verdict = surelyBearing(held) >= 2 ? "kept" : mostBearing(held) < 2 ? "broken" : "cannot tell";
  if (verdict === "kept") return kept(moment.stage);
  const count = HANDS.filter((hand) => !mayBe<Zone | null>(held.grip[hand], null)).length;
  const hands = count === 0 ? "no hand" : count === 1 ? "one hand" : "both hands";
  const inForce = moment.holds.get(held.object.id);
  const silent = inForce !== undefined && silentOnSupports(context, moment.stage, inForce.hold);
  return {
    verdict,
    stage: moment.stage,
    about: held.object.id,
    ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
    action,
    quote: [...moment.actions.filter((id) => id !== action), action],
    is:
      verdict === "broken"
        ? `the hold “${name}” is a strong one and wants two supports, but only ${hands} ${count === 2 ? "are" : "is"} on the ${held.object.name} and nothing else bears it`
        : `the hold “${name}” is a strong one and wants two supports; ${hands} ${count === 2 ? "are" : "is"} sure, and what else bears the ${held.object.name} is not said`,
    lift: "Either it rests on the body as well, or the second hand comes to it, or the hold is not a strong one",
    look: silent,
  };
}

function silentOnSupports(context: RideContext, stage: number, id: string): boolean {
  const hold = context.hold(stage, id);
  return hold !== null && hold.hands === "one" && !hold.slots.contact && !hold.slots.secondContact;
}

export const strongHold: RideRule = {
  code: "strong-hold",
  words: "says only",
  sentence: "A strong hold keeps two bearing supports.",
  basis: "common practice",
  source: "A long shaft borne at one place turns about it when it meets anything; no source.",
  severity: "warns",
  reach: "instant",
  check: checkStrong,
};
