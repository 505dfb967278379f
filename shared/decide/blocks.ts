/** shared/decide/blocks.ts - a whole number for every cell, in dense arrays, as large as need be.
 *  May import: siblings in shared/decide. A number is kept in limbs of 48 bits, the lowest first, one array per limb: a
 *  double holds 53, so that up to 32 limbs add up before a carry is due. Big integers are made only of what is asked. */

const LIMB = 2 ** 48;
const HALF = 2 ** 24;

export interface Block {
  /** Node after node, each with all its combinations. */
  cells: number;
  limbs: Float64Array[];
}

/** Numbers of up to `bits` bits, all 0. */
export function emptyBlock(cells: number, bits: number): Block {
  const limbs = Math.max(1, Math.ceil((bits + 1) / 48));
  return { cells, limbs: Array.from({ length: limbs }, () => new Float64Array(cells)) };
}

/** Brings limbs that were added up back below 48 bits. Throws RangeError where a number outgrew its block. */
export function carry({ cells, limbs }: Block): void {
  for (const [index, limb] of limbs.entries()) {
    const above = limbs[index + 1];
    for (let cell = 0; cell < cells; cell += 1) {
      const sum = limb[cell] as number;
      if (sum < LIMB) continue;
      if (!above) throw new RangeError("A count outgrew the block it is kept in.");
      const over = Math.floor(sum / LIMB);
      limb[cell] = sum - over * LIMB;
      above[cell] = (above[cell] as number) + over;
    }
  }
}

/** Adds each number to the cell it goes to (-1: to none); null: every cell to itself, and then the block itself comes back. */
export function gathered(block: Block, to: Int32Array | null, after: number, bits: number): Block {
  if (!to) return block;
  const sum = emptyBlock(after, bits);
  for (const [index, limb] of block.limbs.entries()) {
    const into = sum.limbs[index];
    if (!into) break;
    for (let cell = 0; cell < to.length; cell += 1) {
      const goal = to[cell] as number;
      if (goal >= 0) into[goal] = (into[goal] as number) + (limb[cell] as number);
    }
  }
  carry(sum);
  return sum;
}

/** Each cell gets the number of the cell it is taken from (-1: 0); null: the block itself. */
export function spread(block: Block, from: Int32Array | null, bits: number): Block {
  if (!from) return block;
  const copy = emptyBlock(from.length, bits);
  for (const [index, limb] of block.limbs.entries()) {
    const into = copy.limbs[index];
    if (!into) break;
    for (let cell = 0; cell < from.length; cell += 1) {
      const source = from[cell] as number;
      if (source >= 0) into[cell] = limb[source] as number;
    }
  }
  return copy;
}

export function numberAt({ limbs }: Block, cell: number): bigint {
  return limbs.reduceRight((sum, limb) => sum * BigInt(LIMB) + BigInt(limb[cell] as number), 0n);
}

/** Each number by the weight of its cell; the product must fit. */
export function multiply({ cells, limbs }: Block, weightOf: (cell: number) => bigint): void {
  const digits = new Map<bigint, number[]>();
  for (let cell = 0; cell < cells; cell += 1) {
    const weight = weightOf(cell);
    const by = digits.get(weight) ?? digitsOf(weight);
    digits.set(weight, by);
    if (by.length === 1 && by[0] === 1) continue;
    const own = limbs.flatMap((limb) => {
      const value = limb[cell] as number;
      const high = Math.floor(value / HALF);
      return [value - high * HALF, high];
    });
    const product = times(own, by);
    for (const [index, limb] of limbs.entries()) {
      limb[cell] = (product[2 * index] ?? 0) + (product[2 * index + 1] ?? 0) * HALF;
    }
    if (product.slice(2 * limbs.length).some((digit) => digit !== 0)) {
      throw new RangeError("A weighted count outgrew the block it is kept in.");
    }
  }
}

/** In base 2^24, the lowest first. */
function digitsOf(number: bigint): number[] {
  const digits: number[] = [];
  for (let rest = number; rest > 0n || digits.length === 0; rest >>= 24n) digits.push(Number(rest & 0xffffffn));
  return digits;
}

function times(first: readonly number[], second: readonly number[]): number[] {
  const product = new Array<number>(first.length + second.length).fill(0);
  for (const [i, a] of first.entries()) {
    let over = 0;
    for (const [j, b] of second.entries()) {
      const sum = (product[i + j] as number) + a * b + over;
      over = Math.floor(sum / HALF);
      product[i + j] = sum - over * HALF;
    }
    product[i + second.length] = over;
  }
  return product;
}
