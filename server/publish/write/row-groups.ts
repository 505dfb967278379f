/** server/publish/write/row-groups.ts - rows of a table that belong together: one step with what stands below it.
 *  May import: schema types. */
import type { Line, Paper } from "../../../schema/paper.ts";

type Table = Extract<Paper["blocks"][number], { is: "table" }>;
type Row = Table["rows"][number];

export interface RowGroup {
  /** Of a table of steps: the cell with the number, which is in no row then. Empty for other tables. */
  number: Line[];
  rows: (Pick<Row, "anchor" | "cells"> & {
    /** A row below the first that goes across: the words it rests on. */
    minor: boolean;
  })[];
  /** Characters in all of it. */
  length: number;
}

/** A row that shows no number and is of the same element as the one before belongs to that one. A row of fewer cells than
 *  there are columns goes across with its last. Throws RangeError for a row of none, or of more cells than columns. */
export function rowGroups(table: Table): RowGroup[] {
  const groups: RowGroup[] = [];
  let element: string | null = null;
  for (const row of table.rows) {
    const { anchor } = row;
    if (row.cells.length === 0 || row.cells.length > table.columns.length) {
      throw new RangeError(`A row of ${row.cells.length} cells stands in a table of ${table.columns.length} columns.`);
    }
    const numbered = table.as === "steps" && row.cells.length > 1;
    const number = numbered ? (row.cells[0] ?? []) : [];
    const cells = numbered ? row.cells.slice(1) : row.cells;
    const last = groups.at(-1);
    const length = row.cells.flat().reduce((sum, line) => sum + lengthOf(line), 0);
    const goesOn = last !== undefined && row.shown === null && row.element !== null && row.element === element;
    if (goesOn) {
      last.rows.push({ anchor, cells, minor: row.cells.length < table.columns.length });
      last.length += length;
    } else groups.push({ number, rows: [{ anchor, cells, minor: false }], length });
    element = row.element;
  }
  return groups;
}

function lengthOf(line: Line): number {
  return line.reduce((sum, span) => sum + (span.is === "words" ? span.text.length : 2), 0);
}
