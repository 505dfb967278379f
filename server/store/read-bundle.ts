/** server/store/read-bundle.ts - all rows that bear on one exercise, on one passage that stands in none, or on a whole work.
 *  May import: schema, siblings in server/store, server/errors. Keeps rule S27 (server/store/RULES.md).
 *  Grown from the passages and the exercise outward: what is tied to them, what that names, and so on. */
import type { Bundle } from "../../schema/api.ts";
import { type Kind, REFERENCES } from "../../schema/record.ts";
import type { PassageText } from "../../schema/work.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { newestNumber } from "./log.ts";
import { namedIds } from "./named-ids.ts";
import type { Store } from "./open-store.ts";
import { kindName } from "./row-name.ts";
import { gather, getRow, rowsWhere, type StoredRow } from "./row-store.ts";
import { slotKindAt } from "./slot-kind.ts";

export type BundleOf = { passage: string } | { exercise: string } | { work: string };

/** Kinds whose rows are shared by the whole work and are few: all of them are given. */
const SHARED: readonly Kind[] = [
  "witnesses",
  "layers",
  "passageLinks",
  "pictures",
  "sittings",
  "terms",
  "objects",
  "holds",
  "movements",
  "grounds",
  "threats",
  "rules",
  "kits",
  "sources",
];

/** Kinds that belong to the work or to one exercise of it. */
const OF_WORK_OR_EXERCISE: readonly Kind[] = ["standings", "variants", "cruxes", "questions"];

/** Rows that come with a row of a kind: those that are part of it, by the field that names it. */
const PARTS: { [K in Kind]?: readonly [Kind, string][] } = {
  layers: [["revisions", "layer"]],
  pictures: [["regions", "picture"]],
  terms: [["senses", "term"]],
  grounds: [["stations", "ground"]],
  exercises: [
    ["passages", "exercise"],
    ["elements", "exercise"],
    ["standings", "exercise"],
    ["variants", "exercise"],
    ["cruxes", "exercise"],
    ["questions", "exercise"],
    ["trials", "exercise"],
  ],
  elements: [["waivers", "element"]],
  cruxes: [
    ["readings", "crux"],
    ["questions", "crux"],
  ],
  marks: [["anchors", "mark"]],
};

/** Kinds whose owned actions, faults and marks come with them. Terms and other shared things bring no marks: a term may
 *  stand in every passage of the book, and its marks here come with the passages. */
const TIED: { [K in Kind]?: readonly ("actions" | "faults" | "marks")[] } = {
  elements: ["actions", "faults", "marks"],
  actions: ["marks"],
  standings: ["actions", "marks"],
  movements: ["actions", "faults"],
  senses: ["actions"],
  holds: ["faults"],
  cruxes: ["marks"],
  readings: ["marks"],
  questions: ["marks"],
};

/** The kinds a named row is fetched of. Frozen things (editions ...) are left out, and so are texts: the current ones of
 *  the bundle's own passages are added at the end. */
const FOLLOWED: ReadonlySet<Kind> = new Set<Kind>([
  "exercises",
  "passages",
  "marks",
  "regions",
  "elements",
  "actions",
  "standings",
  "cruxes",
  "readings",
  "questions",
  "senses",
  "stations",
  "notes",
  "variants",
  "trials",
  "threats",
]);

/** Read as of one moment, even while another program writes. */
export function readBundle(store: Store, of: BundleOf): Outcome<Bundle> {
  return store.db.transaction(() => ("work" in of ? bundleOfWork(store, of.work) : bundleOf(store, of)))();
}

function bundleOfWork(store: Store, work: string): Outcome<Bundle> {
  if (getRow(store, "works", work) === null) return notThere("works", work);
  const growing = new Growing(store);
  growing.addShared(work);
  for (const exercise of rowsWhere(store, "exercises", { work })) growing.add(exercise);
  for (const passage of rowsWhere(store, "passages", { work })) {
    growing.add(passage);
    growing.addMarksIn(passage.value.id);
  }
  growing.addTexts(growing.rows("passages").map(({ value }) => value.id));
  return done({ rows: gather(growing.all()), at: newestNumber(store) });
}

function bundleOf(store: Store, of: Exclude<BundleOf, { work: string }>): Outcome<Bundle> {
  const passage = "passage" in of ? getRow(store, "passages", of.passage) : null;
  const exerciseId = "exercise" in of ? of.exercise : passage?.value.exercise;
  const exercise = typeof exerciseId === "string" ? getRow(store, "exercises", exerciseId) : null;
  const start = exercise ?? passage;
  if (start === null) {
    const [kind, id] = "exercise" in of ? (["exercises", of.exercise] as const) : (["passages", of.passage] as const);
    return notThere(kind, id);
  }
  const growing = new Growing(store);
  growing.addShared(String(start.value.work));
  growing.add(start);
  // Passages elsewhere, on which evidence rests, are there to be cited, for which their words are needed, and no more.
  const exercises = new Set(growing.rows("exercises").map(({ value }) => value.id));
  const own = growing
    .rows("passages")
    .filter(({ value }) => value.id === start.value.id || exercises.has(String(value.exercise)));
  for (const { value } of own) growing.addMarksIn(value.id);
  growing.addTexts(growing.rows("passages").map(({ value }) => value.id));
  return done({ rows: gather(growing.all()), at: newestNumber(store) });
}

function notThere(kind: Kind, id: string): Outcome<never> {
  return refused(
    "row_unknown",
    `There is no ${kindName(kind)} with the id ${id}. Go back to the contents; the history has what was removed.`,
  );
}

class Growing {
  readonly #rows = new Map<string, StoredRow>();
  /** Other exercises, so that what is cited from them can be told by name; nothing of theirs comes with them. */
  readonly #bare = new Map<string, StoredRow>();

  constructor(readonly store: Store) {}

  all(): Iterable<StoredRow> {
    return new Map([...this.#bare, ...this.#rows]).values();
  }

  rows(kind: Kind): StoredRow[] {
    return [...this.#rows.values()].filter((row) => row.kind === kind);
  }

  addShared(work: string): void {
    const row = getRow(this.store, "works", work);
    if (row !== null) this.add(row);
    for (const kind of SHARED) for (const shared of rowsWhere(this.store, kind, { work })) this.add(shared);
    for (const kind of OF_WORK_OR_EXERCISE) {
      for (const shared of rowsWhere(this.store, kind, { work, exercise: null })) this.add(shared);
    }
  }

  /** Adds the row, what is part of it, what is tied to it and what it names; and the same of each of those. */
  add(start: StoredRow): void {
    const todo = [start];
    for (let row = todo.pop(); row !== undefined; row = todo.pop()) {
      const { kind, value } = row;
      const key = `${kind} ${value.id}`;
      if (this.#rows.has(key)) continue;
      this.#rows.set(key, row);
      for (const [part, field] of PARTS[kind] ?? []) todo.push(...rowsWhere(this.store, part, { [field]: value.id }));
      for (const tied of TIED[kind] ?? []) todo.push(...this.#tiedTo(tied, kind, value.id));
      todo.push(...this.#named(row));
    }
  }

  /** Marks on the words of the passage, with what they tie there. */
  addMarksIn(passage: string): void {
    const marks = new Set(rowsWhere(this.store, "anchors", { passage }).map(({ value }) => String(value.mark)));
    for (const id of marks) {
      const mark = getRow(this.store, "marks", id);
      if (mark === null || this.#rows.has(`marks ${id}`)) continue;
      this.add(mark);
      const target = getRow(this.store, mark.value.of as Kind, String(mark.value.target));
      if (target !== null) this.add(target);
    }
  }

  /** The current text of each passage in the newest revision of each layer. */
  addTexts(passages: readonly string[]): void {
    const newest = this.#newestRevisions();
    for (const passage of passages) {
      const current = new Map<string, StoredRow>();
      for (const row of rowsWhere(this.store, "passageTexts", { passage })) {
        const { revision, number } = row.value as unknown as PassageText;
        const known = current.get(revision);
        if (newest.has(revision) && (known === undefined || Number(known.value.number) < number)) {
          current.set(revision, row);
        }
      }
      for (const row of current.values()) this.#rows.set(`passageTexts ${row.value.id}`, row);
    }
  }

  #newestRevisions(): Set<string> {
    const newest = new Map<string, StoredRow>();
    for (const row of this.rows("revisions")) {
      const known = newest.get(String(row.value.layer));
      if (known === undefined || isAfter(row, known)) newest.set(String(row.value.layer), row);
    }
    return new Set([...newest.values()].map(({ value }) => value.id));
  }

  #tiedTo(tied: "actions" | "faults" | "marks", kind: Kind, id: string): StoredRow[] {
    const match: Record<string, string> =
      tied === "actions" ? { ownerKind: kind, owner: id } : { of: kind, target: id };
    return rowsWhere(this.store, tied, match);
  }

  #named({ kind, value }: StoredRow): StoredRow[] {
    const find = (to: Kind, id: string) => (this.#rows.get(`${to} ${id}`) ?? getRow(this.store, to, id))?.value;
    const named = namedIds(kind, value, (address) => {
      const addressed = find(address.kind, address.id);
      return addressed === undefined ? null : slotKindAt(address.kind, addressed, address.slot);
    });
    return named.flatMap(({ to, id, hold, path }) => {
      // What a part belongs to has brought it here, or is of no use without it.
      const upward = hold === "row" && REFERENCES[kind]?.[path]?.whole === true;
      if (upward || !FOLLOWED.has(to) || this.#rows.has(`${to} ${id}`)) return [];
      const row = getRow(this.store, to, id);
      if (row === null) return [];
      // An exercise is brought whole only where it is to be done again.
      if (to !== "exercises" || kind === "elements") return row;
      this.#bare.set(`${to} ${id}`, row);
      return [];
    });
  }
}

function isAfter(a: StoredRow, b: StoredRow): boolean {
  const left = String(a.value.rank);
  const right = String(b.value.rank);
  return left === right ? a.value.id > b.value.id : left > right;
}
