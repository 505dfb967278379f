/** shared/drill/compile-element.ts - one element of the exercise as the drill prints it.
 *  May import: schema types, siblings in shared/drill. */
import type { DrillElement, DrillValue } from "../../schema/drill.ts";
import type { Action, Element, Variant } from "../../schema/exercise.ts";
import type { Slot } from "../../schema/slot.ts";
import { citationsOf, inTextOrder } from "./citations.ts";
import { type CompiledAction, compileAction, mergeOnlyUnder, OWN } from "./compile-action.ts";
import { newBearing } from "./crux-bearing.ts";
import { cruxNote } from "./crux-notes.ts";
import { type ElementWording, elementWords } from "./element-words.ts";
import {
  type Compiling,
  type CompilingBase,
  drillValue,
  onlyWherePresent,
  type Resolved,
  resolveSlot,
  restsOf,
} from "./resolve-slot.ts";
import type { OnlyUnder } from "./settle.ts";
import { ELEMENT_SLOTS } from "./slot-labels.ts";
import { type Inherited, roomFor } from "./standing-instructions.ts";

/** An element that is part of the drill, before its number is known. */
export interface PresentElement {
  element: Element;
  compiling: Compiling;
  onlyUnder: OnlyUnder[];
  slots: ReadonlyMap<keyof typeof ELEMENT_SLOTS, Resolved>;
}

/** Null when the element is no part of the drill. */
export function presentElement(base: CompilingBase, element: Element): PresentElement | null {
  const compiling: Compiling = { ...base, element: element.id, bearing: newBearing() };
  compiling.bearing.guard(element.guard, "this element", () => "is there");
  const verdict = compiling.settlement.judge(element.guard, element.id);
  if (verdict.truth === "no") return null;
  const slots = new Map<keyof typeof ELEMENT_SLOTS, Resolved>();
  for (const slot of Object.keys(ELEMENT_SLOTS) as (keyof typeof ELEMENT_SLOTS)[]) {
    const held = (element as Record<string, unknown>)[slot] as Slot<unknown> | undefined;
    if (held !== undefined) slots.set(slot, resolveSlot(compiling, { kind: "elements", id: element.id, slot }, held));
  }
  if ([...slots.values()].some((held) => held.is === "absent")) return null;
  const waits = [...slots.values()].map(onlyWherePresent).filter((only) => only !== null);
  return { element, compiling, onlyUnder: mergeOnlyUnder([...verdict.onlyUnder, ...waits]), slots };
}

export interface CompiledElement {
  drill: DrillElement;
  /** As they are done: by rank, inherited ones first. */
  actions: CompiledAction[];
}

export function compileElement(
  present: PresentElement,
  wording: ElementWording,
  inherited: readonly Inherited[],
  variant: Variant | null,
): CompiledElement {
  const { element, compiling, slots } = present;
  const { rows, wordless = false } = compiling;
  const actions = actionsOf(present, inherited, variant);
  const alone = isAlone(element, variant);
  const values = [...slots].flatMap(([slot, held]): DrillValue[] =>
    alone && slot === "threat" ? [] : [drillValue(compiling, slot, ELEMENT_SLOTS[slot], held)],
  );
  const own = wordless ? [] : citationsOf(rows, "elements", element.id, element.existence);
  const ofActions = actions.flatMap(({ drill }) =>
    drill.inherited ? [] : [...drill.citations, ...drill.values.flatMap((value) => value.citations)],
  );
  return {
    actions,
    drill: {
      id: element.id,
      is: element.is,
      number: wording.numbers.get(element.id) ?? null,
      title: "title" in element ? element.title : "",
      text: wordless ? "" : elementWords(wording, element),
      role: element.role,
      standing: element.existence.warrant,
      onlyUnder: present.onlyUnder,
      values,
      actions: actions.map(({ drill }) => drill),
      cruxes: wordless
        ? []
        : compiling.bearing
            .cruxes()
            .sort()
            .flatMap((crux) => cruxNote(compiling, crux) ?? []),
      rests: wordless ? [] : [...restsOf(rows, element.existence.basis), ...restsOf(rows, element.order?.basis ?? [])],
      citations: own.length > 0 ? own : inTextOrder(ofActions),
      note: element.note,
    },
  };
}

function actionsOf(
  { element, compiling }: PresentElement,
  inherited: readonly Inherited[],
  variant: Variant | null,
): CompiledAction[] {
  const { rows, settlement } = compiling;
  const alone = isAlone(element, variant);
  const done = rows
    .actionsOf(element.id)
    .map((action) => changedForTheDay(alone ? withoutThreat(action) : action, variant));
  const own = done.flatMap(({ action, reason }) => {
    const compiled = compileAction(compiling, action, { ...OWN, changed: reason });
    return compiled ? [{ action, compiled, onlyUnder: compiled.drill.onlyUnder }] : [];
  });
  if (element.is !== "step") return own.map(({ compiled }) => compiled);
  const readingsOf = (crux: string) => rows.readingsOf(crux).map(({ id }) => id);
  const fromStanding = inherited.flatMap(({ action, from, everywhere }) => {
    const room = roomFor(action, own, readingsOf);
    if (!room.fits || settlement.judge(action.guard, element.id).truth === "no") return [];
    const day = changedForTheDay(action, variant);
    if (everywhere !== null && day.reason === null && room.onlyUnder.length === 0) return everywhere;
    const origin = { inheritedFrom: from, changed: day.reason, onlyUnder: room.onlyUnder };
    return compileAction(compiling, day.action, origin) ?? [];
  });
  return [...fromStanding, ...own.map(({ compiled }) => compiled)];
}

/** Whether a version of the day has nobody stand against the rider here. */
function isAlone({ id }: Element, variant: Variant | null): boolean {
  return variant?.deltas.some((delta) => delta.is === "no opponent" && delta.element === id) ?? false;
}

function withoutThreat({ threat: _nobody, ...action }: Action): Action {
  return action;
}

/** The action with the act that a version of the day puts in the place of the text's. */
function changedForTheDay(action: Action, variant: Variant | null): { action: Action; reason: string | null } {
  const delta = variant?.deltas.find((entry) => entry.is === "act instead" && entry.action === action.id);
  if (delta?.is !== "act instead") return { action, reason: null };
  return { action: { ...action, act: delta.act }, reason: delta.reason };
}
