/** server/publish/papers/hand-once.ts - of acts of one step that do something with the same thing one after another, the first
 *  names the hand.
 *  May import: schema types. What the text itself says again, and what is not settled, is left as it is. */
import type { DrillAction, DrillValue } from "../../../schema/drill.ts";

/** The acts of one step in their order: "raise the spear, with the right hand", "the spear: upright". */
export function handOnce(actions: readonly DrillAction[]): DrillAction[] {
  return actions.map((action, index) => {
    const thing = valueAt(action, "object")?.value;
    const before = actions.slice(0, index).findLast((one) => valueAt(one, "object")?.value === thing);
    if (typeof thing !== "string" || before === undefined || !sameHand(before, action)) return action;
    return { ...action, values: action.values.filter(({ slot }) => slot !== "hand") };
  });
}

function sameHand(before: DrillAction, action: DrillAction): boolean {
  const [first, again] = [valueAt(before, "hand"), valueAt(action, "hand")];
  return (
    first !== undefined &&
    again !== undefined &&
    again.standing !== "stated" &&
    again.standing !== "not settled" &&
    again.crux === first.crux &&
    typeof again.value === "string" &&
    again.value === first.value &&
    // Under another reading the other act may not be done at all.
    JSON.stringify(before.onlyUnder) === JSON.stringify(action.onlyUnder)
  );
}

const valueAt = ({ values }: DrillAction, slot: string): DrillValue | undefined =>
  values.find((value) => value.slot === slot && value.standing !== "not said");
