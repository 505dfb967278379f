/** shared/ride/puzzle/stated-values.ts - values the words state, which a search for clashes may take as not said.
 *  May import: schema types, shared/hands, shared/ride, siblings. Keeps rule P9 (shared/ride/puzzle/RULES.md).
 *  Dropping a value only ever adds ways to go on: the stage is also ridden as it is said. */
import { UNKNOWN } from "../../hands/known.ts";
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

/** The stage as it is said, and as it may be when these are not said: what is only opened is opened in all of them, of the
 *  rest no more than one is left out at once. */
export function withoutStated(stage: StagePlan, dropped: ReadonlySet<string>, around: Surroundings): StagePlan[] {
  const here = statedIn(stage).filter((id) => dropped.has(id));
  if (here.length === 0) return [stage];
  const isOpened = (id: string): boolean => {
    const { action, slot } = actionAndSlot(id);
    const verb = stage.plan.acts.find((act) => act.id === action)?.known.verb;
    return OPENED.has(slot) && verb !== "ride" && verb !== "go at";
  };
  const opened = here.filter(isOpened);
  const left = here.filter((id) => !isOpened(id));
  const sets = [...(opened.length > 0 ? [[]] : []), ...left.map((one) => [one])];
  const ways = sets.map((set) => {
    const without = new Set([...opened, ...set]);
    const acts = stage.plan.acts.map((act) => withoutSlots(act, without));
    return stagePlanOf({ ...stage.plan, acts }, stage.ground, around);
  });
  return [stage, ...ways];
}

function withoutSlots(act: RiddenAct, dropped: ReadonlySet<string>): RiddenAct {
  const slots = { ...act.known.slots };
  let { timing } = act;
  for (const id of dropped) {
    const { action, slot } = actionAndSlot(id);
    if (action !== act.id) continue;
    if (slot === "timing") timing = null;
    else if (act.known.verb === "ride" || act.known.verb === "go at" || !OPENED.has(slot)) delete slots[slot];
    else slots[slot] = UNKNOWN;
  }
  return { ...act, timing, known: { ...act.known, slots } };
}
