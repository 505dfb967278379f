/** shared/hands/on-reins.ts - which acts are done with the reins, and so mean nothing where there are none.
 *  May import: schema types, siblings in shared/hands. Keeps rule H10 (shared/hands/RULES.md). */
import type { Verb } from "../../schema/act.ts";
import { exactly } from "./known.ts";
import { type KnownAct, slotOf } from "./known-act.ts";

/** Verbs that only somebody with reins can do. */
const OF_REINS: ReadonlySet<Verb> = new Set(["change reins", "lay reins", "place rein hand"]);

/** `isReins`: of an object. */
export function needsReins(act: KnownAct, isReins: (object: string) => boolean): boolean {
  return OF_REINS.has(act.verb) || isOnReins(act, isReins);
}

/** Whether the object it names is reins. */
export function isOnReins(act: KnownAct, isReins: (object: string) => boolean): boolean {
  const named = slotOf(act, "object", "object");
  const object = named === null ? null : exactly(named);
  return object !== null && isReins(object);
}
