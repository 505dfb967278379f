/** server/find/shared-entries.ts - what the exercises of a work share: objects, holds, movements, grounds with their
 *  stations, opponents, and what stands throughout.
 *  May import: schema types, shared/rank, server/store, siblings. */
import { MARKABLE, type Markable } from "../../schema/mark.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { compareCodeUnits } from "../../shared/rank.ts";
import { readRows, type Store } from "../store/index.ts";
import { type Entry, type Part, part, type Thing } from "./entry.ts";
import { actionsByOwner, actParts, namesInStore } from "./step-entries.ts";

export function sharedEntries(store: Store): Entry[] {
  const names = namesInStore(store);
  const owned = actionsByOwner(store);
  const values = <K extends Kind>(kind: K): RecordOf<K>[] => readRows(store, kind).map(({ value }) => value);
  const acts = (id: string): Part[] => actParts(owned.get(id) ?? [], names);
  const workOfGround = new Map(values("grounds").map(({ id, work }) => [id, work]));
  const entries = [
    ...values("objects").map((row) => entry("objects", row, row.name, part("note", row.note))),
    ...values("holds").map((row) => entry("holds", row, row.name, part("note", row.note))),
    ...values("movements").map((row) =>
      entry("movements", row, row.name, [...acts(row.id), ...part("note", row.note)]),
    ),
    ...values("grounds").map((row) => entry("grounds", row, row.name, part("note", row.note))),
    ...values("threats").map((row) => entry("threats", row, row.name, part("note", row.note))),
    ...values("standings").map((row) =>
      entry("standings", row, row.title, [...acts(row.id), ...part("note", row.note)], row.exercise),
    ),
    ...values("stations").flatMap(({ id, ground, name, note }) => {
      const work = workOfGround.get(ground);
      return work === undefined ? [] : [entry("stations", { id, work }, name, part("note", note))];
    }),
  ];
  return entries.sort((a, b) => compareCodeUnits(a.title, b.title) || compareCodeUnits(a.id, b.id));
}

function entry(
  kind: Kind,
  { id, work }: { id: string; work: string },
  title: string,
  parts: Part[],
  exercise: string | null = null,
): Entry {
  const shown: Thing[] = isMarkable(kind) ? [{ kind, id }] : [];
  return {
    kind,
    id,
    work,
    exercise,
    title,
    parts,
    place: { is: "tied", ties: shown.map((thing) => ({ of: thing, shown: thing })), after: null },
  };
}

function isMarkable(kind: Kind): kind is Kind & Markable {
  return (MARKABLE as readonly string[]).includes(kind);
}
