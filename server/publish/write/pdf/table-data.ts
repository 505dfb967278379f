/** server/publish/write/pdf/table-data.ts - a table as the data its pages are set from: which rows stand together on a page,
 *  and which are too tall for that.
 *  May import: schema types, siblings, the room above. */
import type { Block, Line } from "../../../../schema/paper.ts";
import type { Look } from "../look-of.ts";
import { type RowGroup, rowGroups } from "../row-groups.ts";
import { columnWidths, widthAt } from "./column-widths.ts";
import { heightOf, rowPieces } from "./estimate.ts";

type TableBlock = Extract<Block, { is: "table" }>;

export interface PlacesInPages {
  /** The name as it is, where something leads to it; else null. */
  placeOf(anchor: string | null): string | null;
  /** Where a note stands in the list of notes, from 0; null where notes are not at the foot of pages. */
  noteAtFoot(id: string): number | null;
  linesOfNote(index: number): readonly Line[];
}

export interface SetTable<LineData> {
  /** Of the measure less the column of numbers, a share each. */
  shares: number[];
  groups: GroupData<LineData>[];
}

export interface GroupData<LineData> {
  number: LineData[];
  tall: boolean;
  rows: RowData<LineData>[];
}

interface RowData<LineData> {
  /** A place of its own, so that it can be told on which page it stands; null in a group that stands on one page. */
  name: string | null;
  anchor: string | null;
  minor: boolean;
  breakable: boolean;
  cells: LineData[][];
  /** Places in the list of notes, from 0, of those that hang from the row: all of a group from its last, unless it is tall. */
  notes: number[];
}

/** Type of notes, in parts of the base. */
const NOTE_TYPE = 0.85;
/** Space right of every column, as the template has it. */
const GAP = 3;
/** Letters' room at the end of lines, on a sheet that is fitted to its pages. Where notes hang from rows, the pieces of rows leave
 *  room for them by their own measure, and columns are not made to fill it. */
const RAGGED = 3;
/** Of the body of a page: a step taller than the first, or than the second with its notes, may part, into pieces no taller
 *  than the third where its lines allow; a piece taller than the fourth may part within a line's paragraph. */
const WHOLE = 0.5;
const WHOLE_WITH_NOTES = 0.24;
const PIECE = 0.2;
const TALLEST_PIECE = 0.6;

export class TableData {
  readonly #look: Look;
  #names = 0;

  readonly #places: PlacesInPages;

  constructor(look: Look, places: PlacesInPages) {
    this.#look = look;
    this.#places = places;
  }

  /** How wide its columns are, and its rows. `line` makes the data of a line. */
  table<LineData>(block: TableBlock, line: (line: Line) => LineData): SetTable<LineData> {
    const groups = rowGroups(block);
    const numbered = block.as === "steps";
    const { page, numberWidth, table } = this.#look;
    const measure = page.width - page.left - page.right - (numbered ? numberWidth : 0);
    const widths = columnWidths({
      columns: numbered ? block.columns.slice(1) : block.columns,
      rows: groups.flatMap(({ rows }) => rows.map(({ cells }) => cells)),
      measure,
      gap: GAP,
      type: table,
      ragged: this.#notesIn(block.rows.flatMap(({ cells }) => cells.flat())).length === 0 ? RAGGED : 0,
    });
    const shares = widths.map((width) => Math.round((width / measure) * 1000));
    return {
      shares: numbered ? [1, ...shares] : shares,
      groups: groups.map((group) =>
        this.#group(
          group,
          widths.map((width) => width - GAP),
          line,
        ),
      ),
    };
  }

  #group<LineData>(group: RowGroup, widths: readonly number[], line: (line: Line) => LineData): GroupData<LineData> {
    const { page, table } = this.#look;
    const body = page.height - page.top - page.bottom;
    const heightAt = (cells: readonly (readonly Line[])[]): number =>
      Math.max(0, ...cells.map((cell, at) => heightOf(cell, widthAt(cells, widths, at), table)));
    const words = group.rows.reduce((sum, { cells }) => sum + heightAt(cells), 0);
    const noted = this.#heightOfNotes([...group.number, ...group.rows.flatMap(({ cells }) => cells.flat())]);
    // The notes of a step stand on the page it stands on: with them it may be too tall to be kept whole.
    const tall = words > WHOLE * body || (noted > 0 && words + noted > WHOLE_WITH_NOTES * body);
    const rows = group.rows.flatMap(({ anchor, minor, cells }) => {
      const each = cells.map((_, at) => widthAt(cells, widths, at));
      const pieces = tall ? rowPieces(cells, each, table, PIECE * body) : [cells];
      return pieces.map((piece, index) => ({
        name: tall ? this.#newName() : null,
        anchor: index === 0 ? this.#places.placeOf(anchor) : null,
        minor,
        breakable: heightAt(piece) > TALLEST_PIECE * body,
        cells: piece.map((cell) => cell.map(line)),
        notes: this.#notesIn(piece.flat()),
      }));
    });
    if (!tall) hangFromLast(rows, this.#notesIn(group.number));
    return { number: group.number.map(line), tall, rows };
  }

  #newName(): string {
    this.#names += 1;
    return `row ${this.#names}`;
  }

  #heightOfNotes(lines: readonly Line[]): number {
    const { page, base } = this.#look;
    const told = this.#notesIn(lines).flatMap((index) => this.#places.linesOfNote(index));
    return told.length === 0 ? 0 : heightOf(told, page.width - page.left - page.right, base * NOTE_TYPE);
  }

  #notesIn(lines: readonly Line[]): number[] {
    return lines.flat().flatMap((span) => (span.is === "note" ? (this.#places.noteAtFoot(span.note) ?? []) : []));
  }
}

/** A group that stands on one page has its notes at its lowest edge. */
function hangFromLast(rows: RowData<unknown>[], more: readonly number[]): void {
  const all = [...more, ...rows.flatMap(({ notes }) => notes)];
  for (const [index, row] of rows.entries()) row.notes = index + 1 === rows.length ? all : [];
}
