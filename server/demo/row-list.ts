/** server/demo/row-list.ts - rows gathered in the order they are written, then turned into edits that create them.
 *  May import: schema types, shared/rank, siblings. Ids are counted and ranks follow the order of writing, so the same
 *  book gives the same edits every time. */
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { ranksBetween } from "../../shared/rank.ts";
import { demoId } from "./demo-id.ts";

/** A row as it is written here: its id is counted, its rank given at the end. */
export type NewRow<K extends Kind> =
  RecordOf<K> extends infer R ? (R extends unknown ? Omit<R, "id" | "rank"> : never) : never;

/** Kinds with a rank, and the field that names what they are ranked within; null: within the whole store. */
const RANKED_WITHIN: { [K in Kind]?: string | null } = {
  works: null,
  witnesses: "work",
  layers: "work",
  revisions: "layer",
  exercises: "work",
  passages: "work",
  anchors: "mark",
  pictures: "work",
  elements: "exercise",
  actions: "owner",
  standings: "work",
  variants: "work",
  readings: "crux",
  senses: "term",
  objects: "work",
  holds: "work",
  movements: "work",
  grounds: "work",
  stations: "ground",
  faults: "work",
  kits: "work",
};

type Value = Record<string, unknown>;

export class RowList {
  #count = 0;
  readonly #rows: { kind: Kind; value: Value }[] = [];

  newId(): string {
    this.#count += 1;
    return demoId(this.#count);
  }

  /** Adds a row and gives its id; with `id` when other rows had to name it before it was written. */
  add<K extends Kind>(kind: K, value: NewRow<K>, id = this.newId()): string {
    this.#rows.push({ kind, value: { id, ...value } });
    return id;
  }

  /** One `create` for each row, in the order of writing. The list is not changed: it can be written on afterwards. */
  edits(): Edit[] {
    const ranks = this.#ranks();
    return this.#rows.map(({ kind, value }) => {
      const rank = ranks.get(value);
      const whole = rank === undefined ? value : { ...value, rank };
      return { do: "create", kind, value: structuredClone(whole) as Extract<Edit, { do: "create" }>["value"] };
    });
  }

  #ranks(): Map<Value, string> {
    const lists = new Map<string, Value[]>();
    for (const { kind, value } of this.#rows) {
      const within = RANKED_WITHIN[kind];
      if (within === undefined) continue;
      const key = `${kind} ${within === null ? "" : String(value[within])}`;
      const list = lists.get(key);
      if (list === undefined) lists.set(key, [value]);
      else list.push(value);
    }
    const ranks = new Map<Value, string>();
    for (const list of lists.values()) {
      const keys = ranksBetween(null, null, list.length);
      for (const [index, value] of list.entries()) ranks.set(value, keys[index] ?? "");
    }
    return ranks;
  }
}
