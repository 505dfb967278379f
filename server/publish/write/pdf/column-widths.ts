/** server/publish/write/pdf/column-widths.ts - how wide the columns of a table stand, so that it takes the least room.
 *  May import: schema types, siblings. The shares that a paper gives are where the search begins: a column that is nearly empty
 *  gives way to one that is full. Millimetres; type in points. */
import type { Line } from "../../../../schema/paper.ts";
import { heightOf, widthOfLetters } from "./estimate.ts";

export interface ColumnsAsked {
  /** What is wished for, with the names at the head. */
  columns: readonly { name: string; share: number }[];
  /** Cells of each row; where there are fewer than columns the last goes across the rest. */
  rows: readonly (readonly (readonly Line[])[])[];
  /** All of the room, and the space right of every column. */
  measure: number;
  gap: number;
  type: number;
  /** Letters' room that the end of a line leaves, since words are not parted: narrow columns lose the more by it. */
  ragged: number;
}

/** Parts of the measure that are moved from one column to another, coarse first. */
const STEPS = [0.08, 0.04, 0.02] as const;
/** No word is counted longer than this: a longer one is broken. */
const LONGEST = 16;
/** A column that has words keeps at least this part of what was wished. */
const LEAST = 0.36;

/** Widths with their gap, in the order of the columns; together the measure. The same table gives the same widths. */
export function columnWidths({ columns, rows, measure, gap, type, ragged }: ColumnsAsked): number[] {
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const wished = columns.map(({ share }) => (measure * share) / total);
  const least = columns.map(({ name }, at) => leastWidth({ name, at, wish: wished[at] ?? 0 }, rows, { gap, type }));
  const room = (widths: readonly number[]): number =>
    rows.reduce((sum, cells) => sum + heightOfRow(cells, widths, { gap, type, ragged }), 0);
  let best = wished;
  let height = room(best);
  for (const step of STEPS) {
    for (let moved = true; moved; ) {
      moved = false;
      for (const from of columns.keys()) {
        for (const to of columns.keys()) {
          const widths = best.map((width, at) => width + (at === to ? 1 : at === from ? -1 : 0) * step * measure);
          if (from === to || (widths[from] ?? 0) < (least[from] ?? 0)) continue;
          const tried = room(widths);
          if (tried < height - 0.01) {
            [best, height, moved] = [widths, tried, true];
          }
        }
      }
    }
  }
  return best;
}

/** Room for the longest word, and for the name at the head. */
function leastWidth(
  { name, at, wish }: { name: string; at: number; wish: number },
  rows: ColumnsAsked["rows"],
  { gap, type }: Pick<ColumnsAsked, "gap" | "type">,
): number {
  const lines = rows.flatMap((cells) =>
    at + 1 < cells.length || rows.every((row) => row.length === cells.length) ? (cells[at] ?? []) : [],
  );
  const parts = [name, ...lines.flat().flatMap(partsOf)];
  const longest = Math.max(...parts.map((part) => Math.min(LONGEST, part.length)));
  const word = widthOfLetters(longest + 1, type) + gap;
  return lines.length === 0 ? Math.min(wish, word) : Math.min(wish, Math.max(word, wish * LEAST));
}

/** What is not broken: words, and of a reference what stands between its commas. */
function partsOf(span: Line[number]): string[] {
  if (span.is !== "words") return [];
  return span.as === "reference" ? span.text.split(/(?<=[,;]) /u) : span.text.split(" ");
}

function heightOfRow(
  cells: readonly (readonly Line[])[],
  widths: readonly number[],
  { gap, type, ragged }: Pick<ColumnsAsked, "gap" | "type" | "ragged">,
): number {
  return Math.max(0, ...cells.map((cell, at) => heightOf(cell, widthAt(cells, widths, at) - gap, type, ragged)));
}

/** Of a cell: that of its column, or of all columns from there on for the last of a short row. */
export function widthAt(cells: readonly unknown[], widths: readonly number[], at: number): number {
  return at + 1 < cells.length ? (widths[at] ?? 0) : widths.slice(at).reduce((sum, width) => sum + width, 0);
}
