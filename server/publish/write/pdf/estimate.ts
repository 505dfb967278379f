/** server/publish/write/pdf/estimate.ts - about how tall words will stand, before they are set.
 *  May import: schema types. Good enough to say what is kept on one page: a little too tall rather than too low. Lengths in
 *  millimetres, type in points. */
import type { Line, PlainBlock } from "../../../../schema/paper.ts";
import { linesOf } from "../paper-places.ts";

const POINT = 25.4 / 72;
/** Width of a letter and distance of two lines, in parts of the type. */
const LETTER = 0.5;
const LINE = 1.32;
/** Height of a line to write on, as the template has it. */
const WRITING = 8.5;

function lettersIn(line: Line): number {
  return line.reduce((sum, span) => sum + (span.is === "words" ? span.text.length : 2), 0);
}

/** So wide stand so many letters. */
export function widthOfLetters(count: number, type: number): number {
  return count * type * POINT * LETTER;
}

/** Height of lines one under another in a column of `width`. `ragged`: letters' room that the end of each line leaves. */
export function heightOf(lines: readonly Line[], width: number, type: number, ragged = 0): number {
  const letters = Math.max(1, width / (type * POINT * LETTER) - ragged);
  const count = lines.reduce((sum, line) => sum + Math.max(1, Math.ceil(lettersIn(line) / letters)), 0);
  return count * type * POINT * LINE;
}

export function heightOfBlocks(blocks: readonly PlainBlock[], width: number, type: number): number {
  return blocks.reduce((sum, block) => sum + heightOfBlock(block, width, type), 0);
}

function heightOfBlock(block: PlainBlock, width: number, type: number): number {
  if (block.is === "writing") return block.lines * WRITING;
  if (block.is === "figure") return Math.min(block.width, width) * 1.5;
  return heightOf(linesOf(block), width, type) + type * POINT;
}

/** A row in pieces of no more than `limit`, as far as its lines allow: each piece has all the cells, some of them empty. */
export function rowPieces(
  cells: readonly (readonly Line[])[],
  widths: readonly number[],
  type: number,
  limit: number,
): Line[][][] {
  const parted = cells.map((cell, at) => partedCell(cell, widths[at] ?? 0, type, limit));
  const count = Math.max(1, ...parted.map((pieces) => pieces.length));
  return Array.from({ length: count }, (_, piece) => parted.map((pieces) => pieces[piece] ?? []));
}

function partedCell(cell: readonly Line[], width: number, type: number, limit: number): Line[][] {
  const pieces: Line[][] = [];
  let filled = Number.POSITIVE_INFINITY;
  for (const line of cell) {
    const height = heightOf([line], width, type);
    if (filled + height > limit) {
      pieces.push([]);
      filled = 0;
    }
    pieces.at(-1)?.push(line);
    filled += height;
  }
  return pieces;
}
