/** client/read/begin-act.ts - an act begun under a heading: what need not be asked. The heading itself says which hand or
 *  which object acts, and so do the words it was chosen for; everything else put in here is a guess, and at most implied. */
import { type Act, VERBS, type Verb } from "../../schema/act.ts";
import type { DrillPart } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";
import { compileExercise } from "../../shared/drill/compile.ts";
import { handSlotOf } from "../../shared/drill/part-of.ts";
import { statesOf } from "../../shared/drill/state-after-each.ts";
import { reinHands } from "../../shared/hands/derived.ts";
import { exactly, mayBe } from "../../shared/hands/known.ts";
import type { Hand, Zone } from "../../shared/hands/state.ts";
import { exercise } from "../state/passage.ts";
import { all, one, ranked, rowsNow } from "../state/rows.ts";
import { columnObject } from "./part-name.ts";
import { entered, inherited } from "./support.ts";
import { actionsOf } from "./verbs.ts";

type Slots = Record<string, Slot<unknown> | undefined>;

export interface Place {
  /** Marks whose words the act is entered from; none when it rests on no words. */
  marks: readonly string[];
  /** What the act will belong to. */
  owner: string;
  /** The elements before it, nearest first; none for what stands in no order. */
  before: readonly string[];
}

export function beginAct(verb: Verb, part: DrillPart, { marks, owner, before }: Place): Act {
  const table: Readonly<Record<string, string>> = VERBS[verb].slots;
  const slots: Record<string, Slot<unknown>> = {};
  const hand = part === "left hand" ? "left" : part === "right hand" ? "right" : null;
  // Under the heading of a hand, passing is what this hand gives; which hand takes is still to be said.
  const handSlot = verb === "pass" ? "from" : handSlotOf(verb);
  if (hand !== null && handSlot !== null) slots[handSlot] = { is: "said", value: hand, ...entered(marks) };
  if (verb === "other") slots.who = { is: "said", value: part === "shaft" ? "object" : part, ...entered(marks) };
  else if (table.object === "object") {
    const object = objectFor(verb, part, hand, { owner, before });
    const support = object?.byHeading ? entered(marks) : inherited(marks);
    if (object !== null) slots.object = { is: "said", value: object.id, ...support };
  }
  const sheaths = all("objects").filter(({ is }) => is === "sheath");
  const [sheath] = sheaths;
  for (const slot of ["from", "into"]) {
    if (table[slot] === "object" && sheath && sheaths.length === 1)
      slots[slot] = { is: "said", value: sheath.id, ...inherited(marks) };
  }
  return { verb, slots } as Act;
}

/** `byHeading`: the heading names this object and can mean no other, so it is no guess. */
function objectFor(
  verb: Verb,
  part: DrillPart,
  hand: Hand | null,
  { owner, before }: Omit<Place, "marks">,
): { id: string; byHeading: boolean } | null {
  if (part === "shaft") {
    const own = columnObject();
    return own && { id: own.id, byHeading: carried().length === 1 };
  }
  const id = verb === "keep" ? hand && objectIn(hand, before) : (lastUsed([owner, ...before]) ?? theOnlyOne());
  return id === null ? null : { id, byHeading: false };
}

const carried = (): RecordOf<"objects">[] => ranked("objects").filter(({ is }) => is !== "sheath" && is !== "reins");

function theOnlyOne(): string | null {
  const [first, another] = carried();
  return first !== undefined && another === undefined ? first.id : null;
}

/** The object, no reins, of the last action of these owners (nearest first) that names one. */
function lastUsed(owners: readonly string[]): string | null {
  for (const owner of owners) {
    const named = actionsOf(owner).flatMap(({ act }) => {
      const held = (act.slots as Slots).object;
      const object = held?.is === "said" ? one("objects", String(held.value)) : null;
      return object !== null && object.is !== "reins" ? [object.id] : [];
    });
    const last = named.at(-1);
    if (last !== undefined) return last;
  }
  return null;
}

/** The one thing this hand surely has after what stands before, reins counted; null when it has nothing, several things,
 *  or it is not known. */
function objectIn(hand: Hand, before: readonly string[]): string | null {
  if (exercise.value === null || before.length === 0) return null;
  const followed = statesOf(compileExercise(rowsNow.value, exercise.value.id, {}));
  const after = new Map(followed.map((entry) => [entry.element, entry.state]));
  const state = before.map((element) => after.get(element)).find((found) => found !== undefined);
  if (state === undefined) return null;
  const held = state.objects.flatMap(({ object, grip }) =>
    mayBe<Zone | null>(grip[hand], null) ? [] : [object.id as string | null],
  );
  if (exactly(reinHands(state))?.includes(hand))
    held.push(ranked("objects").find(({ is }) => is === "reins")?.id ?? null);
  const [only, another] = held;
  return another === undefined ? (only ?? null) : null;
}
