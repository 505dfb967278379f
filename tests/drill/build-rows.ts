/** tests/drill/build-rows.ts - builders for the rows of a small work: one line a thing, ids from names.
 *  Used by the tests of the drill and of the hands, and by the models of real passages. */
import { createHash } from "node:crypto";
import type { Act, ActOf, Verb } from "../../schema/act.ts";
import type { Crux, Question, Reading } from "../../schema/crux.ts";
import type { Action, Element, Standing } from "../../schema/exercise.ts";
import type { Guard } from "../../schema/guard.ts";
import type { Markable } from "../../schema/mark.ts";
import { KINDS, type Kind, RECORDS, type RecordOf, type Rows } from "../../schema/record.ts";
import type { Reference } from "../../schema/reference.ts";
import type { Basis, Said, Slot, SlotAddress, Support, Warrant } from "../../schema/slot.ts";
import { rankBetween } from "../../shared/rank.ts";
import { quoteAt } from "../../shared/text/quote.ts";

/** The same id for the same name, so that a drill can be compared byte by byte. */
export function idOf(name: string): string {
  const hex = createHash("sha256").update(name).digest("hex");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

export const NO_BASIS: Basis[] = [];
export const notSaid = { is: "not said" } as const;
export const held = (crux: string) => ({ is: "in crux", crux: idOf(crux) }) as const;

export function said<T>(value: T, warrant: Warrant, basis: Basis[]): Said<T> {
  return { is: "said", value, warrant, basis };
}
export const supplied = <T>(value: T): Said<T> => said(value, "supplied", [{ is: "editor", note: "" }]);
export const implied = <T>(value: T, premise: string): Said<T> =>
  said(value, "implied", [{ is: "premise", text: premise }]);

type Fields<K extends Kind> = Partial<RecordOf<K>>;

/** Collects the rows of one work. Ranks follow the order of the calls. */
export class WorkBuilder {
  readonly #tables = new Map<Kind, Map<string, RecordOf<Kind>>>();
  readonly #ranks = new Map<string, string>();
  readonly work: string;

  constructor(title: string, fields: Fields<"works"> = {}) {
    this.work = idOf(title);
    this.put("works", {
      id: this.work,
      rank: this.#rank("works"),
      title,
      author: "",
      levels: [],
      note: "",
      source: null,
      invented: true,
      ...fields,
    });
  }

  /** The rows so far, each checked against its schema: a model that the schema cannot hold fails here. */
  rows(): Rows {
    const rows: Record<string, unknown> = {};
    for (const kind of KINDS) {
      const table = [...(this.#tables.get(kind)?.values() ?? [])];
      if (table.length > 0)
        rows[kind] = table.map((value) => ({ kind, version: 1, value: RECORDS[kind].parse(value) }));
    }
    return rows as Rows;
  }

  put<K extends Kind>(kind: K, value: RecordOf<K>): string {
    const table = this.#tables.get(kind) ?? new Map<string, RecordOf<Kind>>();
    if (table.has(value.id)) throw new RangeError(`Two rows of ${kind} have the id ${value.id}.`);
    table.set(value.id, value);
    this.#tables.set(kind, table);
    return value.id;
  }

  /** A layer with one revision. */
  layer(name: string, fields: Fields<"layers"> = {}): string {
    const id = idOf(name);
    this.put("layers", {
      id,
      work: this.work,
      rank: this.#rank("layers"),
      is: "translation",
      title: name,
      by: "",
      language: "en",
      witness: null,
      urn: "",
      ...fields,
    });
    this.put("revisions", {
      id: idOf(`${name} revision`),
      layer: id,
      rank: "a0",
      label: "first",
      received: null,
      from: "pasted",
      attachment: null,
      note: "",
    });
    return id;
  }

  exercise(name: string, fields: Fields<"exercises"> = {}): string {
    const id = idOf(name);
    const rank = this.#rank("exercises");
    return this.put("exercises", {
      id,
      work: this.work,
      rank,
      label: "",
      title: name,
      note: "",
      ground: null,
      ...fields,
    });
  }

  /** A passage; its words are added with `text`. */
  passage(name: string, references: Reference[], exercise: string | null): string {
    const rank = this.#rank("passages");
    return this.put("passages", { id: idOf(name), work: this.work, exercise, rank, references });
  }

  text(passage: string, layer: string, words: string): string {
    const revision = [...this.#rowsOf("revisions")].find((row) => row.layer === layer);
    if (!revision) throw new RangeError("The layer has no revision.");
    const id = idOf(`text of ${passage} in ${layer}`);
    return this.put("passageTexts", {
      id,
      passage,
      revision: revision.id,
      number: 1,
      doc: { type: "doc" },
      text: words,
      steps: [],
    });
  }

  /** Ties a thing to words: from the first place of `first` to the end of the next place of `last`, in a text.
   *  Throws when the words are not there, so that a model never cites what its source does not say. */
  mark(of: Markable, target: string, text: string, first: string, last: string = first): string {
    const row = [...this.#rowsOf("passageTexts")].find(({ id }) => id === text);
    if (!row) throw new RangeError("There is no such text.");
    const from = row.text.indexOf(first);
    const end = from === -1 ? -1 : row.text.indexOf(last, from);
    if (from === -1 || end === -1) throw new RangeError(`The text does not hold "${first} ... ${last}".`);
    const to = end + last.length;
    const mark = idOf(`${of} ${target} ${text} ${from} ${to}`);
    if (this.#tables.get("marks")?.has(mark)) return mark;
    this.put("marks", { id: mark, work: this.work, of, target, as: "words" });
    this.put("anchors", {
      id: idOf(`anchor of ${mark}`),
      mark,
      rank: "a0",
      is: "text",
      passage: row.passage,
      text,
      from,
      to,
      fromSide: "after",
      toSide: "before",
      ...quoteAt(row.text, from, to),
      fate: "same",
    });
    return mark;
  }

  object(name: string, is: RecordOf<"objects">["is"]): string {
    const rank = this.#rank("objects");
    return this.put("objects", { id: idOf(name), work: this.work, rank, is, name, slots: {}, note: "" });
  }

  hold(name: string, fields: Fields<"holds"> = {}): string {
    return this.put("holds", {
      id: idOf(name),
      work: this.work,
      rank: this.#rank("holds"),
      name,
      for: ["shaft"],
      hands: "one",
      strong: false,
      slots: {},
      note: "",
      ...fields,
    });
  }

  movement(name: string): string {
    return this.put("movements", { id: idOf(name), work: this.work, rank: this.#rank("movements"), name, note: "" });
  }

  /** An element; `fields` must hold what its sort needs. */
  element(name: string, exercise: string, fields: Partial<Element> & Pick<Element, "is">): string {
    const value = {
      id: idOf(name),
      exercise,
      rank: this.#rank(exercise),
      guard: [],
      existence: { warrant: "supplied", basis: NO_BASIS },
      order: null,
      role: "",
      copyOf: null,
      note: "",
      ...(fields.is === "step" || fields.is === "again" ? { title: name } : {}),
      ...fields,
    };
    return this.put("elements", value as Element);
  }

  step(name: string, exercise: string, fields: Partial<Extract<Element, { is: "step" }>> = {}): string {
    return this.element(name, exercise, { ...fields, is: "step" });
  }

  action<V extends Verb>(owner: string, verb: V, slots: ActOf<V>["slots"], fields: Partial<Action> = {}): string {
    const rank = this.#rank(owner);
    return this.put("actions", {
      id: idOf(`${owner} ${rank}`),
      ownerKind: this.#ownerKind(owner),
      owner,
      rank,
      guard: [],
      act: { verb, slots } as Act,
      existence: { warrant: "supplied", basis: NO_BASIS },
      note: "",
      ...fields,
    });
  }

  standing(title: string, exercise: string | null, fields: Partial<Standing> = {}): string {
    return this.put("standings", {
      id: idOf(title),
      work: this.work,
      exercise,
      rank: this.#rank("standings"),
      is: "instruction",
      title,
      guard: [],
      existence: { warrant: "supplied", basis: NO_BASIS },
      note: "",
      ...fields,
    });
  }

  crux(name: string, exercise: string | null, fields: Partial<Crux> = {}): string {
    return this.put("cruxes", {
      id: idOf(name),
      work: this.work,
      exercise,
      is: "ambiguous",
      scope: "place",
      title: name,
      note: "",
      arisesWhen: [],
      leftFree: null,
      exceptions: [],
      ...fields,
    });
  }

  reading(name: string, crux: string, fields: Partial<Reading> = {}): string {
    return this.put("readings", {
      id: idOf(name),
      crux,
      rank: this.#rank(crux),
      title: name,
      argument: "",
      holder: "",
      evidence: [],
      requires: [],
      excludes: [],
      values: [],
      status: { is: "standing" },
      confidence: null,
      ...fields,
    });
  }

  question(text: string, exercise: string | null, crux: string | null, fields: Partial<Question> = {}): string {
    return this.put("questions", {
      id: idOf(text),
      work: this.work,
      exercise,
      crux,
      text,
      to: "the translator",
      by: "person",
      asked: null,
      effort: null,
      answers: [],
      state: { is: "open" },
      ...fields,
    });
  }

  #ownerKind(owner: string): Action["ownerKind"] {
    for (const kind of ["elements", "standings", "movements", "senses"] as const) {
      if (this.#tables.get(kind)?.has(owner)) return kind;
    }
    throw new RangeError("An action needs an owner that is there.");
  }

  #rowsOf<K extends Kind>(kind: K): Iterable<RecordOf<K>> {
    return (this.#tables.get(kind)?.values() ?? []) as Iterable<RecordOf<K>>;
  }

  #rank(list: string): string {
    const rank = rankBetween(this.#ranks.get(list) ?? null, null);
    this.#ranks.set(list, rank);
    return rank;
  }
}

export const under = (crux: string, ...readings: string[]): Guard => [
  { is: "reading", crux: idOf(crux), readings: readings.map(idOf) },
];
export const onlyWay = (way: "mounted" | "on foot"): Guard => [{ is: "way", way }];
export const slotAt = (id: string, slot: string, kind: SlotAddress["kind"] = "actions"): SlotAddress => ({
  kind,
  id,
  slot,
});
export const supports = (warrant: Warrant, mark: string): Support => ({ warrant, basis: [{ is: "words", mark }] });
export type AnySlot = Slot<unknown>;
