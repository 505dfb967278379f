/** shared/drill/compile-action.ts - one action under the readings taken, its values in words with what they rest on.
 *  May import: schema types and constants, siblings in shared/drill. */
import { type Act, VERBS } from "../../schema/act.ts";
import type { DrillAction, DrillValue } from "../../schema/drill.ts";
import type { Action } from "../../schema/exercise.ts";
import { HOLD_SLOTS } from "../../schema/riding.ts";
import type { Known, Slot } from "../../schema/slot.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import { known, oneOf, UNKNOWN } from "../hands/known.ts";
import type { KnownAct } from "../hands/known-act.ts";
import { actWords, phraseAct } from "./act-words.ts";
import { citationsOf } from "./citations.ts";
import { type HandKnown, handSlotOf, partOf } from "./part-of.ts";
import {
  type Compiling,
  drillValue,
  NOT_SAID,
  onlyWherePresent,
  type Resolved,
  resolvedWords,
  resolveSlot,
  restsOf,
} from "./resolve-slot.ts";
import type { OnlyUnder } from "./settle.ts";
import { kindOfActSlot, neededSlots, slotsOf } from "./slot-labels.ts";

export interface CompiledAction {
  drill: DrillAction;
  /** For following the hands: what is known of each slot once readings are taken. */
  known: KnownAct;
  timing: Known<ValueOf<"timing">> | null;
  /** Whether it is done to an object other than the one that has the sheet's column. */
  besides: boolean;
}

export interface ActionOrigin {
  /** The title of the standing instruction the action comes from; null for an action of its own. */
  inheritedFrom: string | null;
  /** For an action changed for the day: why. */
  changed: string | null;
  /** Readings under which alone it is done, besides its own guard. */
  onlyUnder: OnlyUnder[];
}

export const OWN: ActionOrigin = { inheritedFrom: null, changed: null, onlyUnder: [] };

/** Null when the action is no part of the drill: its guard does not hold, or the reading taken leaves it out. */
export function compileAction(compiling: Compiling, action: Action, origin: ActionOrigin): CompiledAction | null {
  const { settlement, element, rows, names, bearing } = compiling;
  bearing.guard(action.guard, "action", () => (compiling.wordless ? "" : actWords(action.act, names)));
  const verdict = settlement.judge(action.guard, element);
  if (verdict.truth === "no") return null;

  // What does not stand in the row is silent, and most of an act's slots do not.
  const resolved = new Map<string, Resolved>();
  for (const slot of slotsOf(action.act.verb)) {
    const held = writtenIn(action, slot);
    if (held !== undefined) resolved.set(slot, resolveSlot(compiling, { kind: "actions", id: action.id, slot }, held));
  }
  const values = [...resolved.values()];
  if (values.some((value) => value.is === "absent")) return null;

  const act = resolvedAct(action.act, resolved);
  const hand = knownHand(act);
  const besides = isBesides(compiling, act);
  const part = partOf(act, hand, besides);
  const waits = values.map(onlyWherePresent).filter((only) => only !== null);
  return {
    drill: {
      id: action.id,
      part,
      verb: act.verb,
      text: compiling.wordless
        ? ""
        : phraseAct(act.verb, (slot) => {
            if (part === `${hand} hand` && slot === handSlotOf(act.verb) && slot === "hand") return null;
            const kind = kindOfActSlot(act.verb, slot);
            const value = resolved.get(slot);
            return kind === null || value === undefined ? null : resolvedWords(value, kind, names);
          }),
      standing: origin.changed !== null ? "supplied" : weaker(origin, action.existence.warrant),
      inherited: origin.inheritedFrom !== null,
      onlyUnder: mergeOnlyUnder([...verdict.onlyUnder, ...waits, ...origin.onlyUnder]),
      values: [
        ...valuesOf(compiling, act, resolved),
        ...heldByCrux(compiling, act),
        ...movedByCrux(compiling, act),
      ].map((value) => asOriginated(value, origin)),
      rests: compiling.wordless ? [] : [...originRests(origin), ...restsOf(rows, action.existence.basis)],
      citations: compiling.wordless ? [] : citationsOf(rows, "actions", action.id, action.existence),
    },
    known: knownActOf(act.verb, resolved),
    timing: knownOf(resolved.get("timing")) as Known<ValueOf<"timing">> | null,
    besides,
  };
}

function writtenIn({ act, timing, purpose, threat }: Action, slot: string): Slot<unknown> | undefined {
  switch (slot) {
    case "timing":
      return timing;
    case "purpose":
      return purpose;
    case "threat":
      return threat;
    default:
      return (act.slots as Record<string, Slot<unknown> | undefined>)[slot];
  }
}

function knownActOf(verb: Act["verb"], resolved: ReadonlyMap<string, Resolved>): KnownAct {
  const slots: Record<string, Known<unknown>> = {};
  for (const [slot, held] of resolved) {
    const value = slot in VERBS[verb].slots ? knownOf(held) : null;
    if (value !== null) slots[slot] = value;
  }
  return { verb, slots };
}

/** What the text is asked about: slots that stand in the row, and those the act cannot do without. */
function valuesOf(compiling: Compiling, act: Act, resolved: ReadonlyMap<string, Resolved>): DrillValue[] {
  const needed = neededSlots(act.verb, (slot) => {
    const held = resolved.get(slot);
    return held?.is === "said" ? held.value : undefined;
  });
  return slotsOf(act.verb).flatMap((slot) => {
    const held = resolved.get(slot);
    const kind = kindOfActSlot(act.verb, slot);
    if (kind === null || (held === undefined && !needed.includes(slot))) return [];
    return [drillValue(compiling, slot, kind, held ?? NOT_SAID)];
  });
}

/** A crux inside a hold applies wherever the hold is used: its slots are printed with the use. */
function heldByCrux(compiling: Compiling, act: Act): DrillValue[] {
  const chosen = act.verb === "hold" ? act.slots.hold : undefined;
  const hold = chosen?.is === "said" ? compiling.rows.find("holds", chosen.value) : undefined;
  if (!hold) return [];
  return (Object.entries(HOLD_SLOTS) as [keyof typeof HOLD_SLOTS, ValueKind][]).flatMap(([slot, kind]) => {
    const held = hold.slots[slot];
    if (held?.is !== "in crux") return [];
    const resolved = resolveSlot(compiling, { kind: "holds", id: hold.id, slot }, held);
    return [drillValue(compiling, `hold.${slot}`, kind, resolved)];
  });
}

/** So does a crux inside a movement. A movement that performs another is not looked into further. */
function movedByCrux(compiling: Compiling, act: Act): DrillValue[] {
  const chosen = act.verb === "perform" ? act.slots.movement : undefined;
  if (chosen?.is !== "said") return [];
  return compiling.rows
    .actionsOf(chosen.value)
    .filter(({ act: own }) => own.verb !== "perform")
    .flatMap((action) => compileAction(compiling, action, OWN)?.drill.values ?? [])
    .filter(({ crux }) => crux !== null)
    .map((value) => ({ ...value, slot: `movement.${value.slot}` }));
}

function resolvedAct(act: Act, resolved: ReadonlyMap<string, Resolved>): Act {
  const slots: Record<string, Slot<unknown>> = {};
  for (const [slot, held] of resolved) {
    const settled = slot in VERBS[act.verb].slots ? settledSlot(held) : undefined;
    if (settled) slots[slot] = settled;
  }
  return { verb: act.verb, slots } as Act;
}

/** What is left of a slot once readings are taken; undefined where nothing is said. */
function settledSlot(held: Resolved): Slot<unknown> | undefined {
  switch (held.is) {
    case "said":
      return { is: "said", value: held.value, warrant: held.warrant, basis: held.basis };
    case "not settled":
      return { is: "in crux", crux: held.crux };
    case "not applicable":
      return { is: "not applicable" };
    default:
      return undefined;
  }
}

/** What is known of a slot; null where the text is silent. Of several readings each that gives a value is possible. */
export function knownOf(held: Resolved | undefined): Known<unknown> | null {
  if (held?.is === "said") return known(held.value);
  if (held?.is !== "not settled") return null;
  const values = held.readings.flatMap(({ value }) => (value.is === "said" ? [value.value] : []));
  return values.length > 0 && values.length === held.readings.length ? oneOf(values) : UNKNOWN;
}

/** The acting hand where the act itself names left or right. */
export function knownHand(act: Act): HandKnown {
  const slot = handSlotOf(act.verb);
  const held = slot === null ? undefined : (act.slots as Record<string, Slot<unknown> | undefined>)[slot];
  return held?.is === "said" && (held.value === "left" || held.value === "right") ? held.value : null;
}

/** Whether the act is done to an object other than the one that has the sheet's column. */
export function isBesides({ rows }: Compiling, act: Act): boolean {
  const held = "object" in act.slots ? act.slots.object : undefined;
  if (held?.is !== "said") return false;
  const object = rows.find("objects", held.value);
  return object !== undefined && (object.is === "sheath" || object.is === "reins" || object.is === "other");
}

function weaker(origin: ActionOrigin, warrant: DrillAction["standing"]): DrillAction["standing"] {
  return origin.inheritedFrom !== null && warrant === "stated" ? "implied" : warrant;
}

function originRests(origin: ActionOrigin): string[] {
  if (origin.changed !== null) return [`changed for the day: ${origin.changed}`];
  return origin.inheritedFrom === null ? [] : [`holds throughout: ${origin.inheritedFrom}`];
}

/** An inherited value is implied at the place that inherits it; what is changed for the day is supplied. */
function asOriginated(value: DrillValue, origin: ActionOrigin): DrillValue {
  if (origin.changed !== null && (value.standing === "stated" || value.standing === "implied")) {
    return { ...value, standing: "supplied", rests: [...originRests(origin), ...value.rests] };
  }
  if (origin.inheritedFrom === null || value.standing !== "stated") return value;
  return { ...value, standing: "implied", rests: [...originRests(origin), ...value.rests] };
}

/** One entry a crux: what waits for it twice is done only where both hold. */
export function mergeOnlyUnder(conditions: readonly OnlyUnder[]): OnlyUnder[] {
  const merged = new Map<string, string[]>();
  for (const { crux, readings } of conditions) {
    const before = merged.get(crux);
    merged.set(crux, before ? before.filter((reading) => readings.includes(reading)) : [...readings]);
  }
  return [...merged].map(([crux, readings]) => ({ crux, readings })).sort((a, b) => (a.crux < b.crux ? -1 : 1));
}
