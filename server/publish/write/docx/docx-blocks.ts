/** server/publish/write/docx/docx-blocks.ts - blocks of a paper as paragraphs and tables of a letter.
 *  May import: docx, schema types, siblings, the room above. */
import {
  AlignmentType,
  BorderStyle,
  HeadingLevel,
  InternalHyperlink,
  type IParagraphOptions,
  PageReference,
  Paragraph,
  type ParagraphChild,
  Tab,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  WidthType,
} from "docx";
import type { Block, Line, PlainBlock } from "../../../../schema/paper.ts";
import { besideWidth } from "../figure-size.ts";
import { leadsIn } from "../leading-blocks.ts";
import type { Look } from "../look-of.ts";
import { SOFT } from "../print-colours.ts";
import { figureRun } from "./docx-figure.ts";
import type { DocxLines } from "./docx-lines.ts";
import { docxTable } from "./docx-table.ts";
import { lineTab, rightTab } from "./style-sheet.ts";
import { twips } from "./twips.ts";

type Of<Is extends Block["is"]> = Extract<Block, { is: Is }>;
type Runs = ReturnType<DocxLines["runs"]>;
export type Flow = (Paragraph | Table)[];

const PARAGRAPHS: Record<Of<"paragraph">["as"], string> = {
  body: "PaperBody",
  lead: "Lead",
  small: "Small",
  quote: "Quotation",
  caution: "Caution",
  open: "OpenPlace",
  key: "Key",
};

const HEADINGS = [HeadingLevel.HEADING_1, HeadingLevel.HEADING_2, HeadingLevel.HEADING_3, HeadingLevel.HEADING_4];

const ENTRIES: Record<Of<"entries">["as"], { first: string; more: string; signed: boolean }> = {
  apparatus: { first: "Apparatus", more: "ApparatusMore", signed: true },
  questions: { first: "OpenQuestion", more: "ApparatusMore", signed: true },
  sigla: { first: "Siglum", more: "EntryMore", signed: true },
  glossary: { first: "GlossaryEntry", more: "EntryMore", signed: false },
  index: { first: "IndexEntry", more: "EntryMore", signed: false },
  bibliography: { first: "BibliographyEntry", more: "EntryMore", signed: false },
};

type WordsRole = Extract<Line[number], { is: "words" }>["as"];

/** What the head words of entries are: signs refer to places, head words of a glossary are strong. */
const HEADS: Partial<Record<Of<"entries">["as"], WordsRole>> = {
  apparatus: "reference",
  questions: "reference",
  sigla: "reference",
  glossary: "strong",
};

export class DocxBlocks {
  readonly #lines: DocxLines;
  readonly #headings: readonly Of<"heading">[];
  readonly #places: ReadonlyMap<Block, string>;
  #lists = 0;
  #figures = 0;

  /** `places` are the names of headings in the contents. */
  constructor(lines: DocxLines, headings: readonly Of<"heading">[], places: ReadonlyMap<Block, string>) {
    this.#lines = lines;
    this.#headings = headings;
    this.#places = places;
  }

  /** Blocks in a column of `measure` twips; what leads another in stays with it. */
  all(blocks: readonly Block[], measure: number): Flow {
    return blocks.flatMap((block, index) => {
      if (block.is === "paragraph" && leadsIn(block, blocks[index - 1])) {
        return [this.paragraph(PARAGRAPHS[block.as], block.words, null, { keepNext: true })];
      }
      return this.block(block, measure);
    });
  }

  block(block: Block, measure: number): Flow {
    return block.is === "beside" ? [this.#beside(block, measure)] : this.plain(block, measure);
  }

  plain(block: PlainBlock, measure: number): Flow {
    switch (block.is) {
      case "heading":
        return [this.#heading(block)];
      case "paragraph":
        return [this.paragraph(PARAGRAPHS[block.as], block.words)];
      case "list":
        return this.#list(block);
      case "facts":
        return block.rows.map(({ name, words }) => {
          const said = new TextRun({ text: this.#lines.words(name), style: "Aside" });
          return this.#hanging("Fact", [said], this.#lines.runs(words), false);
        });
      case "table":
        return [
          ...(block.caption.length === 0 ? [] : [this.paragraph("TableCaption", block.caption)]),
          docxTable(block, measure, this.#lines, (style, line, place, keepNext) =>
            this.paragraph(style, line, place, keepNext ? { keepNext } : {}),
          ),
          new Paragraph({ style: "Small", children: [] }),
        ];
      case "calls":
        return block.items.flatMap((item) => this.#call(item));
      case "figure":
        return this.#figure(block, measure);
      case "entries":
        return block.items.flatMap((item) => this.#entry(item, block.as));
      case "writing":
        return Array.from({ length: block.lines }, () => this.#writingLine(measure));
      case "contents":
        return this.#contents(block.depth, measure);
      case "page break":
        return [new Paragraph({ pageBreakBefore: true, spacing: { after: 0 }, children: [] })];
    }
  }

  paragraph(style: string, line: Line, place: string | null = null, more: Partial<IParagraphOptions> = {}): Paragraph {
    return this.#ofRuns(style, this.#lines.runs(line, place), this.#lines.isRightToLeft(line), more);
  }

  #ofRuns(style: string, children: Runs, rightToLeft: boolean, more: Partial<IParagraphOptions> = {}): Paragraph {
    const direction = rightToLeft ? { bidirectional: true } : {};
    return new Paragraph({ style, ...direction, ...more, children: children as ParagraphChild[] });
  }

  /** A name or sign at the left and words hanging beside it. */
  #hanging(style: string, head: Runs, body: Runs, rightToLeft: boolean): Paragraph {
    return this.#ofRuns(style, [...head, new TextRun({ children: [new Tab()] }), ...body], rightToLeft);
  }

  #heading(block: Of<"heading">): Paragraph {
    const place = block.anchor ?? this.#places.get(block) ?? null;
    const children = this.#lines.runs(block.words, place) as ParagraphChild[];
    const heading = HEADINGS[block.level - 1] ?? HeadingLevel.HEADING_4;
    return new Paragraph({ heading, children });
  }

  #list({ ordered, items }: Of<"list">): Flow {
    this.#lists += 1;
    const instance = this.#lists;
    return items.map(({ words }) =>
      this.paragraph("ListParagraph", words, null, {
        numbering: { reference: ordered ? "numbers" : "dashes", level: 0, instance },
      }),
    );
  }

  #call({ shown, call, acts = [], when, where }: Of<"calls">["items"][number]): Flow {
    const number = new TextRun({ text: this.#lines.words(shown ?? ""), style: "Reference" });
    const beside = [when, where].filter((line) => line.length > 0).map((line) => this.#lines.runs(line));
    const told = beside.flatMap((runs, index) =>
      index === 0 ? runs : [new TextRun({ text: "  ·  ", color: SOFT }), ...runs],
    );
    return [
      ...(call.length === 0 ? [] : [this.#hanging("Call", [number], this.#lines.runs(call), false)]),
      ...acts.map((line) => this.paragraph("CallAct", line)),
      this.#ofRuns("CallWhen", told, false),
    ];
  }

  #figure(block: Of<"figure">, measure: number): Flow {
    this.#figures += 1;
    const alternative = this.#lines.words(block.alternative);
    const run = figureRun(block, { number: this.#figures, measure, alternative });
    const runs = block.anchor === null ? [run] : this.#lines.marked(block.anchor, [run]);
    const picture = this.#ofRuns("Figure", runs, false, { keepNext: block.caption.length > 0 });
    if (block.caption.length === 0) return [picture];
    return [picture, this.paragraph("PaperCaption", block.caption, null, { alignment: AlignmentType.CENTER })];
  }

  #entry({ anchor, head, lines }: Of<"entries">["items"][number], as: Of<"entries">["as"]): Flow {
    const { first, more, signed } = ENTRIES[as];
    const [own = [], ...others] = lines;
    const between = signed ? [new TextRun({ children: [new Tab()] })] : lines.length === 0 ? [] : [new TextRun("  ")];
    const headRuns = this.#lines.runs(headed(head, HEADS[as] ?? null), anchor);
    const start = this.#ofRuns(
      first,
      [...headRuns, ...between, ...this.#lines.runs(own)],
      this.#lines.isRightToLeft(head),
    );
    return [start, ...others.map((line) => this.paragraph(more, line))];
  }

  #writingLine(measure: number): Paragraph {
    const children = [new TextRun({ children: [new Tab()] })];
    return new Paragraph({ style: "WritingLine", tabStops: lineTab(measure), children });
  }

  #beside({ columns = "margin", left, right }: Of<"beside">, measure: number): Table {
    const gap = twips(8);
    const first =
      columns === "figures"
        ? measure - gap - twips(besideWidth(right, (measure / 1440) * 25.4, 1))
        : Math.round((measure - gap) * (columns === "alike" ? 0.5 : 0.6));
    const second = measure - gap - first;
    const none = { style: BorderStyle.NONE, size: 0, color: "auto" };
    const borders = { top: none, bottom: none, left: none, right: none };
    const cell = (blocks: readonly PlainBlock[], width: number, margin: number): TableCell =>
      new TableCell({
        borders,
        width: { size: width + margin, type: WidthType.DXA },
        margins: { right: margin, left: 0 },
        children: blocks.flatMap((block) => this.plain(block, width)),
      });
    return new Table({
      layout: TableLayoutType.FIXED,
      width: { size: measure, type: WidthType.DXA },
      columnWidths: [first + gap, second],
      borders: { ...borders, insideHorizontal: none, insideVertical: none },
      rows: [new TableRow({ children: [cell(left, first, gap), cell(right, second, 0)] })],
    });
  }

  /** The headings with their pages, which are counted when the letter is opened. */
  #contents(depth: number, measure: number): Paragraph[] {
    return this.#headings
      .filter(({ level }) => level <= depth)
      .map((block) => {
        const place = block.anchor ?? this.#places.get(block) ?? "";
        const anchor = this.#lines.nameOf(place);
        if (anchor === null) throw new RangeError("Every heading in the contents has a place.");
        const text = block.words.map((span) => (span.is === "words" ? this.#lines.words(span.text) : "")).join("");
        const runs = [new TextRun(text), new TextRun({ children: [new Tab()] }), new PageReference(anchor)];
        return new Paragraph({
          style: `TOC${block.level}`,
          tabStops: rightTab(measure, true),
          children: [new InternalHyperlink({ anchor, children: runs })],
        });
      });
  }
}

/** Words without a role of their own are of this one. */
function headed(line: Line, as: WordsRole): Line {
  return line.map((span) => (span.is === "words" && span.as === null ? { ...span, as } : span));
}

/** Width between the margins, in twips. */
export function measureOf({ page }: Look): number {
  return twips(page.width - page.left - page.right);
}
