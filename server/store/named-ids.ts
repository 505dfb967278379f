/** server/store/named-ids.ts - every id a row names: in its fields, by a tie, and inside nested values.
 *  May import: schema, siblings in server/store. Keeps rule S14 (server/store/RULES.md). Pure.
 *  Documents, frozen drills, print models and source items are not looked into: they are kept as they were. */
import type { Act } from "../../schema/act.ts";
import { VERBS } from "../../schema/act.ts";
import type { RecordOf } from "../../schema/record.ts";
import { type Kind, REFERENCES, TIES } from "../../schema/record.ts";
import type { Basis, ReadingValue, Slot, SlotAddress } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";
import type { RowValue } from "./field-table.ts";
import { slotKindAt, slotsIn } from "./slot-kind.ts";

/** How strongly a row needs what it names. "row": a field or tie of its own. "nested": inside a value. Both must be
 *  there as long as the row is. "frozen": a record of how things stood, checked only when it is written. */
export type Hold = "row" | "nested" | "frozen";

export interface NamedId {
  to: Kind;
  id: string;
  /** Where in the row: "guard[0].readings[1]". */
  path: string;
  hold: Hold;
  /** For a reading: the crux it must belong to. */
  crux?: string;
}

/** What a value of the kind names; the other kinds of value name nothing. */
const VALUE_TARGETS: { [K in ValueKind]?: (value: never) => [Kind, string | undefined, string] } = {
  object: (id: string) => ["objects", id, ""],
  hold: (id: string) => ["holds", id, ""],
  movement: (id: string) => ["movements", id, ""],
  threat: (id: string) => ["threats", id, ""],
  bearing: (value: { station?: string }) => ["stations", value.station, ".station"],
  place: (value: { station?: string }) => ["stations", value.station, ".station"],
  timing: (value: { action?: string }) => ["actions", value.action, ".action"],
};

/** `slotKindOf` gives the kind of the slot a reading's value addresses, or null when it is not known (then the value is
 *  taken to name nothing; another check refuses it). */
export function namedIds(
  kind: Kind,
  value: RowValue,
  slotKindOf: (address: SlotAddress) => ValueKind | null,
): NamedId[] {
  const found: NamedId[] = [];
  const name = (to: Kind, id: string | null | undefined, path: string, hold: Hold = "nested", crux?: string): void => {
    if (id === null || id === undefined) return;
    found.push(crux === undefined ? { to, id, path, hold } : { to, id, path, hold, crux });
  };
  const each = <T>(list: readonly T[], path: string, visit: (item: T, at: string) => void): void => {
    for (const [index, item] of list.entries()) visit(item, `${path}[${index}]`);
  };
  const conditions = (list: readonly AnyCondition[], path: string, hold: Hold = "nested"): void =>
    each(list, path, (condition, at) => {
      if (condition.is === "variant") each(condition.variants, `${at}.variants`, (id, p) => name("variants", id, p));
      if (condition.is !== "reading") return;
      name("cruxes", condition.crux, `${at}.crux`, hold);
      each(condition.readings, `${at}.readings`, (id, p) => name("readings", id, p, hold, condition.crux));
    });
  const bases = (list: readonly Basis[], path: string): void =>
    each(list, path, (basis, at) => {
      if (basis.is === "words") name("marks", basis.mark, `${at}.mark`);
      else if (basis.is === "picture") name("regions", basis.region, `${at}.region`);
      else if (basis.is === "premise") name("cruxes", basis.crux, `${at}.crux`);
      else if (basis.is === "parallel") name("sources", basis.source, `${at}.source`);
      else if (basis.is === "trial") name("trials", basis.trial, `${at}.trial`);
    });
  const slot = (valueKind: ValueKind | null, held: Slot<unknown> | ReadingValue | undefined, path: string): void => {
    if (held?.is === "in crux") name("cruxes", held.crux, `${path}.crux`);
    if (held?.is !== "said") return;
    bases(held.basis, `${path}.basis`);
    const target = valueKind === null ? undefined : VALUE_TARGETS[valueKind];
    if (target === undefined) return;
    const [to, id, below] = target(held.value as never);
    name(to, id, `${path}.value${below}`);
  };
  const act = ({ verb, slots }: Act, path: string): void => {
    for (const [slotName, valueKind] of Object.entries(VERBS[verb].slots)) {
      slot(valueKind, (slots as Record<string, Slot<unknown> | undefined>)[slotName], `${path}.slots.${slotName}`);
    }
  };
  const choice = (list: readonly { crux: string; reading: string }[]): void =>
    each(list, "choice", (chosen, at) => {
      name("cruxes", chosen.crux, `${at}.crux`, "frozen");
      name("readings", chosen.reading, `${at}.reading`, "frozen", chosen.crux);
    });

  for (const [field, { to }] of Object.entries(REFERENCES[kind] ?? {})) {
    name(to, value[field] as string | null | undefined, field, "row");
  }
  const tie = TIES[kind];
  if (tie !== undefined) name(value[tie.kind] as Kind, value[tie.id] as string, tie.id, "row");

  // What a slot of the row says; acts inside actions are among them.
  for (const { path, valueKind, held } of slotsIn(kind, value)) slot(valueKind, held, path);
  if ("guard" in value) conditions(value.guard as AnyCondition[], "guard");
  if ("existence" in value) bases((value.existence as { basis: Basis[] }).basis, "existence.basis");

  const visitors: Visitors = {
    passageLinks: (row) => {
      each(row.from, "from", (id, at) => name("passages", id, at));
      each(row.to, "to", (id, at) => name("passages", id, at));
    },
    elements: (row) => {
      if (row.order !== null) bases(row.order.basis, "order.basis");
      if (row.is !== "again") return;
      if (row.of.is === "exercise") name("exercises", row.of.exercise, "of.exercise");
      else if (row.of.is === "movement") name("movements", row.of.movement, "of.movement");
      else {
        name("elements", row.of.from, "of.from");
        name("elements", row.of.to, "of.to");
      }
      each(row.except, "except", (except, at) => {
        if (except.is !== "words") name("actions", except.action, `${at}.action`);
        if (except.is === "instead") name("actions", except.by, `${at}.by`);
      });
    },
    variants: (row) =>
      each(row.deltas, "deltas", (delta, at) => {
        if (delta.is === "leave out" || delta.is === "no opponent") name("elements", delta.element, `${at}.element`);
        if (delta.is !== "act instead") return;
        name("actions", delta.action, `${at}.action`);
        act(delta.act, `${at}.act`);
      }),
    cruxes: (row) => {
      conditions(row.arisesWhen, "arisesWhen");
      if (row.leftFree !== null) {
        name("readings", row.leftFree.default, "leftFree.default", "nested", row.id);
        name("sittings", row.leftFree.sitting, "leftFree.sitting");
      }
      each(row.exceptions, "exceptions", (exception, at) => {
        name("elements", exception.element, `${at}.element`);
        name("readings", exception.reading, `${at}.reading`, "nested", row.id);
      });
    },
    readings: (row) => {
      bases(row.evidence, "evidence");
      conditions(row.requires, "requires");
      conditions(row.excludes, "excludes");
      each(row.values, "values", ({ at: address, value: given }, at) => {
        name(address.kind, address.id, `${at}.at.id`);
        slot(slotKindOf(address), given, `${at}.value`);
      });
      if (row.status.is !== "standing") name("sittings", row.status.sitting, "status.sitting");
    },
    questions: (row) => {
      each(row.answers, "answers", (answer, at) => conditions(answer.allows, `${at}.allows`));
      if (row.state.is === "answered") name("sittings", row.state.sitting, "state.sitting");
    },
    rules: (row) => bases(row.support, "support"),
    waivers: (row) => bases(row.basis, "basis"),
    kits: (row) => each(row.objects, "objects", (item, at) => name("objects", item.object, `${at}.object`)),
    trials: (row) => {
      choice(row.choice);
      each(row.findings, "findings", (finding, at) => name("elements", finding.element, `${at}.element`, "frozen"));
    },
    editions: (row) => {
      choice(row.choice);
      each(row.exercises, "exercises", (id, at) => name("exercises", id, at, "frozen"));
    },
    slips: (row) =>
      each(row.entries, "entries", (entry, at) => name("elements", entry.element, `${at}.element`, "frozen")),
    lessons: (row) =>
      each(row.items, "items", (item, at) => {
        name("exercises", item.exercise, `${at}.exercise`);
        name("variants", item.variant, `${at}.variant`);
      }),
  };
  (visitors[kind] as ((row: RowValue) => void) | undefined)?.(value);
  return found;
}

type Visitors = { [K in Kind]?: (row: RecordOf<K>) => void };
type AnyCondition =
  | { is: "reading"; crux: string; readings: readonly string[] }
  | { is: "way" }
  | { is: "variant"; variants: readonly string[] };

/** A lookup for `namedIds` that reads the addressed row through `find` (null: not there). */
export function slotKindThrough(
  find: (kind: Kind, id: string) => RowValue | null,
): (address: SlotAddress) => ValueKind | null {
  return ({ kind, id, slot }) => {
    const row = find(kind, id);
    return row === null ? null : slotKindAt(kind, row, slot);
  };
}
