/** shared/hands/things-shown.ts - which objects of a control state are drawn and told, and what is known of their place.
 *  May import: siblings in shared/hands. The main object is always among them, known or not; others once something is
 *  known of where they are. */
import { mainObject } from "./derived.ts";
import { isKnown, possible } from "./known.ts";
import { type Contact, type ControlState, HANDS, type Level, type ObjectState, type Zone } from "./state.ts";

/** The main object first, then the others as they are listed. A sheath is worn, and shown only while a hand is on it. */
export function shownObjects(state: ControlState): ObjectState[] {
  const main = mainObject(state);
  const others = state.objects.filter((held) => held !== main && isShown(held));
  return main === null ? others : [main, ...others];
}

function isShown(held: ObjectState): boolean {
  if (HANDS.some((hand) => mayHaveGripped(held, hand))) return true;
  if (held.object.is === "sheath") return false;
  return isPlanted(held) || bearersOf(held).length > 0 || isInNoHand(held);
}

/** Something is known of what this hand does with it, and that is not nothing. */
function mayHaveGripped({ grip }: ObjectState, hand: (typeof HANDS)[number]): boolean {
  return possible<Zone | null>(grip[hand], []).some((zone) => zone !== null);
}

export function isInNoHand({ grip }: ObjectState): boolean {
  return HANDS.every((hand) => isKnown<Zone | null>(grip[hand], null));
}

/** In no hand, and nothing is known to bear it: where it pointed last says nothing of it any more. */
export function isLoose(held: ObjectState): boolean {
  return isInNoHand(held) && bearersOf(held).length === 0;
}

export function isPlanted({ frame }: ObjectState): boolean {
  return isKnown(frame, "planted");
}

/** What bears it or touches it besides hands, those that bear it first; none where that is not known. */
export function bearersOf({ contacts }: ObjectState): Contact[] {
  const all = contacts.is === "known" ? contacts.value : [];
  return ["bears", "touches", "near"].flatMap((degree) => all.filter((contact) => contact.degree === degree));
}

/** How high its point may be: one level or either of two. More than two is as good as not known, and gives none. */
export function levelsOf({ level }: ObjectState): readonly Level[] {
  const levels = possible(level, []);
  return levels.length > 2 ? [] : LOW_TO_HIGH.filter((one) => levels.includes(one));
}

const LOW_TO_HIGH: readonly Level[] = ["ground", "low", "middle", "high"];
