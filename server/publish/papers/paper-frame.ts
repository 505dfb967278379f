/** server/publish/papers/paper-frame.ts - what all papers have alike: format, running heads, the key to the lines, the caution.
 *  May import: schema types, shared/drill, siblings. */
import {
  type Line,
  PAPER_FORMAT,
  PAPER_FORMAT_VERSION,
  type Paper,
  type PaperAsk,
  type PlainBlock,
} from "../../../schema/paper.ts";
import { CAUTION } from "../../../shared/drill/caution.ts";
import type { Finished } from "./finish-paper.ts";
import { EMPTY_CELLS, keyLine, withOccurringKeys } from "./occurring-keys.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { lined, NOTHING, paragraph, SILENT, words } from "./spans.ts";

/** What one kind of paper says, before its notes are called. */
export interface PaperBody {
  title: string;
  /** At the head of the pages, at the right. */
  running: string;
  blocks: Paper["blocks"];
}

export function framed({ ask, book }: PaperContext, body: PaperBody, { blocks, notes }: Finished): Paper {
  const { id, title, author, invented } = book.work;
  return {
    format: PAPER_FORMAT,
    formatVersion: PAPER_FORMAT_VERSION,
    kind: ask.kind,
    size: ask.size,
    language: "en-GB",
    title: body.title,
    work: { id, title, author, invented },
    running: { left: title, right: body.running },
    edition: null,
    notesAt: ask.notesAt,
    blocks: withOccurringKeys(blocks, notes),
    notes,
  };
}

/** "3. The circle about the well". */
export function titleOf({ label, title }: { label: string; title: string }): string {
  return [label, title].filter((part) => part !== "").join(". ");
}

/** "3. The circle about the well, steps 3–5 of 7": a part that is cut says so in its title. */
export function titleOfPart({ drill, cut }: BuiltPart): string {
  return cut === null ? titleOf(drill.exercise) : `${titleOf(drill.exercise)}, ${cut}`;
}

export function occasionOf({ occasion }: PaperAsk): PlainBlock[] {
  return occasion.trim() === "" ? [] : [paragraph("lead", [words(occasion.trim())])];
}

/** How much of the exercise is treated, and what of that a cut leaves out. */
export function treatedBlock({ whole, cut, left: kept }: BuiltPart): PlainBlock {
  const { sentence } = whole.treated;
  const isWhole = sentence.startsWith("The whole ");
  const left = cut === null ? "" : ` On this paper: ${kept}.`;
  return paragraph(isWhole && cut === null ? "small" : "open", [words(`${sentence}${left}`)]);
}

export const cautionBlock = (): PlainBlock => paragraph("caution", [words(CAUTION)]);

/** How the lines under words are read: on every paper that has them, which keeps of it what occurs. `ofChanges`: its table tells
 *  only what changes. */
export function lineKey(ofChanges = false): PlainBlock {
  const key: Line[] = [
    [lined("the text states it", "stated")],
    [lined("the text implies it", "implied")],
    [lined("supplied by the editor", "supplied")],
    [lined("not settled", "not settled"), words(" †")],
    [SILENT, words(" the text does not say")],
    [NOTHING, words(" nothing is done")],
    [words(`${EMPTY_CELLS}${ofChanges ? "nothing entered; gait and hands stay as they were" : "nothing entered"}`)],
  ];
  return paragraph("key", keyLine(key));
}

/** For papers that have few lines: only what is open, and what the text does not say. */
export function openKey(): PlainBlock {
  const key: Line[] = [
    [lined("not settled", "not settled"), words(" †")],
    [SILENT, words(" the text does not say")],
  ];
  return paragraph("key", keyLine(key));
}
