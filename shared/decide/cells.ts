/** shared/decide/cells.ts - sets of cells, one bit each.
 *  May import: nothing. A *cell* is a node with a combination of readings in play, numbered node after node:
 *  node * combinations + combination. */

/** By node: a bit for each combination. */
export type CellSet = readonly Uint32Array[];

export function emptyRow(combinations: number): Uint32Array<ArrayBuffer> {
  return new Uint32Array((combinations + 31) >>> 5);
}

export function setBit(row: Uint32Array, bit: number): void {
  row[bit >>> 5] = (row[bit >>> 5] as number) | (1 << (bit & 31));
}

export function hasBit(row: Uint32Array, bit: number): boolean {
  return (((row[bit >>> 5] as number) >>> (bit & 31)) & 1) === 1;
}

export function addRow(row: Uint32Array, other: Uint32Array): void {
  for (let word = 0; word < row.length; word += 1) row[word] = (row[word] as number) | (other[word] as number);
}

/** Adds what is in both others. */
export function addCommon(row: Uint32Array, one: Uint32Array, other: Uint32Array): void {
  for (let word = 0; word < row.length; word += 1) {
    row[word] = (row[word] as number) | ((one[word] as number) & (other[word] as number));
  }
}

export function meets(one: Uint32Array, other: Uint32Array): boolean {
  for (let word = 0; word < one.length; word += 1)
    if (((one[word] as number) & (other[word] as number)) !== 0) return true;
  return false;
}

/** The bits of a row, rising. */
export function bitsOf(row: Uint32Array): Int32Array {
  return cellsOf([row]).combinations;
}

/** How many cells are in the set. */
export function sizeOf(set: CellSet): number {
  let size = 0;
  for (const row of set) for (let word = 0; word < row.length; word += 1) size += countOf(row[word] as number);
  return size;
}

export interface CellList {
  /** Of each cell, node after node and rising: its combination. */
  combinations: Int32Array;
  /** By node: the place of its first cell in the list; and at the end how many cells there are. */
  starts: Int32Array;
}

export function cellsOf(set: CellSet): CellList {
  const combinations = new Int32Array(sizeOf(set));
  const starts = new Int32Array(set.length + 1);
  let found = 0;
  for (let node = 0; node < set.length; node += 1) {
    const row = set[node] as Uint32Array;
    for (let word = 0; word < row.length; word += 1) {
      for (let rest = row[word] as number; rest !== 0; rest &= rest - 1) {
        combinations[found] = word * 32 + 31 - Math.clz32(rest & -rest);
        found += 1;
      }
    }
    starts[node + 1] = found;
  }
  return { combinations, starts };
}

/** How many bits are set in a word. */
function countOf(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
