/** shared/hands/state.ts - the control state: what hands, reins, objects and horse are known to be doing between acts.
 *  May import: schema types, siblings in shared/hands. Keeps rules H1-H8 (shared/hands/RULES.md). Finite: every part is
 *  known, one of some values, or unknown over a written-down domain. What follows from it (who has the reins, the side
 *  of the point) is never stored: see derived.ts. States are values; nothing changes one in place. */
import type { Way } from "../../schema/guard.ts";
import type { OBJECT_KINDS } from "../../schema/riding.ts";
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { either, isKnown, known, mayBe, possible, UNKNOWN } from "./known.ts";

export const HANDS = ["left", "right"] as const;
export type Hand = (typeof HANDS)[number];

export const REIN_PLACES = [
  "left hand",
  "right hand",
  "both hands",
  "neck",
  "left arm",
  "right arm",
  "saddle",
  "away",
] as const;
/** Where the reins are; "away" when there is no horse. */
export type ReinPlace = (typeof REIN_PLACES)[number];

export type Zone = ValueOf<"zone">;
export type Palm = ValueOf<"palm">;
export type Bearing = ValueOf<"bearing">;
export type Level = ValueOf<"level">;
export type Contact = ValueOf<"contact">;
export type ReinZone = Exclude<ValueOf<"reinZone">, "any">;
export type Gait = ValueOf<"gait">;

/** What a hand does besides gripping and keeping reins. */
export type Doing =
  | { is: "nothing besides" }
  | { is: "rests"; on: Contact | null }
  | { is: "gestures"; toward: string | null };

/** Something carried, as the state needs to know it. `lengthMetres` is null where no length is said. */
export interface Carried {
  id: string;
  name: string;
  is: (typeof OBJECT_KINDS)[number];
  lengthMetres: number | null;
}

/** Per object, so that one hand never grips two zones of one object. Null: this hand does not grip it. */
export interface ObjectState {
  object: Carried;
  grip: Readonly<Record<Hand, Known<Zone | null>>>;
  palm: Readonly<Record<Hand, Known<Palm | null>>>;
  bearing: Known<Bearing>;
  level: Known<Level>;
  edge: Known<ValueOf<"facing">>;
  /** Supports and neighbours other than hands; an empty list: none. */
  contacts: Known<readonly Contact[]>;
  frame: Known<ValueOf<"frame">>;
}

export interface ControlState {
  way: Way;
  /** Reins are not among them: they have a part of their own. */
  objects: readonly ObjectState[];
  doing: Readonly<Record<Hand, Known<Doing>>>;
  reins: Known<ReinPlace>;
  /** Null while no hand has the reins. */
  reinZone: Known<ReinZone | null>;
  gait: Known<Gait>;
  pace: Known<ValueOf<"pace">>;
  /** Null at a gait without a lead. */
  lead: Known<Hand | null>;
  /** The rein that is ridden: the side the horse turns to, or will at the next corner. */
  rein: Known<Hand>;
  direction: Known<"forward" | "back">;
}

const ZONES: Record<Carried["is"], readonly Zone[]> = {
  shaft: ["butt", "rear", "balance", "fore", "head"],
  blade: ["hilt", "blade"],
  shield: ["strap"],
  sheath: ["upper band", "ring", "strap", "end"],
  reins: ["end"],
  other: ["butt", "rear", "balance", "fore", "head", "hilt", "blade", "upper band", "ring", "strap", "end"],
};

/** Where an object of this kind can be gripped. */
export function zonesOf(object: Carried): readonly Zone[] {
  return ZONES[object.is];
}

export const REIN_ZONES: readonly ReinZone[] = [
  "at its place",
  "over the neck to the left",
  "over the neck to the right",
  "raised",
];

/** Nothing is said yet, so nothing is known, save that where there are no reins they are away. `reins`: on foot there are
 *  none, unless something stands for them. */
export function startState(objects: readonly Carried[], way: Way, reins: boolean = way === "mounted"): ControlState {
  const state: ControlState = {
    way,
    objects: objects.filter(({ is }) => is !== "reins").map(unknownObject),
    doing: { left: UNKNOWN, right: UNKNOWN },
    reins: reins ? UNKNOWN : known("away"),
    reinZone: UNKNOWN,
    gait: UNKNOWN,
    pace: UNKNOWN,
    lead: UNKNOWN,
    rein: UNKNOWN,
    direction: UNKNOWN,
  };
  return consistent(state);
}

/** After words that are not written out: anything may have happened. */
export function afterUntreated(state: ControlState): ControlState {
  return startState(
    state.objects.map(({ object }) => object),
    state.way,
    !isKnown(state.reins, "away"),
  );
}

function unknownObject(object: Carried): ObjectState {
  return {
    object,
    grip: { left: UNKNOWN, right: UNKNOWN },
    palm: { left: UNKNOWN, right: UNKNOWN },
    bearing: UNKNOWN,
    level: UNKNOWN,
    edge: UNKNOWN,
    contacts: UNKNOWN,
    frame: UNKNOWN,
  };
}

/** The state with one object changed; as it is when the object is not carried. */
export function withObject(state: ControlState, id: string, change: Partial<ObjectState>): ControlState {
  return {
    ...state,
    objects: state.objects.map((held) => (held.object.id === id ? { ...held, ...change } : held)),
  };
}

/** Either of two states, part by part: what both agree on is known, what they do not is one of the two. */
export function eitherState(first: ControlState, second: ControlState): ControlState {
  return consistent({
    way: first.way,
    objects: first.objects.map((held, index) => {
      const other = second.objects[index];
      return other === undefined ? held : eitherObject(held, other);
    }),
    doing: eitherHand(first.doing, second.doing),
    reins: either(first.reins, second.reins),
    reinZone: either(first.reinZone, second.reinZone),
    gait: either(first.gait, second.gait),
    pace: either(first.pace, second.pace),
    lead: either(first.lead, second.lead),
    rein: either(first.rein, second.rein),
    direction: either(first.direction, second.direction),
  });
}

function eitherObject(first: ObjectState, second: ObjectState): ObjectState {
  return {
    object: first.object,
    grip: eitherHand(first.grip, second.grip),
    palm: eitherHand(first.palm, second.palm),
    bearing: either(first.bearing, second.bearing),
    level: either(first.level, second.level),
    edge: either(first.edge, second.edge),
    contacts: either(first.contacts, second.contacts),
    frame: either(first.frame, second.frame),
  };
}

type PerHand<T> = Readonly<Record<Hand, Known<T>>>;
function eitherHand<T>(first: PerHand<T>, second: PerHand<T>): PerHand<T> {
  return { left: either(first.left, second.left), right: either(first.right, second.right) };
}

/** Where reins are when a hand has them. */
export const IN_HAND: readonly ReinPlace[] = ["left hand", "right hand", "both hands"];
const GAITS: readonly Gait[] = ["halt", "walk", "trot", "canter", "gallop"];
const WITH_LEAD: readonly Gait[] = ["canter", "gallop"];

/** The state with parts that hang on others brought in line: no palm without a grip, no zone for reins that no hand
 *  has, no lead at a walk. Every change goes through here, so that no reachable state contradicts itself. A state that is
 *  in line already is given back itself. */
export function consistent(state: ControlState): ControlState {
  const places = possible(state.reins, REIN_PLACES);
  const gaits = possible<Gait>(state.gait, GAITS);
  const objects = state.objects.map(withPalms);
  const reinZone = dependent(
    state.reinZone,
    places.some((place) => IN_HAND.includes(place)),
    places.every((place) => IN_HAND.includes(place)),
  );
  const lead = dependent(
    state.lead,
    gaits.some((gait) => WITH_LEAD.includes(gait)),
    gaits.every((gait) => WITH_LEAD.includes(gait)),
  );
  const inLine = objects.every((held, index) => held === state.objects[index]);
  if (inLine && reinZone === state.reinZone && lead === state.lead) return state;
  return { ...state, objects, reinZone, lead };
}

function withPalms(held: ObjectState): ObjectState {
  const left = palmWith(held.grip.left, held.palm.left);
  const right = palmWith(held.grip.right, held.palm.right);
  return left === held.palm.left && right === held.palm.right ? held : { ...held, palm: { left, right } };
}

function palmWith(grip: Known<Zone | null>, palm: Known<Palm | null>): Known<Palm | null> {
  return dependent(palm, !isKnown<Zone | null>(grip, null), !mayBe<Zone | null>(grip, null));
}

/** A value that is null exactly while what it hangs on is not there. `may`: it may be there; `must`: it is. */
function dependent<T>(value: Known<T | null>, may: boolean, must: boolean): Known<T | null> {
  if (!may) return isKnown<T | null>(value, null) ? value : known<T | null>(null);
  if (!must) return isKnown<T | null>(value, null) ? UNKNOWN : either<T | null>(value, known(null));
  if (value.is === "unknown" || (value.is === "known" && value.value !== null)) return value;
  const left = possible(value, []).filter((held) => held !== null);
  if (left.length === 0) return UNKNOWN;
  return left.length === 1 ? known<T | null>(left[0] ?? null) : { is: "one of", values: left };
}
