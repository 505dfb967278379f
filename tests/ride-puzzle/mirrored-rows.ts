/** tests/ride-puzzle/mirrored-rows.ts - the rows of the mirrored world: stations, acts, holds and what readings give. */
import { VERBS, type Verb } from "../../schema/act.ts";
import type { RecordOf, Rows } from "../../schema/record.ts";
import { HOLD_SLOTS } from "../../schema/riding.ts";
import type { ReadingValue, Slot, SlotAddress } from "../../schema/slot.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import { mirrorValue } from "../../shared/ride/mirror-act.ts";

type Kinds = Readonly<Record<string, ValueKind>>;
type Slots = Record<string, Slot<unknown> | undefined>;

export function mirroredRows(rows: Rows): Rows {
  const values = <K extends "actions" | "holds" | "stations" | "readings">(kind: K) =>
    (rows[kind] ?? []) as { kind: K; version: number; value: RecordOf<K> }[];
  const actions = new Map(values("actions").map(({ value }) => [value.id, value]));
  return {
    ...rows,
    stations: values("stations").map((row) => ({ ...row, value: mirroredStation(row.value) })),
    holds: values("holds").map((row) => ({
      ...row,
      value: { ...row.value, slots: mirroredSlots(row.value.slots as Slots, HOLD_SLOTS) } as RecordOf<"holds">,
    })),
    actions: values("actions").map((row) => ({
      ...row,
      value: {
        ...row.value,
        act: { ...row.value.act, slots: mirroredSlots(row.value.act.slots as Slots, VERBS[row.value.act.verb].slots) },
      } as RecordOf<"actions">,
    })),
    readings: values("readings").map((row) => ({
      ...row,
      value: {
        ...row.value,
        values: row.value.values.map(({ at, value }) => ({ at, value: mirroredGiven(at, value, actions) })),
      },
    })),
  };
}

function mirroredGiven(
  { kind, id, slot }: SlotAddress,
  value: ReadingValue,
  actions: ReadonlyMap<string, RecordOf<"actions">>,
): ReadingValue {
  const verb: Verb | undefined = actions.get(id)?.act.verb;
  const kinds: Kinds = kind === "holds" ? HOLD_SLOTS : verb === undefined ? {} : VERBS[verb].slots;
  return value.is === "said" ? { ...value, value: mirrored(kinds[slot], value.value) } : value;
}

function mirroredSlots(slots: Slots, kinds: Kinds): Slots {
  return Object.fromEntries(
    Object.entries(slots).map(([name, slot]) => [
      name,
      slot?.is === "said" ? { ...slot, value: mirrored(kinds[name], slot.value) } : slot,
    ]),
  );
}

/** Stations keep their names, and lie on the other side. */
function mirrored(kind: ValueKind | undefined, value: unknown): unknown {
  return kind === undefined ? value : mirrorValue(kind, value as ValueOf<typeof kind>, (station) => station);
}

function mirroredStation(station: RecordOf<"stations">): RecordOf<"stations"> {
  const { outline } = station;
  if (outline?.is !== "said" || outline.value.is !== "point") return station;
  const { x, y } = outline.value.at;
  return { ...station, outline: { ...outline, value: { is: "point", at: { x: 0 - x, y } } } };
}
