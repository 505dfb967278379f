/** shared/decide/dot.ts - sums of products over the cells of a frontier, by the value a crux has there.
 *  May import: siblings in shared/decide. Numbers are cut into pieces of 16 bits: a product of two has 32, so that 2^21 of
 *  them add up in a double without loss. */
import type { Block } from "./blocks.ts";

const PIECES_IN_LIMB = 3;
const PIECE = 2 ** 16;
const CHUNK = 2 ** 20;

/** Cells where both numbers are not 0: `first` in one block, `second` in the other, under this value. */
export interface Pairs {
  first: Int32Array;
  second: Int32Array;
  value: Uint16Array;
}

/** The sum for each value, from 0 to `values`, exclusive. */
export function sumsOfProducts(one: Block, other: Block, pairs: Pairs, values: number): bigint[] {
  const sums = Array.from({ length: values }, () => 0n);
  for (let from = 0; from < pairs.first.length; from += CHUNK) {
    const to = Math.min(from + CHUNK, pairs.first.length);
    const left = piecesOf(one, pairs.first.subarray(from, to));
    const right = piecesOf(other, pairs.second.subarray(from, to));
    const value = pairs.value.subarray(from, to);
    for (const [i, a] of left.entries()) {
      for (const [j, b] of right.entries()) {
        const partial = new Float64Array(values);
        for (let pair = 0; pair < value.length; pair += 1) {
          const own = value[pair] as number;
          partial[own] = (partial[own] as number) + (a[pair] as number) * (b[pair] as number);
        }
        for (const [own, sum] of partial.entries()) {
          sums[own] = (sums[own] as bigint) + (BigInt(sum) << BigInt(16 * (i + j)));
        }
      }
    }
  }
  return sums;
}

/** The numbers of these cells in pieces, the lowest first; pieces that are 0 everywhere at the top are left out. */
function piecesOf({ limbs }: Block, cells: Int32Array): Float64Array[] {
  const pieces: Float64Array[] = [];
  let used = 0;
  for (const limb of limbs) {
    const own = Array.from({ length: PIECES_IN_LIMB }, () => new Float64Array(cells.length));
    let most = 0;
    for (let index = 0; index < cells.length; index += 1) {
      const number = limb[cells[index] as number] as number;
      const above = Math.floor(number / PIECE);
      const top = Math.floor(above / PIECE);
      (own[0] as Float64Array)[index] = number - above * PIECE;
      (own[1] as Float64Array)[index] = above - top * PIECE;
      (own[2] as Float64Array)[index] = top;
      most = Math.max(most, number);
    }
    pieces.push(...own);
    if (most > 0) used = pieces.length - (most < PIECE ? 2 : most < PIECE * PIECE ? 1 : 0);
  }
  return pieces.slice(0, used);
}
