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

interface Guarded {
  readings: readonly string[];
  label: string;
  text: string;
}

/** Most elements bear no crux, so nothing is made before there is something to keep. */
class Bearing implements CruxBearing {
  #slots: Map<string, Map<string, SlotAddress>> | null = null;
  #guards: Map<string, Guarded[]> | null = null;

  slot(crux: string, address: SlotAddress): void {
    this.#slots ??= new Map();
    const known = this.#slots.get(crux) ?? new Map<string, SlotAddress>();
    known.set(`${address.kind} ${address.id} ${address.slot}`, address);
    this.#slots.set(crux, known);
  }

  guard(guard: Guard, label: string, text: () => string): void {
    for (const condition of guard) {
      if (condition.is !== "reading") continue;
      this.#guards ??= new Map();
      const known = this.#guards.get(condition.crux) ?? [];
      this.#guards.set(condition.crux, [...known, { readings: condition.readings, label, text: text() }]);
    }
  }

  cruxes(): string[] {
    return [...new Set([...(this.#slots?.keys() ?? []), ...(this.#guards?.keys() ?? [])])];
  }

  slotsOf(crux: string): SlotAddress[] {
    return [...(this.#slots?.get(crux)?.values() ?? [])];
  }

  guardedBy(crux: string, reading: string): { label: string; text: string }[] {
    const guarded = this.#guards?.get(crux) ?? [];
    return guarded.filter(({ readings }) => readings.includes(reading)).map(({ label, text }) => ({ label, text }));
  }
}

export function newBearing(): CruxBearing {
  return new Bearing();
}
