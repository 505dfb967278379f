/** shared/hands/apply.ts - one act on one control state, for every verb there is.
 *  May import: schema types and constants, siblings in shared/hands. Keeps rules H1-H8 and H10 (shared/hands/RULES.md).
 *  Total: every act gives a state, and no rule is consulted. Where hand or object is left open, the act is done in each
 *  way it can be meant, and what the outcomes agree on is known. */
import { VERBS, type Verb } from "../../schema/act.ts";
import type { Known } from "../../schema/slot.ts";
import {
  applyChangeReins,
  applyGesture,
  applyKeep,
  applyKeepReins,
  applyLayReins,
  applyPass,
  applyPlaceReinHand,
  applyRelease,
  applyReleaseReins,
  applyRest,
  applySlide,
  applyTake,
  applyTakeReins,
} from "./apply-hand.ts";
import { applyHold, applyUnknownHold, type KnownHold } from "./apply-hold.ts";
import { applyGait, applyRide } from "./apply-horse.ts";
import {
  applyCarry,
  applyCross,
  applyDraw,
  applyHook,
  applyPickUp,
  applyPlant,
  applyRaiseOrLower,
  applySheathe,
  applySpin,
  applyStrike,
} from "./apply-object.ts";
import { mainObject, reinHands } from "./derived.ts";
import { isKnown, mayBe, possible, UNKNOWN } from "./known.ts";
import { filledIn, type KnownAct, slotOf } from "./known-act.ts";
import { isOnReins, needsReins } from "./on-reins.ts";
import { handsMeant, handsOfRole, ONE_HAND } from "./roles.ts";
import { type ControlState, consistent, eitherState, HANDS, type Hand, type ObjectState, type Zone } from "./state.ts";

/** What acts look up. */
export interface ActContext {
  hold: (id: string) => KnownHold | null;
  /** The acts of a movement in their order; null when it is not known. */
  movement: (id: string) => readonly KnownAct[] | null;
  /** Objects that are reins. */
  isReins: (object: string) => boolean;
}

export const NO_CONTEXT: ActContext = { hold: () => null, movement: () => null, isReins: () => false };

/** The hands that acted last in this step, for "the other". */
export type HandsBefore = Known<readonly Hand[]>;

/** The state after acts that follow each other, and after each of them. */
export function applyActs(state: ControlState, acts: readonly KnownAct[], context: ActContext): ControlState {
  let [now, before]: [ControlState, HandsBefore] = [state, UNKNOWN];
  for (const act of acts) {
    const done = actingHands(now, act, before);
    now = applyAct(now, act, context, before);
    if (done !== null) before = done;
  }
  return now;
}

export function applyAct(
  state: ControlState,
  act: KnownAct,
  context: ActContext,
  before: HandsBefore = UNKNOWN,
): ControlState {
  const { hold, movement, isReins } = context;
  return consistent(handle(state, act, { hold, movement, isReins, before, within: NOTHING }));
}

function handle(state: ControlState, act: KnownAct, doing: Doing): ControlState {
  const hasReins = !isKnown(state.reins, "away");
  return !hasReins && needsReins(act, doing.isReins) ? state : HANDLERS[act.verb](state, act, doing);
}

interface Doing extends ActContext {
  before: HandsBefore;
  /** Movements that are being done, so that one that names itself ends. */
  within: readonly string[];
}
const NOTHING: readonly string[] = [];
type Handler = (state: ControlState, act: KnownAct, doing: Doing) => ControlState;

const unchanged: Handler = (state) => state;

const HANDLERS: Record<Verb, Handler> = {
  ride: applyRide,
  "go at": applyGait,
  take: onReins(applyTakeReins, (state, act, hands, held) => applyTake(state, act, hands ?? [], held), "needed"),
  release: onReins(applyReleaseReins, (state, _act, hands, held) => applyRelease(state, hands ?? [], held), "holding"),
  keep: onReins(applyKeepReins, (state, act, hands, held) => applyKeep(state, act, hands ?? [], held), "holding"),
  pass: (state, act, doing) =>
    isOnReins(act, doing.isReins)
      ? applyChangeReins(state, act, { object: null, before: doing.before })
      : eachObject(state, act, (held) => applyPass(state, act, { object: held.object.id, before: doing.before }, held)),
  slide: withBoth((state, act, hands, held) => applySlide(state, act, hands ?? [], held), "holding"),
  "change reins": (state, act, { before }) => applyChangeReins(state, act, { object: null, before }),
  "place rein hand": applyPlaceReinHand,
  "lay reins": applyLayReins,
  rest: withHand((state, act, hands) => applyRest(state, act, hands)),
  gesture: withHand((state, act, hands) => applyGesture(state, act, hands)),
  hold: applyHoldAct,
  carry: withBoth(applyCarry, "silent"),
  spin: withBoth((state, act, _hands, held) => applySpin(state, act, held), "silent"),
  "cross the neck": withBoth((state, act, _hands, held) => applyCross(state, act, held), "silent"),
  raise: withBoth(applyRaiseOrLower, "silent"),
  lower: withBoth(applyRaiseOrLower, "silent"),
  plant: withBoth((state, _act, _hands, held) => applyPlant(state, held), "silent"),
  "pick up": withBoth((state, _act, hands, held) => applyPickUp(state, hands ?? [], held), "needed"),
  draw: withBoth((state, act, hands, held) => applyDraw(state, act, hands ?? [], held), "holding"),
  sheathe: withBoth((state, _act, _hands, held) => applySheathe(state, held), "silent"),
  hook: withBoth((state, act, _hands, held) => applyHook(state, act, held), "silent"),
  unhook: withBoth((state, act, _hands, held) => applyHook(state, act, held), "silent"),
  thrust: withBoth(applyStrike, "silent"),
  parry: withBoth(applyStrike, "silent"),
  "throw off": withBoth(applyStrike, "silent"),
  show: unchanged,
  perform: applyPerform,
  sit: unchanged,
  look: unchanged,
  wait: unchanged,
  "do nothing": unchanged,
  other: unchanged,
};

type OnObject = (state: ControlState, act: KnownAct, hands: readonly Hand[] | null, held: ObjectState) => ControlState;

/** What silence about the hand means: *needed* - either hand; *holding* - a hand that holds the object; *silent* - that
 *  nothing is said of hands. */
type Silence = "needed" | "holding" | "silent";

function withBoth(change: OnObject, silence: Silence): Handler {
  return (state, act, doing) =>
    eachObject(state, act, (held) => {
      const role = slotOf(act, "hand", "hand");
      if (role === null && silence === "silent") return [change(state, act, null, held)];
      const context = { object: held.object.id, before: doing.before };
      const hands = handsMeant(role, state, context, silence === "holding" ? holding(held) : ONE_HAND);
      return hands.map((set) => change(state, act, set, held));
    });
}

/** Sets of hands that may be the ones on the object; where none can be, either hand. */
function holding({ grip }: ObjectState): readonly (readonly Hand[])[] {
  const may = HANDS.filter((hand) => !isKnown<Zone | null>(grip[hand], null));
  const sure = may.filter((hand) => !mayBe<Zone | null>(grip[hand], null));
  if (sure.length > 0) return sure.map((hand) => [hand]);
  return may.length === 0 ? ONE_HAND : may.map((hand) => [hand]);
}

/** Reins are no object of the state: an act on them goes to the reins. */
function onReins(
  reins: (state: ControlState, hands: readonly Hand[]) => ControlState,
  change: OnObject,
  silence: Silence,
): Handler {
  const objects = withBoth(change, silence);
  return (state, act, doing) => {
    if (!isOnReins(act, doing.isReins)) return objects(state, act, doing);
    const having = possible(reinHands(state), ONE_HAND).filter((set) => set.length > 0);
    const silent = having.length === 0 ? ONE_HAND : having;
    const hands = handsMeant(slotOf(act, "hand", "hand"), state, { object: null, before: doing.before }, silent);
    return joined(
      state,
      hands.map((set) => reins(state, set)),
    );
  };
}

function withHand(change: (state: ControlState, act: KnownAct, hands: readonly Hand[]) => ControlState): Handler {
  return (state, act, { before }) => {
    const sets = handsMeant(slotOf(act, "hand", "hand"), state, { object: null, before });
    return joined(
      state,
      sets.map((set) => change(state, act, set)),
    );
  };
}

/** The act on each object it can mean: the one named, else the only one, else the weapon the sheet is about. Where a
 *  crux leaves it open, on each of those; where it is not known at all, on any. */
function eachObject(state: ControlState, act: KnownAct, change: (held: ObjectState) => ControlState[]): ControlState {
  const named = slotOf(act, "object", "object");
  const all = state.objects;
  const main = mainObject(state);
  const meant =
    named === null ? all.filter((held) => held === main) : all.filter(({ object }) => mayBe(named, object.id));
  return joined(state, meant.flatMap(change));
}

function joined(state: ControlState, ways: readonly ControlState[]): ControlState {
  const [first, ...others] = ways.map(consistent);
  return first === undefined ? state : others.reduce(eitherState, first);
}

function applyHoldAct(state: ControlState, act: KnownAct, doing: Doing): ControlState {
  const ids = slotOf(act, "hold", "hold");
  const holds =
    ids === null ? [null] : possible<string | null>(ids, [null]).map((id) => (id === null ? null : doing.hold(id)));
  return withBoth((now, _act, hands, held) => {
    // Of both hands either may be the main one.
    const mains: readonly (Hand | null)[] = hands === null || hands.length === 0 ? [null] : hands;
    return joined(
      now,
      mains.flatMap((main) =>
        holds.map((hold) =>
          hold === null || main === null ? applyUnknownHold(now, main, held) : applyHold(now, hold, main, held),
        ),
      ),
    );
  }, "holding")(state, act, doing);
}

/** The movement's acts one after another; hand and object of the use are filled in where they leave them open. */
function applyPerform(state: ControlState, act: KnownAct, doing: Doing): ControlState {
  const ids = slotOf(act, "movement", "movement");
  const id = ids?.is === "known" ? ids.value : null;
  const acts = id === null || doing.within.includes(id) ? null : doing.movement(id);
  if (id === null || acts === null) return unknownHands(state);
  const within = [...doing.within, id];
  let [now, before]: [ControlState, HandsBefore] = [state, doing.before];
  for (const own of acts) {
    const filled = filledIn(filledIn(own, "hand", act.slots.hand), "object", act.slots.object);
    const done = actingHands(now, filled, before);
    now = consistent(handle(now, filled, { ...doing, before, within }));
    if (done !== null) before = done;
  }
  return now;
}

/** A movement nobody has written down may do anything with hands and objects; the horse goes on. */
function unknownHands(state: ControlState): ControlState {
  const objects = state.objects.map(
    (held): ObjectState => ({
      ...held,
      grip: { left: UNKNOWN, right: UNKNOWN },
      bearing: UNKNOWN,
      level: UNKNOWN,
      edge: UNKNOWN,
      contacts: UNKNOWN,
      frame: UNKNOWN,
    }),
  );
  const reins = isKnown(state.reins, "away") ? state.reins : UNKNOWN;
  return { ...state, objects, reins, doing: { left: UNKNOWN, right: UNKNOWN } };
}

/** The hands that do this act, as the state before it tells them; null where the act has no hand. */
export function actingHands(state: ControlState, act: KnownAct, before: HandsBefore): Known<readonly Hand[]> | null {
  const slots: Readonly<Record<string, unknown>> = VERBS[act.verb].slots;
  const name = "hand" in slots ? "hand" : act.verb === "pass" || act.verb === "change reins" ? "to" : null;
  const role = name === null ? null : slotOf(act, name, "hand");
  if (role === null) return null;
  const object = slotOf(act, "object", "object");
  const context = { object: object?.is === "known" ? object.value : null, before };
  return role.is === "known" ? handsOfRole(role.value, state, context) : UNKNOWN;
}
