/** client/read/same-hand.ts - a hand cannot pass a thing to itself: what is refused in the form, with a sentence. */
import type { Act } from "../../schema/act.ts";
import type { Slot, SlotAddress } from "../../schema/slot.ts";
import { valueWords } from "../../shared/drill/words.ts";
import { one } from "../state/rows.ts";

/** Why the value cannot stand in this slot beside what the act says already; empty when it can. */
export function sameHand({ kind, id, slot }: SlotAddress, value: unknown): string {
  const act = kind === "actions" ? one("actions", id)?.act : undefined;
  return act === undefined ? "" : sameHandIn(act, slot, value);
}

/** The same, of an act at hand. */
export function sameHandIn(act: Act, slot: string, value: unknown): string {
  if (act.verb !== "pass" || (slot !== "from" && slot !== "to")) return "";
  const other = (act.slots as Record<string, Slot<unknown> | undefined>)[slot === "from" ? "to" : "from"];
  if (other?.is !== "said" || other.value !== value) return "";
  const hand = valueWords("hand", value as never, () => null);
  return `It is passed ${slot === "to" ? "from" : "to"} ${hand} already, and no hand passes a thing to itself. Choose another hand, or change the other end first.`;
}
