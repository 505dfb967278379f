/** shared/hands/known-act.ts - an act with its slots as what is known of them.
 *  May import: schema types and constants, siblings in shared/hands. Silence is kept apart from what is unknown: what a
 *  standing thing does not mention stays, what an action needs and does not mention is unknown. */
import { type Act, VERBS, type Verb } from "../../schema/act.ts";
import type { Known, Slot } from "../../schema/slot.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import { known, UNKNOWN } from "./known.ts";

export interface KnownAct {
  verb: Verb;
  /** A slot that is missing here is one the text is silent about. */
  slots: Readonly<Record<string, Known<unknown>>>;
}

/** The act by its own slots; what a crux holds is unknown unless `valuesIn` tells what its readings give. */
export function knownAct(act: Act, valuesIn: (slot: string) => Known<unknown> | null = () => null): KnownAct {
  const slots: Record<string, Known<unknown>> = {};
  for (const [name, slot] of Object.entries(act.slots as Record<string, Slot<unknown> | undefined>)) {
    if (slot?.is === "said") slots[name] = known(slot.value);
    if (slot?.is === "in crux") slots[name] = valuesIn(name) ?? UNKNOWN;
  }
  return { verb: act.verb, slots };
}

/** What is known of a slot; null where the text is silent about it, or the verb has no such slot. */
export function slotOf<K extends ValueKind>(act: KnownAct, slot: string, kind: K): Known<ValueOf<K>> | null {
  const table: Readonly<Record<string, ValueKind>> = VERBS[act.verb].slots;
  if (table[slot] !== kind) return null;
  return (act.slots[slot] as Known<ValueOf<K>> | undefined) ?? null;
}

/** The act with a slot filled in where it is silent. */
export function filledIn(act: KnownAct, slot: string, value: Known<unknown> | undefined): KnownAct {
  const table: Readonly<Record<string, ValueKind>> = VERBS[act.verb].slots;
  if (value === undefined || act.slots[slot] !== undefined || table[slot] === undefined) return act;
  return { ...act, slots: { ...act.slots, [slot]: value } };
}
