/** server/publish/write/docx/docx-table.ts - a table in a letter: head repeated on each page, a step kept together.
 *  May import: docx, schema types, siblings, the room above. */
import {
  type Paragraph,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  Paragraph as TextParagraph,
  TextRun,
  WidthType,
} from "docx";
import type { Block, Line } from "../../../../schema/paper.ts";
import { type RowGroup, rowGroups } from "../row-groups.ts";
import type { DocxLines } from "./docx-lines.ts";
import { twips } from "./twips.ts";

type TableBlock = Extract<Block, { is: "table" }>;
type MakeParagraph = (style: string, line: Line, place: string | null) => Paragraph;

/** Names of the table styles, which `settled-archive.ts` puts beside the others. */
export const STEP_TABLE = "StepTable";
export const PLAIN_TABLE = "PlainTable";

/** A step longer than this many characters may part at the foot of a page. */
const TALL = 1400;
const NUMBER_COLUMN = 9;

export function docxTable(block: TableBlock, measure: number, lines: DocxLines, paragraph: MakeParagraph): Table {
  const numbered = block.as === "steps";
  const widths = columnWidths(block, measure);
  const groups = rowGroups(block);
  return new Table({
    style: numbered ? STEP_TABLE : PLAIN_TABLE,
    layout: TableLayoutType.FIXED,
    width: { size: measure, type: WidthType.DXA },
    columnWidths: widths,
    tableLook: { firstRow: true, noHBand: true, noVBand: true },
    rows: [headRow(block, widths, lines), ...groups.flatMap((group) => groupRows(group, widths, numbered, paragraph))],
  });
}

function columnWidths({ as, columns }: TableBlock, measure: number): number[] {
  const first = as === "steps" ? twips(NUMBER_COLUMN) : null;
  const shared = first === null ? columns : columns.slice(1);
  const total = shared.reduce((sum, { share }) => sum + share, 0);
  const widths = shared.map(({ share }) => Math.floor(((measure - (first ?? 0)) * share) / total));
  return first === null ? widths : [first, ...widths];
}

function headRow({ columns }: TableBlock, widths: readonly number[], lines: DocxLines): TableRow {
  const cells = columns.map(({ name }, at) => {
    const head = new TextParagraph({ style: "TableHead", children: [new TextRun(lines.words(name))] });
    return new TableCell({ width: { size: widths[at] ?? 0, type: WidthType.DXA }, children: [head] });
  });
  return new TableRow({ tableHeader: true, cantSplit: true, children: cells });
}

function groupRows(
  group: RowGroup,
  widths: readonly number[],
  numbered: boolean,
  paragraph: MakeParagraph,
): TableRow[] {
  const whole = group.length <= TALL;
  return group.rows.map(({ anchor, cells, minor }, piece) => {
    const made = cells.map((cell, at) => {
      const place = at === 0 && (piece > 0 || !numbered) ? anchor : null;
      const span = at + 1 === cells.length ? widths.length - at - (numbered ? 1 : 0) : 1;
      const width = widths
        .slice(at + (numbered ? 1 : 0))
        .slice(0, span)
        .reduce((sum, one) => sum + one, 0);
      return new TableCell({
        width: { size: width, type: WidthType.DXA },
        ...(span > 1 ? { columnSpan: span } : {}),
        children: paragraphs(cell, minor ? "TableNote" : "TableText", place, paragraph),
      });
    });
    const number = numbered ? [numberCell(group, piece, anchor, widths[0] ?? 0, paragraph)] : [];
    return new TableRow({ cantSplit: whole, children: [...number, ...made] });
  });
}

function numberCell(
  group: RowGroup,
  piece: number,
  anchor: string | null,
  width: number,
  paragraph: MakeParagraph,
): TableCell {
  const children =
    piece === 0 ? paragraphs(group.number, "StepNumber", anchor, paragraph) : [paragraph("StepNumber", [], null)];
  return new TableCell({ width: { size: width, type: WidthType.DXA }, children });
}

/** A cell holds one paragraph at least; the first bears the name of the place. */
function paragraphs(cell: readonly Line[], style: string, place: string | null, paragraph: MakeParagraph): Paragraph[] {
  const lines = cell.length === 0 ? [[]] : cell;
  return lines.map((line, index) => paragraph(style, line, index === 0 ? place : null));
}
