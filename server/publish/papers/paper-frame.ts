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
import type { BuiltPart } from "./paper-part.ts";
import { joinedLines, lined, NOTHING, paragraph, SILENT, words } from "./spans.ts";

export interface PaperBody {
  title: string;
  blocks: Paper["blocks"];
  notes: Paper["notes"];
  /** At the head of the pages, at the right. */
  running: string;
}

export function framed(ask: PaperAsk, parts: readonly BuiltPart[], body: PaperBody): Paper {
  const [first] = parts;
  if (first === undefined) throw new RangeError("A paper has at least one part.");
  const { work } = first.drill;
  return {
    format: PAPER_FORMAT,
    formatVersion: PAPER_FORMAT_VERSION,
    kind: ask.kind,
    size: ask.size,
    language: "en-GB",
    title: body.title,
    work,
    running: { left: work.title, right: body.running },
    edition: null,
    notesAt: ask.notesAt,
    blocks: body.blocks,
    notes: body.notes,
  };
}

/** "3. The circle about the well". */
export function titleOf({ label, title }: { label: string; title: string }): string {
  return [label, title].filter((part) => part !== "").join(". ");
}

export function occasionOf({ occasion }: PaperAsk): PlainBlock[] {
  return occasion.trim() === "" ? [] : [paragraph("lead", [words(occasion.trim())])];
}

export const cautionBlock = (): PlainBlock => paragraph("caution", [words(CAUTION)]);

/** How the lines under words are read: on every paper that has them. */
export function lineKey(): PlainBlock {
  const key: Line[] = [
    [lined("the text states it", "stated")],
    [lined("the text implies it", "implied")],
    [lined("supplied by the editor", "supplied")],
    [lined("not settled", "not settled"), words(" †")],
    [SILENT, words(" the text does not say")],
    [NOTHING, words(" nothing is done")],
    [words("empty: nothing entered")],
  ];
  return paragraph("key", joinedLines(key, "   "));
}
