/** shared/drill/resolve-slot.ts - what a slot holds under the readings taken, and how that is printed.
 *  May import: schema types and constants, siblings in shared/drill. What is not settled keeps all its readings: none is favoured.
 *  Where they all give the same value, that value is said, whichever of them is taken. */
import type { DrillValue } from "../../schema/drill.ts";
import { type Basis, type ReadingValue, type Slot, type SlotAddress, Warrant } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";
import { inKeyOrder } from "./canonical-json.ts";
import { citationsOfBasis, inTextOrder } from "./citations.ts";
import type { CruxBearing } from "./crux-bearing.ts";
import type { ExerciseRows, WorkRows } from "./exercise-rows.ts";
import type { OnlyUnder, Settlement } from "./settle.ts";
import { slotLabel } from "./slot-labels.ts";
import { type Names, valueWords } from "./words.ts";

/** What everything of one exercise is compiled with. */
export interface CompilingBase {
  rows: ExerciseRows;
  names: Names;
  settlement: Settlement;
  /** For counting, where nobody reads: words, citations and apparatus are left empty. */
  wordless?: boolean;
}

/** What everything below an element is compiled with. */
export interface Compiling extends CompilingBase {
  /** The element things are compiled for, since exceptions are made there; null outside any. */
  element: string | null;
  bearing: CruxBearing;
}

export type Resolved =
  | { is: "said"; value: unknown; warrant: Warrant; basis: Basis[]; crux: string | null; reading: string | null }
  | { is: "not said" | "not applicable" | "absent"; crux: string | null; reading: string | null }
  | {
      is: "not settled";
      crux: string;
      reading: null;
      readings: { reading: string; title: string; value: ReadingValue }[];
    };

export const NOT_SAID: Resolved = { is: "not said", crux: null, reading: null };

/** A missing slot is not said, and so is one whose crux does not arise. */
export function resolveSlot(compiling: Compiling, address: SlotAddress, slot: Slot<unknown> | undefined): Resolved {
  if (slot === undefined) return NOT_SAID;
  if (slot.is === "said") {
    const { is, value, warrant, basis } = slot;
    return { is, value, warrant, basis, crux: null, reading: null };
  }
  if (slot.is !== "in crux") return { is: slot.is, crux: null, reading: null };
  const { rows, settlement, element, bearing } = compiling;
  const { crux } = slot;
  if (settlement.arises(crux, element) === "no") return NOT_SAID;
  bearing.slot(crux, address);
  const taken = settlement.taken(crux, element);
  if (taken) return { ...valueAt(taken.reading.values, address), crux, reading: taken.reading.id };
  const readings = rows.readingsOf(crux).map((reading) => ({
    reading: reading.id,
    title: reading.title,
    value: valueAt(reading.values, address),
  }));
  const agreed = agreedValue(readings.map(({ value }) => value));
  if (agreed !== null) return { ...agreed, crux, reading: null };
  return { is: "not settled", crux, reading: null, readings };
}

/** The value that all readings give, with the weakest warrant among them and all they rest on; null where they differ or
 *  one of them says nothing. */
function agreedValue(values: readonly ReadingValue[]): Extract<ReadingValue, { is: "said" }> | null {
  const said = values.filter((value) => value.is === "said");
  const [first] = said;
  if (first === undefined || said.length < values.length) return null;
  const spelt = new Set(said.map(({ value }) => JSON.stringify(inKeyOrder(value))));
  if (spelt.size > 1) return null;
  const weakest = Math.max(...said.map(({ warrant }) => Warrant.options.indexOf(warrant)));
  const bases = new Map(said.flatMap(({ basis }) => basis).map((one) => [JSON.stringify(inKeyOrder(one)), one]));
  return { ...first, warrant: Warrant.options[weakest] ?? first.warrant, basis: [...bases.values()] };
}

/** What a reading gives to a slot; a slot it does not name is not said under it. */
export function valueAt(values: { at: SlotAddress; value: ReadingValue }[], address: SlotAddress): ReadingValue {
  const given = values.find(({ at }) => at.kind === address.kind && at.id === address.id && at.slot === address.slot);
  return given?.value ?? { is: "not said" };
}

/** The readings under which alone the thing that has this slot is there; null where it is there under all. */
export function onlyWherePresent(resolved: Resolved): OnlyUnder | null {
  if (resolved.is !== "not settled") return null;
  const present = resolved.readings.filter(({ value }) => value.is !== "absent").map(({ reading }) => reading);
  return present.length === resolved.readings.length ? null : { crux: resolved.crux, readings: present };
}

/** The words for use inside a sentence: "circle or figure of eight"; null where nothing is said. */
export function resolvedWords(resolved: Resolved, kind: ValueKind, names: Names): string | null {
  if (resolved.is === "said") return valueWords(kind, resolved.value as never, names);
  if (resolved.is !== "not settled") return null;
  const said = resolved.readings.flatMap(({ value }) =>
    value.is === "said" ? [valueWords(kind, value.value as never, names)] : [],
  );
  return said.length === 0 ? null : [...new Set(said)].join(" or ");
}

/** What a reading gives, in words. */
export function readingValueWords(value: ReadingValue, kind: ValueKind | null, names: Names): string {
  if (value.is === "absent") return "left out";
  if (value.is !== "said" || kind === null) return value.is === "said" ? "" : value.is;
  return valueWords(kind, value.value as never, names);
}

/** The slot as the drill prints it. */
export function drillValue(compiling: Compiling, slot: string, kind: ValueKind, resolved: Resolved): DrillValue {
  const { rows, names } = compiling;
  const label = slotLabel(slot.slice(slot.lastIndexOf(".") + 1));
  const { crux, reading } = resolved;
  if (compiling.wordless) return withoutWords(slot, label, resolved);
  if (resolved.is === "said") {
    return {
      slot,
      label,
      text: valueWords(kind, resolved.value as never, names),
      value: inKeyOrder(resolved.value) as DrillValue["value"],
      standing: resolved.warrant,
      crux,
      reading,
      rests: restsOf(rows, resolved.basis),
      citations: citationsOfBasis(rows, resolved.basis),
    };
  }
  if (resolved.is === "not settled") {
    const words = new Set(resolved.readings.map(({ value }) => readingValueWords(value, kind, names)));
    const bases = resolved.readings.flatMap(({ value }) => (value.is === "said" ? value.basis : []));
    return {
      slot,
      label,
      text: `not settled: ${[...words].join(" or ")}`,
      value: inKeyOrder(
        resolved.readings.map((one) => ({
          reading: one.reading,
          value: one.value.is === "said" ? one.value.value : null,
        })),
      ) as DrillValue["value"],
      standing: "not settled",
      crux,
      reading,
      rests: [],
      citations: inTextOrder(citationsOfBasis(rows, bases)),
    };
  }
  const standing = resolved.is === "not applicable" ? "not applicable" : "not said";
  return { slot, label, text: standing, value: null, standing, crux, reading, rests: [], citations: [] };
}

function withoutWords(slot: string, label: string, resolved: Resolved): DrillValue {
  const { crux, reading } = resolved;
  const nothing = { slot, label, text: "", value: null, crux, reading, rests: [], citations: [] };
  if (resolved.is === "said")
    return { ...nothing, value: resolved.value as DrillValue["value"], standing: resolved.warrant };
  return { ...nothing, standing: resolved.is === "absent" ? "not said" : resolved.is };
}

/** What a basis names besides words, in words: premises, pictures, parallels, trials, the editor. */
export function restsOf(rows: WorkRows, basis: readonly Basis[]): string[] {
  return basis.map((entry) => restWords(rows, entry)).filter((text) => text !== null);
}

/** Null for words: these are cited. */
function restWords(rows: WorkRows, entry: Basis): string | null {
  switch (entry.is) {
    case "words":
      return null;
    case "picture": {
      const region = rows.find("regions", entry.region);
      const picture = region && rows.find("pictures", region.picture);
      const part = region && region.label !== "" ? `: ${region.label}` : "";
      return `picture “${picture?.title ?? "no longer there"}”${part}`;
    }
    case "premise":
      return entry.text;
    case "parallel":
      return `parallel, ${[entry.where, entry.text].filter((part) => part !== "").join(": ")}`;
    case "trial":
      return `trial of ${rows.find("trials", entry.trial)?.on ?? "a day no longer known"}`;
    case "editor":
      return entry.note === "" ? "the editor" : `the editor: ${entry.note}`;
  }
}
