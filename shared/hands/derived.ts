/** shared/hands/derived.ts - what follows from a control state and is never stored in it.
 *  May import: schema types, siblings in shared/hands. */
import type { Known } from "../../schema/slot.ts";
import { isKnown, known, mapKnown, mayBe, oneOf, possible, UNKNOWN } from "./known.ts";
import {
  type Bearing,
  type ControlState,
  HANDS,
  type Hand,
  type ObjectState,
  type ReinPlace,
  type Zone,
} from "./state.ts";

/** The hands that have the reins; an empty list: none has. */
export function reinHands({ reins }: ControlState): Known<readonly Hand[]> {
  return mapKnown(reins, handsAt);
}

function handsAt(place: ReinPlace): readonly Hand[] {
  switch (place) {
    case "left hand":
      return ["left"];
    case "right hand":
      return ["right"];
    case "both hands":
      return HANDS;
    default:
      return [];
  }
}

/** The hands on an object. */
export function handsOn({ grip }: ObjectState): Known<readonly Hand[]> {
  const ways = combinations(grip.left, grip.right);
  return ways.length === 4 ? UNKNOWN : oneOf(ways);
}

function combinations(left: Known<Zone | null>, right: Known<Zone | null>): Hand[][] {
  const on = (grip: Known<Zone | null>): boolean[] => {
    const free = mayBe<Zone | null>(grip, null);
    if (!free) return [true];
    return isKnown<Zone | null>(grip, null) ? [false] : [false, true];
  };
  return on(left).flatMap((l) => on(right).map((r) => HANDS.filter((hand) => (hand === "left" ? l : r))));
}

/** The object sheets give a column of its own: the first that is a weapon, else the first. */
export function mainObject({ objects }: ControlState): ObjectState | null {
  return objects.find(({ object }) => object.is === "shaft" || object.is === "blade") ?? objects[0] ?? null;
}

export type PointSide = "left" | "right" | "neither";

/** Left from 7 to 11 o'clock, right from 1 to 5; a point that looks at something named may be on either. */
export function sideOfPoint({ bearing }: ObjectState): Known<PointSide> {
  const hours = possible<Bearing>(bearing, []).map((value) => (value.is === "clock" ? value.hour : null));
  if (hours.length === 0 || hours.includes(null)) return UNKNOWN;
  return oneOf(hours.map((hour) => sideOfHour(hour ?? 12)));
}

function sideOfHour(hour: number): PointSide {
  if (hour % 6 === 0) return "neither";
  return hour > 6 ? "left" : "right";
}

/** Supports that bear the object for sure: hands that grip it, contacts that bear, the ground. */
export function surelyBearing({ grip, contacts, frame }: ObjectState): number {
  const hands = HANDS.filter((hand) => !mayBe<Zone | null>(grip[hand], null)).length;
  const borne = contacts.is === "known" ? contacts.value.filter(({ degree }) => degree === "bears") : [];
  const planted = isKnown(frame, "planted") && !borne.some((contact) => contact.with === "ground");
  return hands + borne.length + (planted ? 1 : 0);
}

/** Clock hours on a side, for a point of which only the side is known. */
export function bearingOnSide(side: Hand): Known<Bearing> {
  const hours = side === "left" ? [7, 8, 9, 10, 11] : [1, 2, 3, 4, 5];
  return oneOf(hours.map((hour): Bearing => ({ is: "clock", hour })));
}

export const otherHand = (hand: Hand): Hand => (hand === "left" ? "right" : "left");
export const noHands: Known<readonly Hand[]> = known([]);
