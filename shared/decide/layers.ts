/** shared/decide/layers.ts - which combinations of readings are in play before and after each event.
 *  May import: siblings in shared/decide. Combinations that a constraint forbids are left out as soon as all it is about
 *  have a value. Blocks are dense: a combination is a number from 0, its values stand in columns. */
import { emptyRow, setBit } from "./cells.ts";
import type { Constraint, Factor, IndexedPuzzle } from "./indexed.ts";
import { schedule } from "./schedule.ts";

/** A crux's value in each combination. */
export type Column = Uint8Array | Uint16Array;

/** Of the cruxes in play. */
export type Columns = ReadonlyMap<number, Column>;

export interface EnterLayer {
  is: "enter";
  crux: number;
  /** Combinations before and after. */
  before: number;
  after: number;
  /** Of each combination after: the one it continues, and the value it gives the crux. */
  parent: Int32Array;
  value: Column;
  /** What each combination after is weighted with; null: all with 1. */
  weights: bigint[] | null;
}

export interface LeaveLayer {
  is: "leave";
  crux: number;
  before: number;
  after: number;
  /** Of each combination before: the one it becomes. */
  into: Int32Array;
  /** Values before the crux leaves. */
  columns: Columns;
}

export interface StageLayer {
  is: "stage";
  stage: number;
  before: number;
  after: number;
  /** Of each combination: which of the groups that the stage can tell apart it belongs to. */
  group: Uint16Array | Int32Array;
  /** Of each group: the values of the cruxes touched, in the order of `touches`. */
  groups: readonly Uint16Array[];
  /** Of each group: the set of its combinations. Null where there are so many groups that going one by one is quicker. */
  masks: readonly Uint32Array[] | null;
}

export type Layer = EnterLayer | LeaveLayer | StageLayer;

/** Layer by layer; or, where more than `most` combinations come together, the cruxes that are in play then and the stage
 *  that comes next. */
export function layersOf(
  puzzle: IndexedPuzzle,
  values: readonly (readonly number[])[],
  most: number,
): Layer[] | { tooMany: readonly number[]; stage: number } {
  const layers: Layer[] = [];
  let columns: Columns = new Map();
  let count = 1;
  let stage = 0;
  for (const event of schedule(puzzle, values)) {
    if (event.is === "stage") {
      layers.push(stageLayer(puzzle, event.stage, columns, count));
      stage = event.stage + 1;
      continue;
    }
    const next =
      event.is === "enter"
        ? enterLayer(puzzle, event.crux, values[event.crux] ?? [], columns, count)
        : leaveLayer(puzzle, event.crux, columns, count);
    layers.push(next.layer);
    columns = next.columns;
    count = next.layer.after;
    if (count > most) return { tooMany: [...columns.keys()], stage };
  }
  return layers;
}

function enterLayer(
  puzzle: IndexedPuzzle,
  crux: number,
  values: readonly number[],
  columns: Columns,
  count: number,
): { layer: EnterLayer; columns: Columns } {
  const complete = ({ scope }: Constraint | Factor) =>
    scope.includes(crux) && scope.every((other) => other === crux || columns.has(other));
  const constraints = puzzle.constraints.filter(complete).map((one) => ({ one, values: valuesIn(one, columns) }));
  const factors = puzzle.factors.filter(complete).map((one) => ({ one, values: valuesIn(one, columns) }));
  const parent = new Int32Array(count * values.length);
  const value = columnOf(count * values.length, puzzle.radix[crux] as number);
  const weights: bigint[] | null = factors.length > 0 ? [] : null;
  let after = 0;
  for (let combination = 0; combination < count; combination += 1) {
    for (const own of values) {
      if (!constraints.every((constraint) => constraint.one.allows(constraint.values(combination, own)))) continue;
      parent[after] = combination;
      value[after] = own;
      weights?.push(factors.reduce((product, { one, values: of }) => product * one.weightOf(of(combination, own)), 1n));
      after += 1;
    }
  }
  const layer: EnterLayer = {
    is: "enter",
    crux,
    before: count,
    after,
    parent: parent.slice(0, after),
    value: value.slice(0, after),
    weights,
  };
  return { layer, columns: new Map([...pickRows(columns, layer.parent), [crux, layer.value]]) };
}

/** The values in the order of the scope, of a combination and the crux that enters. The array is used again. */
function valuesIn(
  { scope }: Constraint | Factor,
  columns: Columns,
): (combination: number, own: number) => ArrayLike<number> {
  const values = new Uint16Array(scope.length);
  const own = scope.map((crux) => columns.get(crux));
  return (combination, entering) => {
    for (let place = 0; place < own.length; place += 1) values[place] = own[place]?.[combination] ?? entering;
    return values;
  };
}

function leaveLayer(
  puzzle: IndexedPuzzle,
  crux: number,
  columns: Columns,
  count: number,
): { layer: LeaveLayer; columns: Columns } {
  const staying = new Map([...columns].filter(([other]) => other !== crux));
  const { group, first } = groupBy(puzzle, staying, count);
  const layer: LeaveLayer = { is: "leave", crux, before: count, after: first.length, into: group, columns };
  return { layer, columns: pickRows(staying, first) };
}

function stageLayer(puzzle: IndexedPuzzle, stage: number, columns: Columns, count: number): StageLayer {
  const touched = puzzle.touches[stage] ?? [];
  const own = new Map(touched.map((crux) => [crux, columns.get(crux) as Column]));
  const { group, first } = groupBy(puzzle, own, count);
  const groups = [...first].map((row) => Uint16Array.from(own.values(), (column) => column[row] as number));
  const narrow = groups.length <= 0x10000 ? Uint16Array.from(group) : group;
  return {
    is: "stage",
    stage,
    before: count,
    after: count,
    group: narrow,
    groups,
    masks: masksOf(group, groups.length),
  };
}

/** Groups up to which sets are made: a word of 32 combinations for each costs less than the combinations one by one. */
const MASKS = 32;

function masksOf(group: Int32Array, groups: number): Uint32Array[] | null {
  if (groups > MASKS) return null;
  const masks = Array.from({ length: groups }, () => emptyRow(group.length));
  for (let combination = 0; combination < group.length; combination += 1) {
    setBit(masks[group[combination] as number] as Uint32Array, combination);
  }
  return masks;
}

/** As narrow as the values allow: columns of every event are kept. */
function columnOf(length: number, radix: number): Column {
  return radix <= 0x100 ? new Uint8Array(length) : new Uint16Array(length);
}

function pickRows(columns: Columns, rows: Int32Array): Map<number, Column> {
  return new Map(
    [...columns].map(([crux, column]) => {
      const picked = columnOf(rows.length, column instanceof Uint8Array ? 0 : 0xffff);
      for (let row = 0; row < rows.length; row += 1) picked[row] = column[rows[row] as number] as number;
      return [crux, picked];
    }),
  );
}

/** Largest table that is used to look numbers up; beyond it a map is slower but smaller. */
const TABLE = 1 << 21;

/** Numbers rows with equal values alike, from 0 as they come, and names the first row of each number. */
function groupBy(
  { radix }: IndexedPuzzle,
  columns: Columns,
  count: number,
): { group: Int32Array<ArrayBuffer>; first: Int32Array } {
  // Keys of as many columns as fit are put together before rows are numbered anew.
  let keys = new Int32Array(count);
  let size = 1;
  for (const [crux, column] of columns) {
    const width = radix[crux] as number;
    if (size * width > TABLE) {
      const numbered = numberedAnew(keys, size);
      keys = numbered.group;
      size = numbered.first.length;
    }
    const finer = new Int32Array(count);
    for (let row = 0; row < count; row += 1) finer[row] = (keys[row] as number) * width + (column[row] as number);
    keys = finer;
    size *= width;
    if (size > 2 ** 31) throw new RangeError("A crux has too many readings to be counted.");
  }
  return numberedAnew(keys, size);
}

/** Keys from 0 to `size`, exclusive, as numbers from 0 in the order they come. */
function numberedAnew(keys: Int32Array, size: number): { group: Int32Array<ArrayBuffer>; first: Int32Array } {
  const table = size <= TABLE ? new Int32Array(size) : null;
  const map = new Map<number, number>();
  const group = new Int32Array(keys.length);
  const first = new Int32Array(Math.min(size, keys.length));
  let groups = 0;
  for (let row = 0; row < keys.length; row += 1) {
    const key = keys[row] as number;
    // Numbers in the table count from 1: 0 is a key that has not come yet.
    let known = table ? (table[key] as number) : (map.get(key) ?? 0);
    if (known === 0) {
      first[groups] = row;
      groups += 1;
      known = groups;
      if (table) table[key] = known;
      else map.set(key, known);
    }
    group[row] = known - 1;
  }
  return { group, first: first.slice(0, groups) };
}
