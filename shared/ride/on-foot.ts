/** shared/ride/on-foot.ts - what the acts of the text are to somebody on foot: he goes at a walk or stands.
 *  May import: schema types, shared/hands. Keeps rules R19 and R39 (shared/ride/RULES.md). */
import type { ValueOf } from "../../schema/values.ts";
import { mapKnown } from "../hands/known.ts";
import { type KnownAct, slotOf } from "../hands/known-act.ts";

/** A gait, however it is called, is his walk; it has no lead and no pace of its own. Every other act is what it is. */
export function asOnFoot(act: KnownAct): KnownAct {
  if (act.verb !== "go at") return act;
  const { lead: _lead, pace: _pace, ...slots } = act.slots;
  const gait = slotOf(act, "gait", "gait");
  if (gait === null) return { ...act, slots };
  const own = mapKnown(gait, (called): ValueOf<"gait"> => (called === "halt" ? "halt" : "walk"));
  return { ...act, slots: { ...slots, gait: own } };
}
