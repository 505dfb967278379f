/** shared/decide/merged.ts - nodes that no later stage can tell apart become one.
 *  May import: siblings in shared/decide. This is what keeps only as much of a state as a later rule or act still reads:
 *  where two nodes lead on alike under every group of readings, what differs in them matters no more. */
import { type Automaton, type Table, UNREACHED } from "./automaton.ts";
import { addRow, type CellSet } from "./cells.ts";
import type { Layer } from "./layers.ts";

/** Comparisons of rows beyond which only equal rows are merged, not those that fit into each other. */
const PATIENCE = 4_000_000;

/** The same count over fewer nodes. Nodes from which all completions break are gone; why they break is no longer told. */
export function merged(layers: readonly Layer[], { tables, surely, breaks, reached }: Automaton): Automaton {
  const last = byFlag(surely.at(-1) ?? []);
  const classes = [last.of];
  const newSurely = [last.flags];
  const newTables: Table[] = [];
  for (let stage = tables.length - 1; stage >= 0; stage -= 1) {
    const { groups, next } = tables[stage] as Table;
    const own = surely[stage] as readonly boolean[];
    const after = classes[0] as readonly number[];
    const goalOf = (goal: number) => (goal >= 0 ? (after[goal] as number) : goal === UNREACHED ? goal : -1);
    const rows = own.map((_, node) => next.slice(node * groups, (node + 1) * groups).map(goalOf));
    const found = classesOf(rows, own);
    classes.unshift(found.of);
    newSurely.unshift(found.flags);
    newTables.unshift({ groups, next: concatenated(found.rows, groups) });
  }
  let boundary = 0;
  const newReached = reached.map((set, frontier) => {
    if (layers[frontier - 1]?.is === "stage") boundary += 1;
    return mergedSet(set, classes[boundary] as readonly number[], (newSurely[boundary] as boolean[]).length);
  });
  const nodes = Math.max(...newSurely.map(({ length }) => length));
  return { tables: newTables, surely: newSurely, breaks, reached: newReached, nodes };
}

function mergedSet(set: CellSet, classOf: readonly number[], classes: number): CellSet {
  const rows = Array.from({ length: classes }, () => new Uint32Array(set[0]?.length ?? 0));
  for (const [node, row] of set.entries()) {
    const own = rows[classOf[node] as number];
    if (own) addRow(own, row);
  }
  return rows;
}

/** After the last stage only the flag counts. */
function byFlag(surely: readonly boolean[]): { of: number[]; flags: boolean[] } {
  const flags = [...new Set(surely)];
  return { of: surely.map((flag) => flags.indexOf(flag)), flags };
}

/** Classes of nodes by their rows; -1 for a node that leads nowhere. Where nobody comes under some readings, a row may be
 *  taken as going wherever another one goes. */
function classesOf(
  rows: readonly Int32Array[],
  flags: readonly boolean[],
): { of: number[]; rows: Int32Array[]; flags: boolean[] } {
  const width = rows[0]?.length ?? 0;
  const patient = rows.length * rows.length * width <= PATIENCE;
  const classes: { row: Int32Array; flag: boolean }[] = [];
  const known = new Map<string, number>();
  const of = rows.map((row, node) => {
    if (row.every((goal) => goal < 0)) return -1;
    const flag = flags[node] as boolean;
    const key = `${flag} ${row.join(" ")}`;
    const same = known.get(key);
    if (same !== undefined) return same;
    const fitting = patient ? classes.findIndex((one) => one.flag === flag && fits(one.row, row)) : -1;
    const found = fitting >= 0 ? fitting : classes.push({ row: row.slice(), flag }) - 1;
    if (fitting >= 0) fill((classes[fitting] as { row: Int32Array }).row, row);
    known.set(key, found);
    return found;
  });
  return { of, rows: classes.map(({ row }) => row), flags: classes.map(({ flag }) => flag) };
}

function fits(one: Int32Array, other: Int32Array): boolean {
  return one.every((goal, at) => goal === other[at] || goal === UNREACHED || other[at] === UNREACHED);
}

function fill(row: Int32Array, from: Int32Array): void {
  for (const [at, goal] of from.entries()) if (goal !== UNREACHED) row[at] = goal;
}

function concatenated(rows: readonly Int32Array[], width: number): Int32Array {
  const all = new Int32Array(rows.length * width);
  for (const [index, row] of rows.entries()) all.set(row, index * width);
  return all;
}
