/** shared/ride/rules/one-thing.ts - a hand does one thing at a time, unless the hold says otherwise.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rule V13 (shared/ride/rules/RULES.md). */
import { isKnown, mayBe, possible } from "../../hands/known.ts";
import { type ControlState, HANDS, type Hand, REIN_PLACES, type ReinPlace, type Zone } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { type HeldMoment, sinceMoment } from "./holds-in-force.ts";
import { holdKeepsReins, inBothHands } from "./reins.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict } from "./rule.ts";

const hasReins = (hand: Hand, place: ReinPlace): boolean => place === "both hands" || place === `${hand} hand`;

interface Doing {
  name: string;
  /** Null for the reins. */
  object: string | null;
}

/** What the hand may be doing, and what it surely does. */
function doings(state: ControlState, hand: Hand): { surely: Doing[]; perhaps: Doing[] } {
  const places = possible(state.reins, REIN_PLACES).filter((place) => place !== "away");
  const reins: Doing = { name: "the reins", object: null };
  const grips = state.objects.map(({ object, grip }) => ({
    doing: { name: `the ${object.name}`, object: object.id },
    surely: !mayBe<Zone | null>(grip[hand], null),
    perhaps: !isKnown<Zone | null>(grip[hand], null),
  }));
  const withReins = places.filter((place) => hasReins(hand, place));
  return {
    surely: [
      ...grips.filter((grip) => grip.surely).map(({ doing }) => doing),
      ...(places.length > 0 && withReins.length === places.length ? [reins] : []),
    ],
    perhaps: [
      ...grips.filter((grip) => grip.perhaps).map(({ doing }) => doing),
      ...(withReins.length > 0 ? [reins] : []),
    ],
  };
}

function verdictOf({ surely, perhaps }: ReturnType<typeof doings>): Verdict {
  if (surely.length >= 2) return "broken";
  return perhaps.length >= 2 ? "cannot tell" : "kept";
}

/** Where reins are held with both hands on one weapon, the rule on reins says so already; here it would be said twice. */
function toldElsewhere(moment: HeldMoment, context: RideContext): boolean {
  const both = inBothHands(moment.state);
  return both !== null && !holdKeepsReins(moment, both.object.id, context);
}

function check(_: Ridden, context: RideContext, { moments }: Seen): Judgement[] {
  return moments.flatMap((moment, at) => {
    if (!moment.stands) return [];
    return HANDS.map((hand): Judgement => {
      const done = doings(moment.state, hand);
      const objects = done.surely.filter(({ object }) => object !== null);
      const allowed = objects.some(({ object }) => holdKeepsReins(moment, object ?? "", context));
      const withReins = done.surely.some(({ object }) => object === null);
      const excused = withReins && objects.length === 1 && (allowed || toldElsewhere(moment, context));
      const verdict = excused ? "kept" : verdictOf(done);
      if (verdict === "kept") return kept(moment.stage);
      const cause =
        (verdict === "broken" ? sinceMoment(moments, at, (state) => doings(state, hand).surely.length >= 2) : null) ??
        moment;
      return {
        verdict,
        stage: moment.stage,
        about: `${hand} hand`,
        ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
        action: cause.stage === moment.stage ? (cause.actions.at(-1) ?? null) : null,
        quote: cause.actions,
        is: `the ${hand} hand has ${done.surely.map(({ name }) => name).join(" and ")} at once`,
        lift: withReins
          ? "Either the other hand takes one of them, or the text means a hold in which the rein hand helps, and the hold says so"
          : "Either the other hand takes one of them, or one is put away first",
        look: false,
      };
    });
  });
}

export const oneThing: RideRule = {
  code: "one-thing",
  words: "says only",
  sentence: "A hand does one thing at a time, unless the hold says otherwise.",
  basis: "common practice",
  source: "Riding practice without a source; many books do let one hand keep reins and weapon, hence a warning.",
  severity: "warns",
  reach: "instant",
  check,
};
