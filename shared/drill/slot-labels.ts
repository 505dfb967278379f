/** shared/drill/slot-labels.ts - slots by name: the kind of each, its label, and which ones an act cannot do without.
 *  May import: schema types and constants. */
import { VERBS, type Verb } from "../../schema/act.ts";
import { GROUND_SLOTS, HOLD_SLOTS, OBJECT_SLOTS, THREAT_SLOTS } from "../../schema/riding.ts";
import type { SlotAddress, SlotTable } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";

/** Slots of an action besides those of its verb. */
export const ACTION_SLOTS = { timing: "timing", purpose: "purpose", threat: "threat" } as const satisfies SlotTable;
export const ELEMENT_SLOTS = { cue: "words", threat: "threat", times: "count" } as const satisfies SlotTable;
export const STATION_SLOTS = { outline: "outline" } as const satisfies SlotTable;

type VerbSlot = { [V in Verb]: keyof (typeof VERBS)[V]["slots"] }[Verb];
export type SlotName =
  | VerbSlot
  | keyof typeof ACTION_SLOTS
  | keyof typeof ELEMENT_SLOTS
  | keyof typeof HOLD_SLOTS
  | keyof typeof OBJECT_SLOTS
  | keyof typeof THREAT_SLOTS
  | keyof typeof GROUND_SLOTS
  | keyof typeof STATION_SLOTS;

const LABELS: Record<SlotName, string> = {
  about: "about",
  across: "across",
  amount: "how far",
  angle: "angle",
  at: "where",
  balanceFromButt: "balance from the butt",
  bearing: "direction",
  bend: "side of the bend",
  contact: "besides the hand",
  cue: "waits for",
  distance: "how far",
  edge: "edge",
  end: "which end",
  figure: "figure",
  frame: "carried or planted",
  from: "from",
  gait: "gait",
  hand: "hand",
  height: "height",
  hold: "hold",
  how: "how",
  into: "into",
  laps: "how often",
  lead: "lead",
  length: "length",
  level: "level",
  manner: "manner",
  mass: "weight",
  mount: "on foot or mounted",
  movement: "movement",
  object: "what",
  on: "on",
  outline: "where",
  pace: "pace",
  palm: "palm",
  purpose: "purpose",
  reinZone: "rein hand",
  secondContact: "besides the hand, also",
  secondPalm: "palm of the second hand",
  secondZone: "second hand",
  size: "size",
  spin: "turn of the weapon",
  threat: "facing",
  times: "how often",
  timing: "when",
  to: "to",
  toward: "toward",
  trackOffset: "track from the wall",
  turn: "to which side",
  until: "until",
  weaponSide: "side of the weapon",
  who: "who",
  width: "width",
  words: "what",
  zone: "where it is held",
};

/** The slot in words; its bare name where it is not one of ours. */
export function slotLabel(slot: string): string {
  return (LABELS as Record<string, string>)[slot] ?? slot;
}

const SLOTS_OF: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(VERBS).map(([verb, { slots }]) => [verb, [...Object.keys(slots), ...Object.keys(ACTION_SLOTS)]]),
);

/** The slots of an action that does this, those of its verb first. */
export function slotsOf(verb: Verb): readonly string[] {
  return SLOTS_OF.get(verb) ?? [];
}

/** The kind of value in a slot of an act. */
export function kindOfActSlot(verb: Verb, slot: string): ValueKind | null {
  return kindIn(VERBS[verb].slots, slot) ?? kindIn(ACTION_SLOTS, slot);
}

/** The kind of value in a slot that is not in an act; null where there is no such slot. */
export function kindOfSlot(kind: Exclude<SlotAddress["kind"], "actions">, slot: string): ValueKind | null {
  const tables: Record<typeof kind, SlotTable> = {
    elements: ELEMENT_SLOTS,
    holds: HOLD_SLOTS,
    stations: STATION_SLOTS,
    threats: THREAT_SLOTS,
    objects: OBJECT_SLOTS,
    grounds: GROUND_SLOTS,
  };
  return kindIn(tables[kind], slot);
}

function kindIn(table: SlotTable, slot: string): ValueKind | null {
  return Object.hasOwn(table, slot) ? (table[slot] ?? null) : null;
}

/** What an act cannot be done without: where the text is silent about one of these it is printed as not said. */
const NEEDED: Record<Verb, readonly string[]> = {
  ride: ["figure"],
  "go at": ["gait"],
  take: ["hand", "object", "zone"],
  release: ["hand", "object"],
  keep: ["hand"],
  pass: ["object", "from", "to"],
  slide: ["hand", "object", "zone"],
  "change reins": ["to"],
  "place rein hand": ["zone"],
  "lay reins": ["on"],
  rest: ["hand", "on"],
  gesture: ["hand"],
  hold: ["object", "hold", "hand"],
  carry: ["object"],
  spin: ["object", "spin"],
  "cross the neck": ["object", "to"],
  raise: ["object"],
  lower: ["object"],
  plant: ["object", "at"],
  "pick up": ["object", "hand"],
  draw: ["object", "hand"],
  sheathe: ["object", "hand"],
  hook: ["object", "hand"],
  unhook: ["object", "hand"],
  thrust: ["object", "bearing"],
  parry: ["object", "to"],
  "throw off": ["object"],
  show: ["object"],
  perform: ["movement"],
  sit: ["how"],
  look: ["toward"],
  wait: [],
  "do nothing": [],
  other: ["words"],
};

const TURNING: readonly unknown[] = [
  "circle",
  "part circle",
  "volte",
  "half volte",
  "half volte reversed",
  "figure of eight",
  "oblong",
  "serpentine",
  "spiral in",
  "spiral out",
  "turn",
];

/** Slots this act needs, in the order of its verb. A figure that turns needs its side, a canter or gallop its lead;
 *  a pace alone ("faster") leaves the gait as it is. `value` gives what a slot is known to hold, else undefined. */
export function neededSlots(verb: Verb, value: (slot: string) => unknown): string[] {
  const needed = new Set(NEEDED[verb]);
  if (verb === "ride" && TURNING.includes(value("figure"))) needed.add("turn");
  if (verb === "ride" && value("figure") === "turn") needed.add("amount");
  if (verb === "go at" && value("pace") !== undefined) needed.delete("gait");
  if (verb === "go at" && ["canter", "gallop"].includes(String(value("gait")))) needed.add("lead");
  return Object.keys(VERBS[verb].slots).filter((slot) => needed.has(slot));
}
