/** shared/drill/crux-notes.ts - the apparatus of a crux: the reading taken, and the others with their arguments.
 *  May import: schema types, siblings in shared/drill. */

import type { Crux, Reading } from "../../schema/crux.ts";
import type { DrillCrux } from "../../schema/drill.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";
import { citationsOf } from "./citations.ts";
import { type Compiling, readingValueWords, valueAt } from "./resolve-slot.ts";
import { decisionOn } from "./settle.ts";
import { kindOfActSlot, kindOfSlot, slotLabel } from "./slot-labels.ts";

/** Null for a crux that is gone or does not arise. */
export function cruxNote(compiling: Compiling, cruxId: string): DrillCrux | null {
  const { rows, settlement, element } = compiling;
  const crux = rows.cruxes.get(cruxId);
  if (!crux || settlement.arises(cruxId, element) === "no") return null;
  const taken = settlement.taken(cruxId, element);
  const readings = rows.readingsOf(cruxId);
  return {
    crux: crux.id,
    title: crux.title,
    is: crux.is,
    note: crux.note,
    taken: taken && {
      reading: taken.reading.id,
      title: taken.reading.title,
      because: taken.because,
      reason: taken.reason,
      condition: taken.condition,
    },
    others: readings.filter(({ id }) => id !== taken?.reading.id).map((reading) => other(compiling, crux, reading)),
    citations: citationsOf(rows, "cruxes", crux.id),
  };
}

function other(compiling: Compiling, crux: Crux, reading: Reading): DrillCrux["others"][number] {
  const slots = compiling.bearing.slotsOf(crux.id).map((address) => ({
    label: slotLabel(address.slot),
    text: readingValueWords(valueAt(reading.values, address), kindAt(compiling, address), compiling.names),
  }));
  return {
    reading: reading.id,
    title: reading.title,
    argument: reading.argument,
    holder: reading.holder,
    status: reading.status.is,
    ...decisionOn(reading),
    gives: [...slots, ...compiling.bearing.guardedBy(crux.id, reading.id)],
  };
}

function kindAt({ rows }: Compiling, { kind, id, slot }: SlotAddress): ValueKind | null {
  if (kind !== "actions") return kindOfSlot(kind, slot);
  const action = rows.find("actions", id);
  return action ? kindOfActSlot(action.act.verb, slot) : null;
}
