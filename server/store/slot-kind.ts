/** server/store/slot-kind.ts - the slots a row has: their names, the kind of value each holds, and what stands in them.
 *  May import: schema, siblings in server/store. Keeps rule S16 (server/store/RULES.md). Pure. */
import type { Act } from "../../schema/act.ts";
import { VERBS } from "../../schema/act.ts";
import type { Kind } from "../../schema/record.ts";
import { GROUND_SLOTS, HOLD_SLOTS, OBJECT_SLOTS, THREAT_SLOTS } from "../../schema/riding.ts";
import type { Slot, SlotAddress, SlotTable } from "../../schema/slot.ts";
import { HORSE_SLOTS, RIDER_SLOTS } from "../../schema/teaching.ts";
import type { ValueKind } from "../../schema/values.ts";
import { formOf, type RowValue } from "./field-table.ts";

export interface SlotInRow {
  /** Its name, as a reading addresses it; "" for a slot that no address can name (a kit's, which no crux may hold). */
  name: string;
  valueKind: ValueKind;
  /** What stands there; undefined where the slot is missing, which means not said. */
  held: Slot<unknown> | undefined;
  /** Where in the row: "act.slots.figure". */
  path: string;
}

/** Slots that are fields of their own. */
const FIELD_SLOTS: { [K in Kind]?: SlotTable } = {
  actions: { timing: "timing", purpose: "purpose", threat: "threat" },
  elements: { threat: "threat", cue: "words", times: "count" },
  stations: { outline: "outline" },
};

/** Slots gathered in a field `slots`. */
const SLOT_LISTS: { [K in Kind]?: SlotTable } = {
  holds: HOLD_SLOTS,
  threats: THREAT_SLOTS,
  objects: OBJECT_SLOTS,
  grounds: GROUND_SLOTS,
};

/** All slots of a row, those not said too. Kinds without slots give none. */
export function slotsIn(kind: Kind, value: RowValue): SlotInRow[] {
  const found: SlotInRow[] = [];
  const addList = (table: SlotTable, held: unknown, path: string, addressed = true): void => {
    for (const [name, valueKind] of Object.entries(table)) {
      const slot = (held as Record<string, Slot<unknown> | undefined>)[name];
      found.push({ name: addressed ? name : "", valueKind, held: slot, path: `${path}${name}` });
    }
  };
  const fields = formOf(kind, value)?.fields;
  const own = Object.entries(FIELD_SLOTS[kind] ?? {}).filter(([name]) => fields?.has(name));
  addList(Object.fromEntries(own), value, "");
  if (kind === "actions") {
    const act = value.act as Act;
    addList(VERBS[act.verb].slots, act.slots, "act.slots.");
  }
  const list = SLOT_LISTS[kind];
  if (list !== undefined) addList(list, value.slots, "slots.");
  if (kind === "kits") {
    addList(HORSE_SLOTS, (value.horse as { slots: unknown }).slots, "horse.slots.", false);
    addList(RIDER_SLOTS, (value.rider as { slots: unknown }).slots, "rider.slots.", false);
  }
  return found;
}

/** The kind of value the slot of that name holds in the row, or null when the row has no such slot. A name that is both
 *  a field and a slot of the verb means the verb's. */
export function slotKindAt(kind: Kind, value: RowValue, slot: string): ValueKind | null {
  return slotAt(kind, value, { slot })?.valueKind ?? null;
}

/** The slot an address names in its row, or null when the row has no such slot. */
export function slotAt(kind: Kind, value: RowValue, { slot }: Pick<SlotAddress, "slot">): SlotInRow | null {
  return slotsIn(kind, value).findLast(({ name }) => name === slot) ?? null;
}
