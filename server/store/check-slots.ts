/** server/store/check-slots.ts - a slot has one owner: itself, or the one crux it says it is in.
 *  May import: schema, siblings in server/store. Keeps rules S16 and S17 (server/store/RULES.md).
 *  Runs inside the transaction, after the rows were written. */
import type { Act } from "../../schema/act.ts";
import type { Reading } from "../../schema/crux.ts";
import type { Variant } from "../../schema/exercise.ts";
import { SlotAddress } from "../../schema/slot.ts";
import { VALUES } from "../../schema/values.ts";
import { mentioning } from "./mentions.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import type { Problem } from "./problem.ts";
import { rowName } from "./row-name.ts";
import { getRow, type StoredRow } from "./row-store.ts";
import { slotAt, slotsIn } from "./slot-kind.ts";

const ADDRESSED: readonly string[] = SlotAddress.shape.kind.options;

/** Checks the readings that were written, and those that address a row that was. */
export function checkSlots(store: Store, rows: readonly PlannedRow[]): Problem[] {
  const readings = new Map<string, { reading: Reading; where: string }>();
  for (const { kind, id, after, where } of rows) {
    if (after === null) continue;
    if (kind === "readings") readings.set(id, { reading: after as unknown as Reading, where });
    if (!ADDRESSED.includes(kind)) continue;
    for (const reading of mentioning(store, kind, id, "readings")) {
      if (readings.has(reading.value.id)) continue;
      readings.set(reading.value.id, {
        reading: reading.value as unknown as Reading,
        where: rowName("readings", reading.value),
      });
    }
  }
  const problems = [...readings.values()].flatMap(({ reading, where }) => checkReading(store, reading, where));
  return [...problems, ...rows.flatMap(checkUnaddressed)];
}

function checkReading(store: Store, reading: Reading, where: string): Problem[] {
  const seen = new Set<string>();
  return reading.values.flatMap(({ at, value }, index): Problem[] => {
    const here = `${where}.values[${index}]`;
    const key = `${at.kind} ${at.id} ${at.slot}`;
    if (seen.has(key)) {
      return [{ code: "value_invalid", where: `${here}.at`, sentence: "The reading gives this slot a value twice." }];
    }
    seen.add(key);
    // That the row is there is checked with all other references.
    const row = getRow(store, at.kind, at.id);
    if (row === null) return [];
    const slot = slotAt(at.kind, row.value, at);
    if (slot === null) return [unknownSlot(row, at.slot, `${here}.at.slot`)];
    if (slot.held?.is !== "in crux" || slot.held.crux !== reading.crux) {
      return [
        { code: "slot_not_in_crux", where: `${here}.at`, sentence: ownerSentence(store, row, at.slot, slot.held) },
      ];
    }
    if (value.is !== "said" || VALUES[slot.valueKind].safeParse(value.value).success) return [];
    const sentence = `Expected a value of the kind “${slot.valueKind}”, which “${at.slot}” of the ${rowName(at.kind, row.value)} holds; got ${JSON.stringify(value.value)}.`;
    return [{ code: "slot_value_wrong", where: `${here}.value.value`, sentence }];
  });
}

function unknownSlot(row: StoredRow, slot: string, where: string): Problem {
  const names = slotsIn(row.kind, row.value).map(({ name }) => name);
  const sentence = `The ${rowName(row.kind, row.value)} has no slot “${slot}”; it has ${names.join(", ") || "none"}. Name one of these.`;
  return { code: "slot_unknown", where, sentence };
}

function ownerSentence(store: Store, row: StoredRow, slot: string, held: { is: string; crux?: string } | undefined) {
  const what = `“${slot}” of the ${rowName(row.kind, row.value)}`;
  const other = held?.crux === undefined ? null : getRow(store, "cruxes", held.crux);
  if (other !== null) {
    return `${what} is held by another crux, the ${rowName("cruxes", other.value)}. A slot has one owner: take it out of that one first.`;
  }
  return `${what} is not held by this crux (it is ${held?.is ?? "not said"}). Put it into the crux in the same change, or take the value out of the reading.`;
}

/** No reading can address a slot of a kit or of an act in a variant, so none of these may be in a crux. */
function checkUnaddressed({ kind, after, where }: PlannedRow): Problem[] {
  if (after === null) return [];
  const sentence =
    "No reading can give this slot a value, so no crux can hold it. Say the value, or leave it not said.";
  const held =
    kind === "variants"
      ? (after as unknown as Variant).deltas.flatMap((delta, index) =>
          delta.is === "act instead" ? inCrux(delta.act, `deltas[${index}].act`) : [],
        )
      : slotsIn(kind, after)
          .filter((slot) => slot.name === "" && slot.held?.is === "in crux")
          .map(({ path }) => path);
  return held.map((path) => ({ code: "slot_not_in_crux", where: `${where}.${path}`, sentence }));
}

function inCrux({ slots }: Act, path: string): string[] {
  const held = Object.entries(slots as Record<string, { is: string } | undefined>);
  return held.filter(([, slot]) => slot?.is === "in crux").map(([name]) => `${path}.slots.${name}`);
}
