/** client/read/verbs.ts - the verbs as they are offered under each part, the most usual first, and the actions of an owner
 *  by the part they stand with. */
import type { Verb } from "../../schema/act.ts";
import { DRILL_PARTS, type DrillPart } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";
import { handSlotOf, partOf } from "../../shared/drill/part-of.ts";
import { compareRanked } from "../../shared/rank.ts";
import { drillElements } from "../state/passage.ts";
import { all, one } from "../state/rows.ts";

export const VERB_WORDS: Record<Verb, string> = {
  ride: "rides a figure",
  "go at": "goes at a gait or pace",
  take: "takes hold",
  release: "lets go",
  keep: "keeps what it has",
  pass: "passes it over",
  slide: "slides along",
  "change reins": "takes over the reins",
  "place rein hand": "goes to a place with the reins",
  "lay reins": "lays down the reins",
  rest: "rests on something",
  gesture: "makes a sign",
  hold: "is held in a named hold",
  carry: "is carried",
  spin: "is turned about",
  "cross the neck": "goes over the horse’s neck",
  raise: "is raised",
  lower: "is lowered",
  plant: "is planted",
  "pick up": "is picked up",
  draw: "is drawn",
  sheathe: "is sheathed",
  hook: "is hooked",
  unhook: "is unhooked",
  thrust: "is thrust",
  parry: "parries",
  "throw off": "throws off another",
  show: "is shown",
  perform: "goes through a movement",
  sit: "sits",
  look: "looks",
  wait: "waits",
  "do nothing": "does nothing",
  other: "something else, in words",
};

const HAND: readonly Verb[] = [
  "take",
  "pass",
  "keep",
  "release",
  "slide",
  "change reins",
  "place rein hand",
  "rest",
  "gesture",
  "do nothing",
  "other",
];
export const OFFERED: Record<DrillPart, readonly Verb[]> = {
  horse: ["ride", "go at", "other"],
  "left hand": HAND,
  "right hand": HAND,
  shaft: [
    "hold",
    "carry",
    "spin",
    "lower",
    "raise",
    "thrust",
    "parry",
    "cross the neck",
    "throw off",
    "draw",
    "sheathe",
    "plant",
    "pick up",
    "show",
    "hook",
    "unhook",
    "perform",
    "other",
  ],
  rider: ["sit", "look", "wait", "lay reins", "other"],
};

/** The column an action stands in: as the drill has it, else by what the act itself says. */
export function columnOf(action: RecordOf<"actions">): DrillPart {
  const printed = drillElements.value.get(action.owner)?.actions.find((other) => other.id === action.id);
  if (printed) return printed.part;
  const slots = action.act.slots as Record<string, Slot<unknown> | undefined>;
  const hand = slots[handSlotOf(action.act.verb) ?? ""];
  const known = hand?.is === "said" && (hand.value === "left" || hand.value === "right") ? hand.value : null;
  const object = slots.object?.is === "said" ? one("objects", String(slots.object.value)) : null;
  return partOf(action.act, known, object !== null && BESIDES.includes(object.is));
}
const BESIDES: readonly RecordOf<"objects">["is"][] = ["sheath", "reins", "other"];

export const byColumn = (actions: readonly RecordOf<"actions">[]) =>
  DRILL_PARTS.map((part) => ({ part, actions: actions.filter((action) => columnOf(action) === part) }));

export const actionsOf = (owner: string) =>
  all("actions")
    .filter((action) => action.owner === owner)
    .sort(compareRanked);
