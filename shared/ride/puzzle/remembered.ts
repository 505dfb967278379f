/** shared/ride/puzzle/remembered.ts - what a ride remembers between two elements: hands and horse, where it is, what goes on.
 *  May import: schema types, shared/ground, shared/hands, shared/ride. Keeps rule P5 (shared/ride/puzzle/RULES.md).
 *  Values; nothing changes one in place. */
import type { Known } from "../../../schema/slot.ts";
import type { Point, Pose } from "../../ground/plane.ts";
import { UNKNOWN } from "../../hands/known.ts";
import { type ControlState, consistent, HANDS } from "../../hands/state.ts";
import type { Drafted } from "../course.ts";
import type { CarriedIn } from "../rules/carried-in.ts";
import type { HandsOnIt } from "../rules/remembered.ts";

/** The hands on the main object when something was first done; null where there was none. */
export interface HandsThen {
  on: HandsOnIt | null;
  mirrored: boolean;
}

/** Where and how a demand over several elements began. */
export interface Began {
  hands: HandsOnIt | null;
  place: Point;
  /** Something since then was not written out, or could not be ridden. */
  untold: boolean;
  /** For a demand to the end of the exercise: the element ridden last, and the one whose actions were done. */
  last: readonly string[];
}

export interface Remembered {
  state: ControlState;
  pose: Pose;
  /** The piece ridden last; null before the first. */
  last: Drafted | null;
  /** Metres across of the circle last ridden about a station. */
  sizes: ReadonlyMap<string, number>;
  /** Where the horse was when the figures of an element began. */
  began: ReadonlyMap<string, { pose: Pose; mirrored: boolean }>;
  carried: CarriedIn;
  /** Breaches that last and have been told: rule and what it is about. */
  goingOn: ReadonlySet<string>;
  /** The hands before the first stage of an element that is done again later. */
  firstHands: ReadonlyMap<string, HandsThen>;
  /** Demands that have begun, by the element that makes them. */
  demands: ReadonlyMap<string, Began>;
}

/** What may still be read after an element. */
export interface StillRead {
  /** Nothing comes any more. */
  over: boolean;
  sizes: ReadonlySet<string>;
  began: ReadonlySet<string>;
  firstHands: ReadonlySet<string>;
  demands: ReadonlySet<string>;
  /** Codes of rules that bar. */
  bars: ReadonlySet<string>;
}

/** The same without what nobody reads any more: what differs in that alone is one state from here on. */
export function forgetting(held: Remembered, still: StillRead): Remembered {
  const { bars } = still;
  const lead = bars.has("lead-bend");
  const reinZone = bars.has("rein-hand-zone");
  const state = consistent({
    ...held.state,
    objects: held.state.objects.map((object) => ({
      ...object,
      palm: { left: UNKNOWN, right: UNKNOWN },
      edge: UNKNOWN,
    })),
    doing: { left: UNKNOWN, right: UNKNOWN },
    direction: UNKNOWN,
    lead: lead ? held.state.lead : UNKNOWN,
    reinZone: reinZone ? held.state.reinZone : UNKNOWN,
  });
  return {
    ...held,
    state,
    sizes: only(held.sizes, still.sizes),
    began: only(held.began, still.began),
    firstHands: only(held.firstHands, still.firstHands),
    demands: only(held.demands, still.demands),
  };
}

function only<T>(map: ReadonlyMap<string, T>, wanted: ReadonlySet<string>): ReadonlyMap<string, T> {
  return [...map.keys()].every((key) => wanted.has(key)) ? map : new Map([...map].filter(([key]) => wanted.has(key)));
}

/** Equal for two that no later element can tell apart, whatever order their possible values come in. */
export function keyOf(held: Remembered): string {
  const { state, carried, goingOn, firstHands, demands } = held;
  return JSON.stringify([
    state.way,
    state.objects.map(({ object, grip, palm, bearing, level, edge, contacts, frame }) => [
      object.id,
      ...[grip.left, grip.right, palm.left, palm.right].map(knownKey),
      ...[bearing, level, edge, contacts, frame].map(knownKey),
    ]),
    HANDS.map((hand) => knownKey(state.doing[hand])),
    [state.reins, state.reinZone, state.lead, state.direction].map(knownKey),
    wayKey(held),
    inOrder(carried.holds).map(([object, { hold }]) => [object, hold]),
    carried.reins === "let go",
    [...goingOn].sort(),
    inOrder(firstHands),
    inOrder(demands),
  ]);
}

/** What the way of a stage hangs on: no more is read while it is laid. */
export function wayKeyOf(held: Remembered): string {
  return JSON.stringify(wayKey(held));
}

function wayKey({ state, pose, last, sizes, began }: Remembered): unknown[] {
  return [
    [state.gait, state.pace, state.rein].map(knownKey),
    // What is carried can be a measure: "a spear's length before it".
    state.objects.map(({ object }) => [object.name, object.lengthMetres]),
    [pose.x, pose.y, pose.heading],
    last === null ? null : lastKey(last),
    inOrder(sizes).map(([id, metres]) => [id, nearly(metres)]),
    inOrder(began).map(([id, { pose: at, mirrored }]) => [id, at.x, at.y, at.heading, mirrored]),
  ];
}

function inOrder<T>(map: ReadonlyMap<string, T>): [string, T][] {
  return [...map].sort(([a], [b]) => (a < b ? -1 : 1));
}

function knownKey(held: Known<unknown>): unknown {
  if (held.is === "unknown") return 0;
  if (held.is === "known") return [held.value];
  return held.values.map((value) => JSON.stringify(value)).sort();
}

/** What a stage without a figure of its own reads of the piece before it: the gait, and the circle it may go on round. */
function lastKey({ piece, ridden }: Drafted): unknown[] {
  const { gait, pace, gaitSupplied, speed, strideLength, figure } = ridden;
  const round =
    piece.is === "arc" && (figure === "circle" || figure === "volte" || figure === "part circle")
      ? [figure, nearly(piece.centre.x), nearly(piece.centre.y), nearly(piece.radius), Math.sign(piece.sweep)]
      : null;
  return [gait, pace, gaitSupplied, speed, strideLength, round];
}

/** Thousandths of a millimetre: what differs by less is rounding. */
const nearly = (metres: number): number => Math.round(metres * 1e6);
