/** server/publish/write/docx/docx-table.ts - a table in a letter: head repeated on each page, a step kept together.
 *  May import: docx, schema types, siblings, the room above. */
import {
  BorderStyle,
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
type MakeParagraph = (style: string, line: Line, place: string | null, keepNext: boolean) => Paragraph;

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
  const first = numbered ? 1 : 0;
  return group.rows.map(({ anchor, cells, minor }, piece) => {
    // Rows of one step stay together, and there is no rule between them.
    const keepNext = whole && piece + 1 < group.rows.length;
    const borders = piece === 0 ? {} : { borders: { top: { style: BorderStyle.NIL, size: 0, color: "auto" } } };
    const made = cells.map((cell, at) => {
      const span = at + 1 === cells.length ? widths.length - at - first : 1;
      const width = widths.slice(at + first, at + first + span).reduce((sum, one) => sum + one, 0);
      const place = at === 0 && (piece > 0 || !numbered) ? anchor : null;
      return new TableCell({
        width: { size: width, type: WidthType.DXA },
        ...borders,
        ...(span > 1 ? { columnSpan: span } : {}),
        children: paragraphs(cell, minor ? "TableNote" : "TableText", place, keepNext, paragraph),
      });
    });
    const number = piece === 0 ? group.number : [];
    const numberCell = new TableCell({
      width: { size: widths[0] ?? 0, type: WidthType.DXA },
      ...borders,
      children: paragraphs(number, "StepNumber", piece === 0 ? anchor : null, keepNext, paragraph),
    });
    return new TableRow({ cantSplit: whole, children: numbered ? [numberCell, ...made] : made });
  });
}

/** A cell holds one paragraph at least; the first bears the name of the place. */
function paragraphs(
  cell: readonly Line[],
  style: string,
  place: string | null,
  keepNext: boolean,
  paragraph: MakeParagraph,
): Paragraph[] {
  const lines = cell.length === 0 ? [[]] : cell;
  return lines.map((line, index) => paragraph(style, line, index === 0 ? place : null, keepNext));
}
