/** shared/ride/rules/asserted-state.ts - what the text says stands is what the steps before have led to.
 *  May import: schema types, shared/hands, types of shared/ride, siblings. Keeps rule V16 (shared/ride/rules/RULES.md). */
import type { Verb } from "../../../schema/act.ts";
import { exactly, isKnown, mayBe, possible, UNKNOWN } from "../../hands/known.ts";
import { type KnownAct, slotOf } from "../../hands/known-act.ts";
import { handsMeant } from "../../hands/roles.ts";
import {
  type ControlState,
  HANDS,
  type Hand,
  type ObjectState,
  REIN_PLACES,
  type Zone,
  zonesOf,
} from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";
import { type HeldMoment, objectOf, sinceMoment } from "./holds-in-force.ts";
import { zoneWords } from "./passing.ts";
import {
  type Judgement,
  kept,
  type RideRule,
  type Seen,
  type Verdict,
  verdictOfAll,
  verdictOver,
  worst,
} from "./rule.ts";

/** Verbs that say a hand has the object already; the slot that names the hand. */
const ASSERTING: Partial<Record<Verb, "hand" | "from">> = {
  keep: "hand",
  carry: "hand",
  hold: "hand",
  raise: "hand",
  lower: "hand",
  thrust: "hand",
  parry: "hand",
  slide: "hand",
  release: "hand",
  pass: "from",
};
/** Verbs that may bring it into a hand at the same instant. */
const GAINING: readonly Verb[] = ["take", "pass", "pick up", "hold", "change reins"];

function check(_: Ridden, context: RideContext, { moments }: Seen): Judgement[] {
  return moments.flatMap((moment, at) => {
    const { acts } = moment;
    return acts.flatMap((act): Judgement[] => {
      if (act.idle) return [];
      const slot = ASSERTING[act.known.verb];
      const role = slot === undefined ? null : slotOf(act.known, slot, "hand");
      const gained = acts.some((other) => other !== act && GAINING.includes(other.known.verb));
      if (role === null || gained) return [];
      const object = objectOf(act.known, moment.before);
      const sets = handsMeant(role, moment.before, { object, before: UNKNOWN });
      const found = isReins(act.known, context)
        ? reinsIn(moment.before, sets)
        : objectIn(moment.before, object, sets, zoneKept(act.known));
      if (found === null) return [];
      return [found.verdict === "kept" ? kept(moment.stage) : breach(found, moments, at, act)];
    });
  });
}

interface Found {
  verdict: Verdict;
  about: string;
  is: string;
  /** What was so, for the moment since when it is so. */
  since: (state: ControlState) => boolean;
}

function isReins(act: KnownAct, { rows }: RideContext): boolean {
  const named = slotOf(act, "object", "object");
  const id = named === null ? null : exactly(named);
  return id !== null && rows.find("objects", id)?.is === "reins";
}

function zoneKept(act: KnownAct): Zone | null {
  const zone = act.verb === "keep" ? slotOf(act, "zone", "zone") : null;
  return zone === null ? null : exactly(zone);
}

function reinsIn(state: ControlState, sets: readonly (readonly Hand[])[]): Found {
  const places = possible(state.reins, REIN_PLACES);
  const verdict = verdictOver(sets.flatMap((hands) => places.map((place) => !hasReins(place, hands))));
  const [now, another] = places;
  const where = now === undefined || another !== undefined ? "elsewhere" : placeWords(now);
  return {
    verdict,
    about: "reins",
    is: `the words have the reins in ${handWords(sets[0] ?? [])}, but by the steps before they are ${where}`,
    since: ({ reins }) => now !== undefined && isKnown(reins, now),
  };
}

const hasReins = (place: string, hands: readonly Hand[]): boolean =>
  place === "both hands" || hands.every((hand) => place === `${hand} hand`);

function objectIn(
  state: ControlState,
  object: string | null,
  sets: readonly (readonly Hand[])[],
  zone: Zone | null,
): Found | null {
  const held = state.objects.find((one) => one.object.id === object);
  if (held === undefined) return null;
  const grips = gripsIn(held, sets);
  const [hands, another] = sets;
  const [hand] = hands ?? [];
  const sure = grips.verdict === "kept" && another === undefined && hand !== undefined;
  return sure && zone !== null ? zoneIn(held, hand, zone) : grips;
}

/** Whether the hands that are meant are on it. */
function gripsIn(held: ObjectState, sets: readonly (readonly Hand[])[]): Found {
  const verdicts = sets.map((hands) => worst(hands.map((hand) => off(held, hand))));
  const [meant = []] = sets;
  const others = HANDS.filter((hand) => !meant.includes(hand) && off(held, hand) === "kept");
  const inNone = HANDS.every((hand) => off(held, hand) === "broken");
  const where = others.length > 0 ? `it is in ${handWords(others)}` : inNone ? "it is in no hand" : "it is not there";
  const { id, name } = held.object;
  return {
    verdict: verdictOfAll(verdicts),
    about: id,
    is: `the words have the ${name} in ${handWords(meant)}, but by the steps before ${where}`,
    // What brought it where it is says more than what once took it away.
    since: ({ objects }) =>
      objects.some(
        (one) =>
          one.object.id === id &&
          (others.length > 0
            ? others.every((hand) => off(one, hand) === "kept")
            : meant.some((hand) => off(one, hand) === "broken")),
      ),
  };
}

const off = ({ grip }: ObjectState, hand: Hand): Verdict => {
  if (isKnown<Zone | null>(grip[hand], null)) return "broken";
  return mayBe<Zone | null>(grip[hand], null) ? "cannot tell" : "kept";
};

/** Whether the hand that has it has it where the words say. */
function zoneIn(held: ObjectState, hand: Hand, zone: Zone): Found {
  const { id, name } = held.object;
  const zones = possible<Zone | null>(held.grip[hand], zonesOf(held.object));
  return {
    verdict: verdictOver(zones.map((at) => at !== zone)),
    about: id,
    is: `the words keep the ${name} ${zoneWords(zone)}, but by the steps before the ${hand} hand has it ${zones.map(zoneWords).join(" or ")}`,
    since: ({ objects }) => objects.some((one) => one.object.id === id && !mayBe<Zone | null>(one.grip[hand], zone)),
  };
}

function breach(found: Found, moments: readonly HeldMoment[], at: number, act: RiddenAct): Judgement {
  const moment = moments[at] as HeldMoment;
  const cause = found.verdict === "broken" ? sinceMoment(moments, at - 1, found.since) : null;
  return {
    verdict: found.verdict === "broken" ? "broken" : "cannot tell",
    stage: moment.stage,
    about: found.about,
    ...{ from: moment.from, to: moment.from, timed: moment.timed, lasts: false },
    action: act.id,
    quote: [act.id, ...(cause?.actions ?? [])],
    is: found.is,
    lift: "Either something between the two is not written down, or one of them is to be read otherwise",
    look: false,
  };
}

function handWords(hands: readonly Hand[]): string {
  return hands.length === 2 ? "both hands" : `the ${hands[0] ?? "same"} hand`;
}

function placeWords(place: string): string {
  if (place === "both hands") return "in both hands";
  return place.endsWith("hand") ? `in the ${place}` : place === "away" ? "away" : `on the ${place}`;
}

export const assertedState: RideRule = {
  code: "asserted-state",
  words: "says",
  sentence: "The state the words speak of is the state the steps have led to.",
  basis: "the text",
  source: "The text against itself.",
  severity: "bars",
  reach: "instant",
  check,
};
