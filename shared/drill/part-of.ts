/** shared/drill/part-of.ts - in which column of the sheet an action stands.
 *  May import: schema types and constants. */
import { type Act, type ActOf, VERBS } from "../../schema/act.ts";
import type { DrillPart } from "../../schema/drill.ts";

export type HandKnown = "left" | "right" | null;

/** The slot that says which hand acts: the taking one where something is passed. Null for verbs without one. */
export function handSlotOf(verb: Act["verb"]): string | null {
  const { slots } = VERBS[verb];
  if ("hand" in slots) return "hand";
  return verb === "pass" || verb === "change reins" ? "to" : null;
}

/** `hand` is the acting hand where it is known, by the text or by the control state; `besides` says that the object
 *  is not the one the sheet gives a column of its own, so that what is done to it stands with the hand that does it.
 *  A hand that is not known, or both, stands with the object, or with the rider when no object is named. */
export function partOf(act: Act, hand: HandKnown, besides = false): DrillPart {
  const inHand = hand === null ? null : columnOf(hand);
  if (act.verb === "other") return ofOther(act.slots, besides);
  switch (VERBS[act.verb].part) {
    case "horse":
      return "horse";
    case "rider":
      return "rider";
    case "object":
      return besides ? (inHand ?? "shaft") : "shaft";
    case "hand":
      return inHand ?? ("object" in act.slots && act.slots.object !== undefined ? "shaft" : "rider");
  }
}

export function columnOf(hand: "left" | "right"): DrillPart {
  return hand === "left" ? "left hand" : "right hand";
}

/** Whether an action stands with the hand that does it, once that hand is known. */
export function standsWithHand(verb: Act["verb"], besides: boolean): boolean {
  return VERBS[verb].part === "hand" || (VERBS[verb].part === "object" && besides);
}

/** Where nobody is named, what is told of the object that has the column stands with it. */
function ofOther({ who, object }: ActOf<"other">["slots"], besides: boolean): DrillPart {
  if (who?.is === "said") return who.value === "object" ? "shaft" : who.value;
  return object?.is === "said" && !besides ? "shaft" : "rider";
}
