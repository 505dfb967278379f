/** shared/ride/threats-of.ts - the opponents a stage assumes, from the threats its element and its acts name.
 *  May import: schema types, shared/drill, shared/hands, siblings in shared/ride. */
import type { DrillValue } from "../../schema/drill.ts";
import type { Threat } from "../../schema/riding.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { resolveSlot } from "../drill/resolve-slot.ts";
import { exactly } from "../hands/known.ts";
import { sideOf } from "../hands/roles.ts";
import { mirrorHour, swapped } from "./mirror-act.ts";
import type { PlannedStage } from "./planned.ts";
import type { RiddenStage, RiddenThreat } from "./ridden.ts";

/** Each once a stage, over the whole of it. */
export function threatsOf(plan: PlannedStage, index: number, stage: RiddenStage): RiddenThreat[] {
  return [...threatsNamed(plan)].flatMap((id) => {
    const row = plan.compiling.rows.find("threats", id);
    if (!row) return [];
    const said = <T>(slot: keyof Threat["slots"]): T | null => {
      const held = resolveSlot(plan.compiling, { kind: "threats", id, slot } as SlotAddress, row.slots[slot]);
      return held.is === "said" ? (held.value as T) : null;
    };
    const bearing = said<ValueOf<"bearing">>("bearing");
    const hour = bearing?.is === "clock" ? bearing.hour : null;
    const side = said<ValueOf<"side">>("weaponSide");
    const weapon = side === null ? null : exactly(sideOf(side.to, stage.before));
    return [
      {
        threat: id,
        name: row.name,
        stage: index,
        from: stage.from,
        to: stage.to,
        mount: said<ValueOf<"mount">>("mount"),
        hour: hour === null || !plan.mirrored ? hour : mirrorHour(hour),
        weaponSide: weapon === null || !plan.mirrored ? weapon : swapped(weapon),
      },
    ];
  });
}

/** Ids of the threats that the element and its acts name. */
export function threatsNamed({ values, acts }: PlannedStage): Set<string> {
  const named = new Set<string>();
  for (const value of values) addThreat(named, value);
  for (const { drill } of acts) for (const value of drill.values) addThreat(named, value);
  return named;
}

function addThreat(named: Set<string>, { slot, value }: DrillValue): void {
  if (slot === "threat" && typeof value === "string") named.add(value);
}
