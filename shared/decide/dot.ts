/** shared/decide/dot.ts - sums of products over the cells of a frontier, by the value a crux has there.
 *  May import: siblings in shared/decide. Numbers are cut into pieces of 16 bits: a product of two has 32, so that 2^21 of
 *  them add up in a double without loss. */
import type { Block } from "./blocks.ts";

const PIECES_IN_LIMB = 3;
const PIECE = 2 ** 16;
const CHUNK = 2 ** 20;

/** For each value, from 0 to `values`, exclusive: the sum over the cells that have it of the number there times the number
 *  of the cell each one leads to. */
export function sumsOfProducts(
  leading: Block,
  on: Block,
  cells: { to: Int32Array; value: Uint16Array },
  values: number,
): bigint[] {
  const sums = Array.from({ length: values }, () => 0n);
  for (let from = 0; from < leading.cells; from += CHUNK) {
    const end = Math.min(from + CHUNK, leading.cells);
    const value = cells.value.subarray(from, end);
    const left = piecesOf(leading, value.length, (index) => from + index);
    const right = piecesOf(on, value.length, (index) => cells.to[from + index] as number);
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
function piecesOf({ limbs }: Block, length: number, cellOf: (index: number) => number): Float64Array[] {
  const pieces: Float64Array[] = [];
  let used = 0;
  for (const limb of limbs) {
    const own = Array.from({ length: PIECES_IN_LIMB }, () => new Float64Array(length));
    let most = 0;
    for (let index = 0; index < length; index += 1) {
      const number = limb[cellOf(index)] as number;
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
