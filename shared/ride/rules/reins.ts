/** shared/ride/rules/reins.ts - somebody has the reins, and the rein hand is where the hold wants it.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rules V10, V15 (shared/ride/rules/RULES.md). */
import { isKnown, mayBe, possible } from "../../hands/known.ts";
import { slotOf } from "../../hands/known-act.ts";
import {
  type ControlState,
  HANDS,
  IN_HAND,
  type ObjectState,
  REIN_PLACES,
  REIN_ZONES,
  type Zone,
} from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { NOTHING_CARRIED_IN, type ReinStory } from "./carried-in.ts";
import { type HeldMoment, sinceMoment } from "./holds-in-force.ts";
import { type Judgement, kept, type RideRule, type Seen, verdictOver } from "./rule.ts";

/** Hands that surely grip the object. */
export function surelyOn({ grip }: ObjectState) {
  return HANDS.filter((hand) => !mayBe<Zone | null>(grip[hand], null));
}

/** The object that surely has both hands; null when there is none. */
export function inBothHands(state: ControlState): ObjectState | null {
  return state.objects.find((held) => surelyOn(held).length === 2) ?? null;
}

function perhapsInBothHands(state: ControlState): boolean {
  return state.objects.some(
    ({ grip }) =>
      grip.left.is !== "unknown" &&
      grip.right.is !== "unknown" &&
      HANDS.every((hand) => !isKnown<Zone | null>(grip[hand], null)),
  );
}

/** Whether the hold the object is in says where the rein hand is, and so that it keeps the reins. */
export function holdKeepsReins({ holds, stage }: HeldMoment, object: string, context: RideContext): boolean {
  const inForce = holds.get(object);
  return inForce !== undefined && context.hold(stage, inForce.hold)?.slots.reinZone !== undefined;
}

/** What the text has done with the reins once this moment is over. */
export function storyAfter(story: ReinStory, moment: HeldMoment, context: RideContext): ReinStory {
  let now = story;
  for (const { known, idle } of moment.acts) {
    if (idle) continue;
    const object = slotOf(known, "object", "object");
    const reins = object?.is === "known" && context.rows.find("objects", object.value)?.is === "reins";
    if (known.verb === "lay reins") now = "laid";
    else if (known.verb === "change reins" || known.verb === "place rein hand") now = "held";
    else if (reins) now = known.verb === "release" ? "let go" : "held";
  }
  return now;
}

function checkHeld(ridden: Ridden, context: RideContext, { moments }: Seen): Judgement[] {
  if (ridden.way === "on foot") return [];
  let { reins: story } = context.carriedIn ?? NOTHING_CARRIED_IN;
  let stage = -1;
  return moments.flatMap((moment, at): Judgement[] => {
    const skipped = ridden.stages.slice(stage + 1, moment.stage);
    if (skipped.some(({ is }) => is === "untreated")) story = "not told";
    stage = moment.stage;
    story = storyAfter(story, moment, context);
    if (!moment.stands) return [];
    const both = inBothHands(moment.state);
    const noHandFree = both !== null && !holdKeepsReins(moment, both.object.id, context);
    const inHand = noHandFree ? [true] : perhapsInBothHands(moment.state) ? [true, false] : [false];
    const places = possible(
      moment.state.reins,
      REIN_PLACES.filter((place) => place !== "away"),
    );
    const cases = places.flatMap((place) => (IN_HAND.includes(place) ? inHand : [story === "let go"]));
    const verdict = verdictOver(cases);
    if (verdict === "kept") return [kept(moment.stage)];
    const look = verdict === "cannot tell" && (noHandFree || story === "let go");
    const told = verdict === "broken" || look;
    const cause = !told
      ? null
      : noHandFree
        ? sinceMoment(moments, at, (state) => inBothHands(state) !== null)
        : sinceMoment(moments, at, ({ reins }) => !IN_HAND.some((place) => mayBe(reins, place)));
    const name = both?.object.name ?? "";
    return [
      {
        verdict,
        stage: moment.stage,
        about: "reins",
        ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
        action: cause?.stage === moment.stage ? (cause.actions.at(-1) ?? null) : null,
        quote: cause?.actions ?? [],
        is: noHandFree
          ? `both hands are on the ${name}, so nobody holds the reins`
          : "the last hand lets go of the reins, and nothing says where they lie",
        lift: noHandFree
          ? `Either one hand keeps the reins together with the ${name}, and the hold says so, or the reins are laid somewhere first, or one hand stays off the ${name}`
          : "Either another hand takes them, or the text lays them somewhere",
        look,
      },
    ];
  });
}

export const reinsHeld: RideRule = {
  code: "reins-held",
  words: "says only",
  sentence: "The reins are in a hand, or laid where the text lays them.",
  basis: "common practice",
  source:
    "Riding practice; no published figure is needed. A hold that names a place for the rein hand keeps the reins.",
  severity: "bars",
  reach: "instant",
  check: checkHeld,
};

function checkZone(ridden: Ridden, context: RideContext, { moments }: Seen): Judgement[] {
  if (ridden.way === "on foot") return [];
  return moments.flatMap((moment) => {
    if (!moment.stands) return [];
    return [...moment.holds.values()].flatMap((inForce): Judgement[] => {
      const wanted = context.hold(moment.stage, inForce.hold)?.slots.reinZone;
      if (wanted === undefined) return [];
      const zones = possible(wanted, ["any"]);
      const at = moment.state.reinZone;
      const verdict = zones.includes("any")
        ? "kept"
        : verdictOver(
            possible(at, [null, ...REIN_ZONES]).flatMap((zone) => zones.map((want) => zone === null || want !== zone)),
          );
      if (verdict === "kept") return [kept(moment.stage)];
      const name = context.names("holds", inForce.hold) ?? "";
      const where = isKnown(at, null) ? "no hand has the reins" : `the rein hand is ${possible(at, []).join(" or ")}`;
      return [
        {
          verdict,
          stage: moment.stage,
          about: inForce.object,
          ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
          action: moment.actions.at(-1) ?? null,
          quote: [...moment.actions, inForce.action],
          is: `the hold “${name}” has the rein hand ${zones.join(" or ")}, but ${where}`,
          lift: "Either the rein hand goes back there, or the hold is left first",
          look: false,
        },
      ];
    });
  });
}

export const reinHandZone: RideRule = {
  code: "rein-hand-zone",
  words: "says",
  sentence: "The rein hand is where the hold has it.",
  basis: "the text",
  source: "The place of the rein hand is what the hold’s own row says.",
  severity: "warns",
  reach: "instant",
  check: checkZone,
};
