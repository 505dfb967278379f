/** shared/drill/crux-bearing.ts - which cruxes bear on one element, and what each reading of them gives there.
 *  May import: schema types. Filled while the element is compiled; read when its apparatus is written. */
import type { Guard } from "../../schema/guard.ts";
import type { SlotAddress } from "../../schema/slot.ts";

export interface CruxBearing {
  /** Notes that a slot is held by the crux. */
  slot: (crux: string, address: SlotAddress) => void;
  /** Notes that something is there only under some readings; the words for it are asked for only then. */
  guard: (guard: Guard, label: string, text: () => string) => void;
  cruxes: () => string[];
  slotsOf: (crux: string) => SlotAddress[];
  /** What is guarded by this reading of the crux. */
  guardedBy: (crux: string, reading: string) => { label: string; text: string }[];
}

export function newBearing(): CruxBearing {
  const slots = new Map<string, Map<string, SlotAddress>>();
  const guards = new Map<string, { readings: readonly string[]; label: string; text: string }[]>();
  return {
    slot: (crux, address) => {
      const known = slots.get(crux) ?? new Map<string, SlotAddress>();
      known.set(`${address.kind} ${address.id} ${address.slot}`, address);
      slots.set(crux, known);
    },
    guard: (guard, label, text) => {
      for (const condition of guard) {
        if (condition.is !== "reading") continue;
        const known = guards.get(condition.crux) ?? [];
        guards.set(condition.crux, [...known, { readings: condition.readings, label, text: text() }]);
      }
    },
    cruxes: () => [...new Set([...slots.keys(), ...guards.keys()])],
    slotsOf: (crux) => [...(slots.get(crux)?.values() ?? [])],
    guardedBy: (crux, reading) =>
      (guards.get(crux) ?? [])
        .filter(({ readings }) => readings.includes(reading))
        .map(({ label, text }) => ({ label, text })),
  };
}
