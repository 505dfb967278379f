/** server/publish/tei/features.ts - slots, supports and conditions as TEI features, each with its warrant and its words.
 *  May import: schema types, shared/drill, siblings. Keeps rules X8-X9 (server/publish/tei/RULES.md). */
import type { Guard, ReadingCondition } from "../../../schema/guard.ts";
import type { Basis, Slot, Support, Warrant } from "../../../schema/slot.ts";
import type { ValueKind } from "../../../schema/values.ts";
import { restsOf } from "../../../shared/drill/resolve-slot.ts";
import { valueWords } from "../../../shared/drill/words.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { pointer, pointers } from "./pointers.ts";

/** What a feature points at with `ana`. */
const INTERPRETATIONS = {
  stated: "The words say it.",
  implied: "The words imply it, or it is inherited.",
  supplied: "The editor supplies it.",
  "not-said": "The text does not say.",
  "not-applicable": "There is nothing it could say here.",
  "not-settled": "Readings of a crux give it different values.",
} as const;

export function interpretations(): Markup {
  return inLines(
    "interpGrp",
    { type: "warrant" },
    Object.entries(INTERPRETATIONS).map(([name, says]) => element("interp", { "xml:id": name }, says)),
  );
}

export const warrantPointer = (warrant: Warrant): string => `#${warrant}`;

/** A feature of words; nothing where there are none. */
export function words(name: string, text: string): Markup | null {
  return text === "" ? null : element("f", { name }, element("string", {}, text));
}

/** A feature that only points at another part; nothing where that is not there. */
export function link(name: string, to: string | null): Markup | null {
  return to === null ? null : element("f", { name, corresp: pointer(to) });
}

/** Several strings under one name. */
export function list(name: string, texts: readonly string[]): Markup | null {
  const [first, ...more] = texts;
  if (first === undefined) return null;
  if (more.length === 0) return words(name, first);
  return element(
    "f",
    { name },
    element(
      "vColl",
      { org: "list" },
      texts.map((text) => element("string", {}, text)),
    ),
  );
}

/** Slots by the kind of each, in the order of the table; one that is missing says nothing and is left out. */
export function slotFeatures(
  edition: Edition,
  slots: Readonly<Record<string, Slot<unknown> | undefined>>,
  kinds: readonly (readonly [slot: string, kind: ValueKind])[],
): Markup[] {
  return kinds.flatMap(([name, kind]) => {
    const slot = slots[name];
    return slot === undefined ? [] : [slotFeature(edition, name, kind, slot)];
  });
}

function slotFeature(edition: Edition, name: string, kind: ValueKind, slot: Slot<unknown>): Markup {
  if (slot.is === "in crux") {
    const crux = edition.named.name("cruxes", slot.crux);
    return element("f", { name, ana: "#not-settled", corresp: pointers(crux === null ? [] : [crux]) });
  }
  if (slot.is !== "said") return element("f", { name, ana: slot.is === "not said" ? "#not-said" : "#not-applicable" });
  const text = valueWords(kind, slot.value as never, edition.names);
  const at = [...thingsIn(edition, kind, slot.value), ...spansOf(edition, slot.basis)];
  return element("f", { name, ana: warrantPointer(slot.warrant), corresp: pointers(at) }, element("string", {}, text));
}

/** Rows that a value names. */
function thingsIn({ named }: Edition, kind: ValueKind, value: unknown): string[] {
  const tables = { object: "objects", hold: "holds", movement: "movements", threat: "threats" } as const;
  if (typeof value === "string") {
    const table = tables[kind as keyof typeof tables];
    return table === undefined ? [] : (present(named.name(table, value)) ?? []);
  }
  const station = (value as { station?: unknown } | null)?.station;
  const action = (value as { action?: unknown } | null)?.action;
  return [
    ...(typeof station === "string" ? (present(named.name("stations", station)) ?? []) : []),
    ...(typeof action === "string" ? (present(named.name("actions", action)) ?? []) : []),
  ];
}

const present = (name: string | null): string[] | null => (name === null ? null : [name]);

/** The spans and zones that a basis names. */
export function spansOf({ rows, named }: Edition, basis: readonly Basis[]): string[] {
  return basis.flatMap((entry) => {
    if (entry.is === "picture") return present(named.name("regions", entry.region)) ?? [];
    if (entry.is === "parallel" && entry.source !== undefined)
      return present(named.name("sources", entry.source)) ?? [];
    if (entry.is !== "words") return [];
    return rows.anchorsOf(entry.mark).flatMap(({ id }) => present(named.name("anchors", id)) ?? []);
  });
}

/** Warrant and words behind, as attributes of what is supported. */
export function supported(edition: Edition, { warrant, basis }: Support) {
  return { ana: warrantPointer(warrant), corresp: pointers([...new Set(spansOf(edition, basis))]) };
}

/** What it rests on besides words. */
export function rests(edition: Edition, name: string, basis: readonly Basis[]): Markup | null {
  return list(name, restsOf(edition.rows, basis));
}

/** Under which readings, or in which way, alone it is there. */
export function guardFeatures(edition: Edition, guard: Guard): Markup[] {
  return guard.map((condition) => {
    if (condition.is === "way") return words("way", condition.way) as Markup;
    if (condition.is === "variant") {
      const titles = condition.variants.map((id) => edition.names("variants", id) ?? id);
      return words("variant", titles.join(" or ")) as Markup;
    }
    const corresp = pointers(conditionPointers(edition, [condition]));
    return element("f", { name: "onlyUnder", corresp }, element("string", {}, conditionWords(edition, condition)));
  });
}

export function conditionPointers({ named }: Edition, conditions: readonly ReadingCondition[]): string[] {
  return conditions.flatMap(({ crux, readings }) =>
    [named.name("cruxes", crux), ...readings.map((id) => named.name("readings", id))].filter((name) => name !== null),
  );
}

/** "“Which way he turns”: left or right". */
export function conditionWords({ names }: Edition, { crux, readings }: ReadingCondition): string {
  const titles = readings.map((id) => names("readings", id) ?? "a reading that is no longer there");
  return `“${names("cruxes", crux) ?? "a crux that is no longer there"}”: ${titles.join(" or ")}`;
}
