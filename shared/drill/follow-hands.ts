/** shared/drill/follow-hands.ts - the control state after each element of a drill, and the hands that act, told by it.
 *  May import: schema types, shared/hands, siblings in shared/drill. Keeps rule H9 (shared/hands/RULES.md). What is done only
 *  under some readings may have been done or not; what is not written out leaves nothing known. */
import type { Element } from "../../schema/exercise.ts";
import { type ActContext, actingHands, applyAct, type HandsBefore } from "../hands/apply.ts";
import { knownHold } from "../hands/apply-hold.ts";
import { exactly, UNKNOWN } from "../hands/known.ts";
import type { KnownAct } from "../hands/known-act.ts";
import { afterUntreated, type ControlState, eitherState } from "../hands/state.ts";
import { compareRanked } from "../rank.ts";
import { type CompiledAction, compileAction, knownOf, OWN } from "./compile-action.ts";
import type { CompiledElement } from "./compile-element.ts";
import { newBearing } from "./crux-bearing.ts";
import { columnOf, standsWithHand } from "./part-of.ts";
import { type Compiling, resolveSlot } from "./resolve-slot.ts";

export interface FollowedElement {
  compiled: CompiledElement;
  after: ControlState;
}

/** `begins`: the state before the first of them. */
export function followHands(
  whole: Compiling,
  elements: readonly CompiledElement[],
  begins: ControlState,
): FollowedElement[] {
  let state = begins;
  return elements.map((element) => {
    const compiling: Compiling = { ...whole, element: element.drill.id, bearing: newBearing() };
    const context = contextOf(compiling);
    const row = whole.rows.find("elements", element.drill.id);
    const acted = row?.is === "untreated" ? null : doneAgain(compiling, row, element.actions);
    const done = acted === null ? null : act(state, inOrder(acted), context);
    const after = done?.state ?? afterUntreated(state);
    state = element.drill.onlyUnder.length > 0 ? eitherState(state, after) : after;
    return { compiled: withParts(element, done?.parts ?? new Map()), after: state };
  });
}

type Parts = ReadonlyMap<string, "left" | "right">;

/** Runs actions one after another and notes the hand of each, where there is exactly one. */
function act(start: ControlState, actions: readonly CompiledAction[], context: ActContext) {
  let [state, before]: [ControlState, HandsBefore] = [start, UNKNOWN];
  const parts = new Map<string, "left" | "right">();
  for (const { known, drill } of actions) {
    const hands = actingHands(state, known, before);
    const [hand, another] = (hands && exactly(hands)) ?? [];
    if (hand !== undefined && another === undefined) parts.set(drill.id, hand);
    const after = applyAct(state, known, context, before);
    state = drill.onlyUnder.length > 0 ? eitherState(state, after) : after;
    if (hands !== null) before = hands;
  }
  return { state, parts };
}

/** Those before the step first, those after it last; otherwise by rank, as they stand. */
export function inOrder(actions: readonly CompiledAction[]): CompiledAction[] {
  const when = ({ timing }: CompiledAction): number => {
    const is = timing === null ? null : exactly(timing)?.is;
    return is === "before" ? 0 : is === "after" ? 2 : 1;
  };
  return [0, 1, 2].flatMap((turn) => actions.filter((action) => when(action) === turn));
}

/** An action whose hand is told only by the state moves to the column of that hand. */
function withParts(element: CompiledElement, parts: Parts): CompiledElement {
  const actions = element.actions.map((action) => {
    const hand = parts.get(action.drill.id);
    if (hand === undefined || !standsWithHand(action.known.verb, action.besides)) return action;
    return { ...action, drill: { ...action.drill, part: columnOf(hand) } };
  });
  return { actions, drill: { ...element.drill, actions: actions.map(({ drill }) => drill) } };
}

/** What an element does: its own actions; for an again also what it does again, once, with its exceptions. Null where
 *  that cannot be told here (mirrored, another exercise, a part that is itself done again or not written out). */
function doneAgain(
  compiling: Compiling,
  element: Element | undefined,
  own: readonly CompiledAction[],
): readonly CompiledAction[] | null {
  if (element?.is !== "again") return own;
  const owners = element.manner === "as it is" ? ownersOf(compiling, element) : null;
  if (owners === null || element.except.some(({ is }) => is === "words")) return null;
  const left = new Set(element.except.flatMap((entry) => (entry.is === "words" ? [] : [entry.action])));
  const instead = new Map(
    element.except.flatMap((entry) => (entry.is === "instead" ? [[entry.action, entry.by]] : [])),
  );
  const replacing = new Set(instead.values());
  const again = owners
    .flatMap((owner) => compiling.rows.actionsOf(owner))
    .flatMap((action) => {
      const by = instead.get(action.id);
      if (by !== undefined) return own.filter(({ drill }) => drill.id === by);
      return left.has(action.id) ? [] : (compileAction(compiling, action, OWN) ?? []);
    });
  return [...again, ...own.filter(({ drill }) => !replacing.has(drill.id))];
}

function ownersOf({ rows }: Compiling, { of }: Extract<Element, { is: "again" }>): string[] | null {
  if (of.is === "exercise") return null;
  if (of.is === "movement") return rows.find("movements", of.movement) ? [of.movement] : null;
  const first = rows.find("elements", of.from);
  const list = rows
    .all("elements")
    .filter(({ exercise }) => exercise === first?.exercise)
    .sort(compareRanked);
  const [from, to] = [of.from, of.to].map((id) => list.findIndex((element) => element.id === id));
  if (from === undefined || to === undefined || from === -1 || to < from) return null;
  const range = list.slice(from, to + 1).filter(({ is }) => is !== "advice");
  return range.every(({ is }) => is === "step") ? range.map(({ id }) => id) : null;
}

/** Holds and movements as the readings at this element have them. */
export function contextOf(compiling: Compiling): ActContext {
  const { rows } = compiling;
  return {
    hold: (id) => {
      const hold = rows.find("holds", id);
      if (!hold) return null;
      return knownHold(hold, (slot) => {
        const held = (hold.slots as Record<string, Parameters<typeof resolveSlot>[2]>)[slot];
        return knownOf(resolveSlot(compiling, { kind: "holds", id, slot }, held));
      });
    },
    movement: (id) => {
      if (!rows.find("movements", id)) return null;
      const actions = rows.actionsOf(id).flatMap((action) => compileAction(compiling, action, OWN) ?? []);
      return inOrder(actions).map(({ known }): KnownAct => known);
    },
    isReins: (id) => rows.find("objects", id)?.is === "reins",
  };
}
