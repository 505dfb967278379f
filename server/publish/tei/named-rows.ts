/** server/publish/tei/named-rows.ts - which rows are part of the edition, so that nothing in it points at nothing.
 *  May import: schema types, shared, siblings. Keeps rule X9 (server/publish/tei/RULES.md). */
import type { Mark } from "../../../schema/mark.ts";
import type { Kind, RecordOf } from "../../../schema/record.ts";
import type { ExerciseRows, WorkRows } from "../../../shared/drill/exercise-rows.ts";
import { compareCodeUnits, compareRanked } from "../../../shared/rank.ts";
import { nameOf } from "./pointers.ts";

/** Rows of the work by kind, in the order they are written. */
export interface NamedRows {
  of: <K extends Listed>(kind: K) => readonly RecordOf<K>[];
  /** Marks whose thing is part of the edition, by kind of thing and its id. */
  marks: readonly Mark[];
  /** The xml:id of a row that is part of the edition; null for any other. */
  name: (kind: Kind, id: string) => string | null;
}

const WITH_WORK = [
  "passages",
  "layers",
  "witnesses",
  "sources",
  "pictures",
  "standings",
  "cruxes",
  "questions",
  "terms",
  "notes",
  "objects",
  "holds",
  "movements",
  "grounds",
  "threats",
  "rules",
  "faults",
  "exercises",
] as const satisfies readonly Kind[];
const OWNED = { regions: "picture", readings: "crux", senses: "term", stations: "ground" } as const;

type Listed = (typeof WITH_WORK)[number] | keyof typeof OWNED;

export function namedRows(rows: WorkRows, exercises: readonly ExerciseRows[]): NamedRows {
  const lists = new Map<Kind, readonly { id: string }[]>();
  const names = new Set<string>();
  const keep = (kind: Kind, list: readonly { id: string }[]) => {
    lists.set(kind, list);
    for (const { id } of list) names.add(nameOf(kind, id));
  };
  for (const kind of WITH_WORK) {
    keep(
      kind,
      inOrder(rows.all(kind) as readonly (Ranked & { work: string })[]).filter(({ work }) => work === rows.work.id),
    );
  }
  for (const [kind, field] of Object.entries(OWNED) as [keyof typeof OWNED, string][]) {
    const owners = { regions: "pictures", readings: "cruxes", senses: "terms", stations: "grounds" } as const;
    const all = inOrder(rows.all(kind) as readonly (Ranked & Record<string, string>)[]);
    keep(
      kind,
      all.filter((row) => names.has(nameOf(owners[kind], row[field] ?? ""))),
    );
  }
  for (const { elements } of exercises) for (const { id } of elements) names.add(nameOf("elements", id));
  for (const { id, ownerKind, owner } of rows.all("actions"))
    if (names.has(nameOf(ownerKind, owner))) names.add(nameOf("actions", id));
  const marks = rows
    .all("marks")
    .filter(({ of, target }) => names.has(nameOf(of, target)))
    .sort(
      (a, b) => compareCodeUnits(a.of, b.of) || compareCodeUnits(a.target, b.target) || compareCodeUnits(a.id, b.id),
    );
  for (const { id } of marks) for (const anchor of rows.anchorsOf(id)) names.add(nameOf("anchors", anchor.id));
  return {
    of: <K extends Listed>(kind: K) => (lists.get(kind) ?? []) as unknown as readonly RecordOf<K>[],
    marks,
    name: (kind, id) => (kind in KNOWN && names.has(nameOf(kind, id)) ? nameOf(kind, id) : null),
  };
}

/** Kinds that can be pointed at. */
const KNOWN: Partial<Record<Kind, true>> = Object.fromEntries(
  [...WITH_WORK, ...Object.keys(OWNED), "elements", "actions", "anchors"].map((kind) => [kind, true]),
);

type Ranked = { id: string; rank?: string };

/** By rank where rows have one, else by id. */
function inOrder<T extends Ranked>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => compareRanked({ id: a.id, rank: a.rank ?? "" }, { id: b.id, rank: b.rank ?? "" }));
}
