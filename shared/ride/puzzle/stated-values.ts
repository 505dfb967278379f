/** shared/ride/puzzle/stated-values.ts - values the words state, which a search for clashes may take as not said.
 *  May import: schema types, shared/hands, shared/ride, siblings. Keeps rule P9 (shared/ride/puzzle/RULES.md).
 *  Dropping a value only ever adds ways to go on: the stage is also ridden as it is said. */
import { UNKNOWN } from "../../hands/known.ts";
import { isGait, isRide } from "../horse-order.ts";
import type { RiddenAct } from "../ride-context.ts";
import { type StagePlan, type Surroundings, stagePlanOf } from "./stage-plan.ts";

/** Without its figure an act of riding is nothing; without its object or movement nobody knows what is done. */
const KEPT: ReadonlySet<string> = new Set(["figure", "object", "movement", "words", "how", "purpose", "threat"]);

/** Slots whose value, once it is not known, may be any other and the stated one too. */
const OPENED: ReadonlySet<string> = new Set([
  "hand",
  "zone",
  "palm",
  "bearing",
  "level",
  "edge",
  "contact",
  "from",
  "to",
]);

/** The name of a stated value: the action and its slot. */
export const statedId = (action: string, slot: string): string => `${action} ${slot}`;

export function actionAndSlot(stated: string): { action: string; slot: string } {
  const [action = "", slot = ""] = stated.split(" ");
  return { action, slot };
}

/** Those of the stage that can be dropped. */
export function statedIn({ plan }: StagePlan): string[] {
  const ids = plan.acts.flatMap(({ id, known, timing, drill }) =>
    drill.values
      .filter(({ standing, slot }) => standing === "stated" && !KEPT.has(slot))
      .filter(({ slot }) => (slot === "timing" ? timing !== null : known.slots[slot] !== undefined))
      .map(({ slot }) => statedId(id, slot)),
  );
  return [...new Set(ids)];
}

/** The stage as it is said, and as it may be when one of these is not said, each by itself: so that to drop more never takes
 *  a way away. */
export function withoutStated(stage: StagePlan, dropped: ReadonlySet<string>, around: Surroundings): StagePlan[] {
  const here = statedIn(stage).filter((id) => dropped.has(id));
  const ways = here.map((id) => {
    const acts = stage.plan.acts.map((act) => withoutSlot(act, id));
    return stagePlanOf({ ...stage.plan, acts }, stage.ground, around);
  });
  return [stage, ...ways];
}

/** What can be opened is not known from then on; the rest is as if nothing had been said. */
function withoutSlot(act: RiddenAct, stated: string): RiddenAct {
  const { action, slot } = actionAndSlot(stated);
  if (action !== act.id) return act;
  if (slot === "timing") return { ...act, timing: null };
  const slots = { ...act.known.slots };
  if (OPENED.has(slot) && !isRide(act) && !isGait(act)) slots[slot] = UNKNOWN;
  else delete slots[slot];
  return { ...act, known: { ...act.known, slots } };
}
