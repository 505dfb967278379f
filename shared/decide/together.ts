/** shared/decide/together.ts - which readings occur together in an assignment that holds.
 *  May import: siblings in shared/decide. One bit for every value of every crux; “does not arise” is a value too. */
import type { IndexedPuzzle } from "./indexed.ts";
import type { Pick } from "./puzzle.ts";

export class Together {
  private readonly offsets: number[] = [];
  private readonly rows: Uint32Array[];

  /** `order` is the order of cruxes in which bits are given out, every crux once. */
  constructor(
    private readonly puzzle: IndexedPuzzle,
    order: readonly number[],
  ) {
    let bits = 0;
    for (const crux of order) {
      this.offsets[crux] = bits;
      bits += puzzle.radix[crux] as number;
    }
    this.rows = Array.from({ length: bits }, () => new Uint32Array(Math.ceil(bits / 32)));
  }

  bit(crux: number, value: number): number {
    return (this.offsets[crux] as number) + value;
  }

  add(first: number, second: number): void {
    set(this.rows[first], second);
    set(this.rows[second], first);
  }

  /** With all bits set in a word; the word holds bits from 32 * `index`. */
  addWord(first: number, index: number, word: number): void {
    for (let rest = word; rest !== 0; rest &= rest - 1) this.add(first, index * 32 + 31 - Math.clz32(rest & -rest));
  }

  /** Asked by names. */
  pair(first: Pick, second: Pick): boolean {
    return this.has(this.bitOf(first), this.bitOf(second));
  }

  private bitOf({ crux, reading }: Pick): number {
    const { indexOf, puzzle } = this.puzzle;
    const index = indexOf.get(crux) as number;
    return this.bit(index, puzzle.cruxes[index]?.readings.indexOf(reading) as number);
  }

  has(first: number, second: number): boolean {
    return (((this.rows[first]?.[second >>> 5] ?? 0) >>> (second & 31)) & 1) === 1;
  }
}

function set(row: Uint32Array | undefined, bit: number): void {
  if (row) row[bit >>> 5] = (row[bit >>> 5] as number) | (1 << (bit & 31));
}
