/** shared/ride/lane-words.ts - what a hand, an object and the horse are doing, in a few words for their lanes.
 *  May import: schema types, shared/drill, shared/hands, siblings in shared/ride. Keeps rules R28-R29 (shared/ride/RULES.md):
 *  "the text does not say" is never "nothing". */
import type { Known } from "../../schema/slot.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import { type Names, valueWords } from "../drill/words.ts";
import { reinHands } from "../hands/derived.ts";
import { isKnown, mayBe, possible } from "../hands/known.ts";
import type { ControlState, Doing, Hand, ObjectState, Zone } from "../hands/state.ts";
import type { LaneSpan, RiddenThreat } from "./ridden.ts";

export type Told = Pick<LaneSpan, "words" | "shows">;

const NOT_SAID: Told = { words: "the text does not say", shows: "not said" };

/** Reins, grips and what else the hand does. What is only possible is said to be so. */
export function handTold(state: ControlState, hand: Hand, names: Names): Told {
  const reins = reinsIn(state, hand);
  const grips = state.objects.map((held) => gripIn(held, hand));
  const doing = doingOf(state.doing[hand], names);
  const parts = [reins, ...grips, doing];
  const said = parts.flatMap(({ words }) => (words === null ? [] : [words]));
  if (said.length > 0) return { words: said.join("; "), shows: "something" };
  return parts.some(({ open }) => open) ? NOT_SAID : { words: "nothing", shows: "nothing" };
}

/** `open`: it is not known whether there is anything. */
interface Part {
  words: string | null;
  open: boolean;
}
const NONE: Part = { words: null, open: false };
const OPEN: Part = { words: null, open: true };

function reinsIn(state: ControlState, hand: Hand): Part {
  const ways = possible(reinHands(state), [[], ["left"], ["right"]] as readonly (readonly Hand[])[]);
  const having = ways.filter((hands) => hands.includes(hand));
  if (having.length === 0) return NONE;
  return having.length === ways.length ? { words: "reins", open: false } : OPEN;
}

function gripIn({ object, grip }: ObjectState, hand: Hand): Part {
  const held = grip[hand];
  if (isKnown<Zone | null>(held, null)) return NONE;
  if (mayBe<Zone | null>(held, null)) return OPEN;
  const zones = possible<Zone | null>(held, []).filter((at) => at !== null);
  const [zone, another] = zones;
  const where = zone !== undefined && another === undefined ? ` ${valueWords("zone", zone, () => null)}` : "";
  return { words: `${object.name}${where}`, open: false };
}

function doingOf(doing: Known<Doing>, names: Names): Part {
  if (doing.is !== "known") return OPEN;
  const { value } = doing;
  switch (value.is) {
    case "nothing besides":
      return NONE;
    case "rests":
      return { words: value.on === null ? "rests" : valueWords("contact", value.on, names), open: false };
    case "gestures": {
      const toward = value.toward === null ? null : (names("stations", value.toward) ?? value.toward);
      return { words: toward === null ? "gestures" : `gestures toward ${toward}`, open: false };
    }
  }
}

/** Where it points, how high, what bears it. */
export function objectTold(held: ObjectState, names: Names): Told {
  const bearing = saidOf("bearing", held.bearing, names);
  const contacts =
    held.contacts.is === "known" ? held.contacts.value.map((one) => valueWords("contact", one, names)) : [];
  const said = [
    bearing === null ? null : `point ${bearing}`,
    saidOf("level", held.level, names),
    ...contacts,
    isKnown(held.frame, "planted") ? "planted" : null,
  ].filter((words) => words !== null);
  return said.length === 0 ? NOT_SAID : { words: said.join("; "), shows: "something" };
}

/** Null where it is not known, or too many are possible to say. */
function saidOf<K extends ValueKind>(kind: K, held: Known<ValueOf<K>>, names: Names): string | null {
  const values = possible(held, []);
  if (values.length === 0 || values.length > 3) return null;
  return [...new Set(values.map((value) => valueWords(kind, value, names)))].join(" or ");
}

/** Who it is, from where he comes, and where his weapon is, as far as that is said. */
export function threatTold({ name, hour, weaponSide }: RiddenThreat): string {
  const from = hour === null ? "" : `, from ${hour} o’clock`;
  return `${name}${from}${weaponSide === null ? "" : `, weapon on the ${weaponSide}`}`;
}

export function gaitTold({ gait, pace }: ControlState, names: Names): Told {
  const said = saidOf("gait", gait, names);
  if (said === null) return NOT_SAID;
  const how = saidOf("pace", pace, names);
  return { words: how === null ? said : `${how} ${said}`, shows: "something" };
}

export function leadTold({ lead }: ControlState): Told {
  if (isKnown<Hand | null>(lead, null)) return { words: "no lead at this gait", shows: "nothing" };
  if (lead.is !== "known") return NOT_SAID;
  return { words: `${lead.value} lead`, shows: "something" };
}
