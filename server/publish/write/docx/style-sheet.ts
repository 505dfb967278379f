/** server/publish/write/docx/style-sheet.ts - the named styles of a paper as letters, for a publisher to set anew.
 *  May import: docx, schema types, siblings. Every paragraph and run of a paper bears one of these names and nothing else, so
 *  that changing a style changes the paper. Sizes in half points, lengths in twentieths of a point. */
import {
  BorderStyle,
  type IParagraphStyleOptions,
  type IRunStylePropertiesOptions,
  type IStylesOptions,
  LeaderType,
  LineRuleType,
  TabStopType,
} from "docx";
import type { LanguageTag } from "../language-tag.ts";
import type { Look } from "../look-of.ts";
import { INK, RUBRIC, RULE, SOFT } from "../print-colours.ts";
import { PROGRAM_FACE, WRITTEN_FACE } from "./faces-of-runs.ts";
import { runStyles, type UsedRuns } from "./run-styles.ts";
import { twips } from "./twips.ts";

const HANGING = 26;

export function styleSheet(look: Look, language: LanguageTag | null, used: UsedRuns): IStylesOptions {
  const base = Math.round(look.base * 2);
  const part = (scale: number): number => Math.round(base * scale);
  const value = language === null ? "en-GB" : [language.language, language.region].filter(Boolean).join("-");
  const heading = (scale: number, before: number, italics: boolean) => ({
    run: { font: WRITTEN_FACE, size: part(scale), sizeComplexScript: part(scale), italics, bold: false, color: INK },
    paragraph: {
      keepNext: true,
      keepLines: true,
      spacing: { before, after: 80, line: 240, lineRule: LineRuleType.AUTO },
    },
  });
  return {
    default: {
      document: {
        run: {
          font: PROGRAM_FACE,
          size: base,
          sizeComplexScript: base,
          language: { value, bidirectional: "ar-SA" },
        },
        paragraph: { spacing: { after: 100, line: 254, lineRule: LineRuleType.AUTO } },
      },
      title: heading(look.title, 0, false),
      heading1: heading(look.title, 240, false),
      heading2: heading(1.32, 280, true),
      heading3: heading(1.12, 200, true),
      heading4: heading(1, 160, true),
      strong: { run: { bold: true } },
      listParagraph: { paragraph: { contextualSpacing: true } },
      hyperlink: { run: { color: INK, underline: {} } },
      footnoteText: {
        run: { size: part(0.85), sizeComplexScript: part(0.85) },
        paragraph: { spacing: { after: 30, line: 240, lineRule: LineRuleType.AUTO } },
      },
      endnoteText: {
        run: { size: part(0.9), sizeComplexScript: part(0.9) },
        paragraph: { spacing: { after: 40, line: 240, lineRule: LineRuleType.AUTO } },
      },
    },
    paragraphStyles: paragraphStyles(part),
    characterStyles: runStyles(used),
  };
}

type Part = (scale: number) => number;

function paragraphStyles(part: Part): IParagraphStyleOptions[] {
  const small = { size: part(0.85), sizeComplexScript: part(0.85) };
  const style = (
    id: string,
    name: string,
    run: IRunStylePropertiesOptions,
    paragraph: NonNullable<IParagraphStyleOptions["paragraph"]>,
  ): IParagraphStyleOptions => ({ id, name, basedOn: "Normal", quickFormat: true, run, paragraph });
  const hanging = (millimetres: number) => ({ left: twips(millimetres), hanging: twips(millimetres) });
  const contents = [1, 2, 3, 4].map((level) =>
    style(
      `TOC${level}`,
      `toc ${level}`,
      {},
      {
        indent: { left: (level - 1) * twips(5) },
        spacing: { after: 40 },
      },
    ),
  );
  return [
    style("PaperBody", "Paper body", {}, { spacing: { before: 60, after: 60 } }),
    style("Lead", "Lead", { size: part(1.08), sizeComplexScript: part(1.08) }, {}),
    style("Small", "Small", small, {}),
    style("Key", "Key to the lines", { ...small, color: SOFT }, {}),
    style(
      "Quotation",
      "Quotation",
      { font: WRITTEN_FACE, size: part(1.05) },
      { indent: { left: twips(6), right: twips(3) } },
    ),
    style(
      "OpenPlace",
      "Open place",
      {},
      {
        indent: { left: twips(3) },
        border: { left: { style: BorderStyle.SINGLE, size: 10, space: 6, color: RUBRIC } },
      },
    ),
    style(
      "Caution",
      "Caution",
      { font: WRITTEN_FACE, italics: true, italicsComplexScript: false },
      {
        keepLines: true,
        spacing: { before: 240 },
        border: { top: { style: BorderStyle.SINGLE, size: 6, space: 6, color: INK } },
      },
    ),
    style("PaperCaption", "Paper caption", { ...small, color: SOFT }, { keepLines: true, spacing: { after: 160 } }),
    style(
      "TableCaption",
      "Table caption",
      { ...small, color: SOFT },
      { keepNext: true, spacing: { before: 120, after: 60 } },
    ),
    style("Figure", "Figure", {}, { keepNext: true, alignment: "center", spacing: { before: 160, after: 80 } }),
    style("TableHead", "Table head", { ...small, color: SOFT }, { keepNext: true, spacing: { after: 20 } }),
    style("TableText", "Table text", {}, { spacing: { after: 20, line: 250, lineRule: LineRuleType.AUTO } }),
    style("TableNote", "Table note", small, { spacing: { after: 20, line: 250, lineRule: LineRuleType.AUTO } }),
    style(
      "StepNumber",
      "Step number",
      { color: RUBRIC, bold: true },
      { spacing: { after: 20, line: 250, lineRule: LineRuleType.AUTO } },
    ),
    style("Fact", "Fact", {}, { indent: hanging(HANGING), spacing: { after: 30 } }),
    style(
      "Call",
      "Call",
      { size: part(2), sizeComplexScript: part(2), bold: true },
      {
        keepNext: true,
        keepLines: true,
        indent: hanging(18),
        spacing: { before: 160, after: 0, line: 240, lineRule: LineRuleType.AUTO },
      },
    ),
    style(
      "CallAct",
      "What is done at a call",
      { size: part(1.4), sizeComplexScript: part(1.4) },
      { keepNext: true, keepLines: true, indent: { left: twips(18) }, spacing: { after: 0 } },
    ),
    style(
      "CallWhen",
      "When to call",
      { size: part(1.15), sizeComplexScript: part(1.15) },
      {
        indent: { left: twips(18) },
        border: { bottom: { style: BorderStyle.SINGLE, size: 4, space: 4, color: RULE } },
      },
    ),
    style("Apparatus", "Apparatus", {}, { indent: hanging(10), spacing: { after: 40 } }),
    style("ApparatusMore", "Apparatus, other readings", {}, { indent: { left: twips(10) }, spacing: { after: 40 } }),
    style("OpenQuestion", "Open question", {}, { indent: hanging(10), spacing: { after: 60 } }),
    style("Siglum", "Siglum", {}, { indent: hanging(16), spacing: { after: 40 } }),
    style("GlossaryEntry", "Glossary entry", {}, { indent: hanging(5), spacing: { after: 60 } }),
    style("BibliographyEntry", "Bibliography entry", {}, { indent: hanging(7), spacing: { after: 80 } }),
    style("IndexEntry", "Index entry", small, { indent: hanging(5), spacing: { after: 20 } }),
    style("EntryMore", "Entry, further line", {}, { indent: { left: twips(10) }, spacing: { after: 40 } }),
    style(
      "WritingLine",
      "Writing line",
      { color: RULE },
      { spacing: { before: 240, after: 0, line: 240, lineRule: LineRuleType.AUTO } },
    ),
    style("RunningHead", "Running head", { ...small, color: SOFT }, { spacing: { after: 0 } }),
    style("RunningFoot", "Running foot", { ...small, color: SOFT }, { spacing: { after: 0 } }),
    ...contents,
  ];
}

/** Right-hand tabs are given where a line is written: a style of this maker holds none. */
export function rightTab(measure: number, dotted: boolean) {
  const leader = dotted ? { leader: LeaderType.DOT } : {};
  return [{ type: TabStopType.RIGHT, position: measure, ...leader }];
}

export function lineTab(measure: number) {
  return [{ type: TabStopType.RIGHT, position: measure, leader: LeaderType.UNDERSCORE }];
}
