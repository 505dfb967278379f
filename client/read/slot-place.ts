/** client/read/slot-place.ts - a slot by its address: what kind of value it holds, what stands in it, and the edit that
 *  puts something there. Addresses are those of readings: slots of an act and its timing, purpose and threat by name. */
import { VERBS } from "../../schema/act.ts";
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import type { Slot, SlotAddress } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import {
  ACTION_SLOTS,
  ELEMENT_SLOTS,
  kindOfActSlot,
  kindOfSlot,
  STATION_SLOTS,
  slotLabel,
} from "../../shared/drill/slot-labels.ts";
import { drillElements } from "../state/passage.ts";
import { all, one } from "../state/rows.ts";
import { names, short } from "./row-names.ts";
import { type Fields, fieldsEdit } from "./store-fields.ts";

type Slots = Record<string, Slot<unknown> | undefined>;

export const sameAddress = (a: SlotAddress, b: SlotAddress) => a.kind === b.kind && a.id === b.id && a.slot === b.slot;
export const addressKey = ({ kind, id, slot }: SlotAddress) => `${kind} ${id} ${slot}`;

export function kindAt({ kind, id, slot }: SlotAddress): ValueKind | null {
  if (kind !== "actions") return kindOfSlot(kind, slot);
  const action = one("actions", id);
  return action === null ? null : kindOfActSlot(action.act.verb, slot);
}

/** What stands in the slot; undefined where it is missing (nobody has said anything of it). */
export function heldAt({ kind, id, slot }: SlotAddress): Slot<unknown> | undefined {
  const row = one(kind, id);
  return row === null ? undefined : slotsOfRow(kind, row)[slot];
}

/** Puts a value into the slot, or takes it out (null). */
export function slotEdit({ kind, id, slot }: SlotAddress, value: Slot<unknown> | null, base?: number): Edit {
  const row = one(kind, id);
  if (row === null) return fieldsEdit(kind, id, { [slot]: value } as Fields<typeof kind>, base);
  const inField =
    kind === "elements" || kind === "stations" || (kind === "actions" && Object.hasOwn(ACTION_SLOTS, slot));
  if (inField) return fieldsEdit(kind, id, { [slot]: value } as Fields<typeof kind>, base);
  const held: Slots = { ...slotsOfRow(kind, row) };
  if (kind === "actions") for (const name of Object.keys(ACTION_SLOTS)) delete held[name];
  if (value === null) delete held[slot];
  else held[slot] = value;
  const fields =
    kind === "actions" ? { act: { verb: (row as RecordOf<"actions">).act.verb, slots: held } } : { slots: held };
  return fieldsEdit(kind, id, fields as Fields<typeof kind>, base);
}

/** Every slot of a row that something stands in, by name. */
function slotsOfRow(kind: SlotAddress["kind"], row: RecordOf<Kind>): Slots {
  switch (kind) {
    case "actions": {
      const { act, timing, purpose, threat } = row as RecordOf<"actions">;
      return { ...(act.slots as Slots), timing, purpose, threat };
    }
    case "elements":
      return pick(row, ELEMENT_SLOTS);
    case "stations":
      return pick(row, STATION_SLOTS);
    default:
      return (row as { slots?: Slots }).slots ?? {};
  }
}

function pick(row: RecordOf<Kind>, table: Readonly<Record<string, ValueKind>>): Slots {
  return Object.fromEntries(Object.keys(table).map((name) => [name, (row as unknown as Slots)[name]]));
}

const SLOTTED: readonly SlotAddress["kind"][] = [
  "elements",
  "actions",
  "holds",
  "stations",
  "threats",
  "objects",
  "grounds",
];

/** The slots a crux holds, in the order of what they belong to. */
export function slotsHeldBy(crux: string): SlotAddress[] {
  return SLOTTED.flatMap((kind) =>
    all(kind).flatMap((row) =>
      Object.entries(slotsOfRow(kind, row)).flatMap(([slot, held]) =>
        held?.is === "in crux" && held.crux === crux ? [{ kind, id: row.id, slot }] : [],
      ),
    ),
  );
}

/** What the row of a slot is called in a sentence: "step 3, pass the spear to the left hand". */
export function ownerWords(kind: SlotAddress["kind"], id: string): string {
  if (kind === "actions") {
    const action = one("actions", id);
    if (action === null) return "an action";
    return `${ownerOfAction(action)}, ${short(wordsOfAction(action), 60)}`;
  }
  if (kind === "elements") return elementWords(id);
  return names.value(kind, id) ?? "something";
}

export function elementWords(id: string): string {
  const printed = drillElements.value.get(id);
  if (printed?.number) return `step ${printed.number}`;
  const element = one("elements", id);
  if (element === null) return "a step";
  const title = "title" in element ? element.title : "";
  return title ? `${element.is} “${title}”` : element.is === "step" ? "a step" : element.is;
}

/** The act as the drill has it now, what a crux holds settled where it is; else by its own slots. */
export function wordsOfAction({ id, act, owner }: RecordOf<"actions">): string {
  const printed = drillElements.value.get(owner)?.actions.find((action) => action.id === id);
  return printed?.text ?? actWords(act, names.value);
}

export function ownerOfAction({ ownerKind, owner }: RecordOf<"actions">): string {
  return ownerKind === "elements" ? elementWords(owner) : (names.value(ownerKind, owner) ?? "an instruction");
}

/** "step 3, pass the spear: to". */
export const placeWords = (address: SlotAddress) =>
  `${ownerWords(address.kind, address.id)}: ${slotLabel(address.slot)}`;

/** Names of the slots an action may have, in the order they are asked for. */
export function slotNamesOf(action: RecordOf<"actions">): string[] {
  return [...Object.keys(VERBS[action.act.verb].slots), ...Object.keys(ACTION_SLOTS)];
}
