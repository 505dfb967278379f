/** server/publish/write/docx/write-docx.ts - a paper as a letter for word processors, in named styles that a publisher can
 *  set anew, with real notes.
 *  May import: docx, schema types, siblings, the room above. The same paper gives the same bytes. */
import {
  AlignmentType,
  Document,
  Footer,
  Header,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  Tab,
  TextRun,
} from "docx";
import type { Block, Paper } from "../../../../schema/paper.ts";
import { pointsOfFamilies } from "../face-files.ts";
import { withLevelsInOrder } from "../heading-levels.ts";
import { languageTag } from "../language-tag.ts";
import { type Look, middleLook } from "../look-of.ts";
import { type PaperPlaces, plainBlocks } from "../paper-places.ts";
import { missingSentence, Printable } from "../printable.ts";
import { footWords, headWords } from "../running-words.ts";
import { DocxBlocks, measureOf } from "./docx-blocks.ts";
import { DocxLines } from "./docx-lines.ts";
import { UsedRuns } from "./run-styles.ts";
import { settledArchive } from "./settled-archive.ts";
import { rightTab, styleSheet } from "./style-sheet.ts";
import { twips } from "./twips.ts";

export async function writeDocx(paper: Paper, places: PaperPlaces): Promise<Uint8Array> {
  const used = new UsedRuns();
  const printable = new Printable(pointsOfFamilies());
  const lines = new DocxLines(paper, places, printable, used);
  const look = middleLook(paper);
  const measure = measureOf(look);
  const inOrder = withLevelsInOrder(paper.blocks);
  const headings = plainBlocks(inOrder).filter((block) => block.is === "heading");
  const blocks = new DocxBlocks(lines, headings, contentsPlaces(paper, headings, lines));
  const children = blocks.all(inOrder, measure);
  const notes = Object.fromEntries(
    places.notes.map(({ number, lines: own }) => [
      number,
      { children: own.map((line) => blocks.paragraph(paper.notesAt === "end" ? "EndnoteText" : "FootnoteText", line)) },
    ]),
  );
  const margins = { headers: headers(paper, lines, measure), footers: footers(paper, lines, measure) };
  if (printable.missing.length > 0) {
    const sentence = missingSentence(printable.missing, false);
    children.push(new Paragraph({ style: "OpenPlace", children: [new TextRun(sentence)] }));
  }
  const document = new Document({
    title: lines.words(paper.title),
    creator: lines.words(paper.work.author),
    description: lines.words(paper.work.title),
    lastModifiedBy: "Passagework",
    styles: styleSheet(look, languageTag(paper.language), used),
    numbering: { config: [dashes(), numbers()] },
    ...(paper.notesAt === "end" ? { endnotes: notes } : { footnotes: notes }),
    sections: [{ ...margins, properties: { titlePage: true, page: pageOf(look) }, children }],
  });
  const bytes = await Packer.toBuffer(document);
  return settledArchive(bytes, { issued: paper.edition?.issued ?? null, language: paper.language });
}

/** Names for the headings that the contents lead to. Nothing where a paper has no contents. */
function contentsPlaces(paper: Paper, headings: readonly Block[], lines: DocxLines): Map<Block, string> {
  const places = new Map<Block, string>();
  const has = paper.blocks.some(({ is }) => is === "contents");
  if (!has) return places;
  for (const [index, block] of headings.entries()) {
    if (block.is !== "heading" || block.anchor !== null) continue;
    const place = `contents ${index + 1}`;
    lines.namePlace(place);
    places.set(block, place);
  }
  return places;
}

function pageOf({ page }: Look) {
  const margin = {
    top: twips(page.top),
    bottom: twips(page.bottom),
    left: twips(page.left),
    right: twips(page.right),
    header: twips(page.top * 0.5),
    footer: twips(page.bottom * 0.5),
  };
  return { size: { width: twips(page.width), height: twips(page.height) }, margin };
}

function headers(paper: Paper, lines: DocxLines, measure: number) {
  const left = new TextRun({ text: lines.words(headWords(paper.running.left)), style: "EmphasisedWords" });
  const right = new TextRun(lines.words(headWords(paper.running.right)));
  const head = running("RunningHead", [left, new TextRun({ children: [new Tab()] }), right], measure);
  return {
    default: new Header({ children: [head] }),
    first: new Header({ children: [new Paragraph({ children: [] })] }),
  };
}

function footers(paper: Paper, lines: DocxLines, measure: number) {
  const foot = () =>
    running(
      "RunningFoot",
      [
        new TextRun(lines.words(footWords(paper))),
        new TextRun({ children: [new Tab(), PageNumber.CURRENT, " of ", PageNumber.TOTAL_PAGES] }),
      ],
      measure,
    );
  return { default: new Footer({ children: [foot()] }), first: new Footer({ children: [foot()] }) };
}

function running(style: string, children: TextRun[], measure: number): Paragraph {
  return new Paragraph({ style, tabStops: rightTab(measure, false), children });
}

const indent = { left: twips(5), hanging: twips(5) };

function dashes() {
  const level = {
    level: 0,
    format: LevelFormat.BULLET,
    text: "–",
    alignment: AlignmentType.LEFT,
    style: { paragraph: { indent } },
  };
  return { reference: "dashes", levels: [level] };
}

function numbers() {
  const level = {
    level: 0,
    format: LevelFormat.DECIMAL,
    text: "%1.",
    alignment: AlignmentType.LEFT,
    style: { paragraph: { indent } },
  };
  return { reference: "numbers", levels: [level] };
}
