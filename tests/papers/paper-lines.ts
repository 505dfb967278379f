/** Papers read back for tests: every line in reading order, and its words. */
import { type Block, type Line, Paper, type PlainBlock, type Span } from "../../schema/paper.ts";
import type { Outcome } from "../../server/errors.ts";
import { linesOf, placesOf, plainBlocks } from "../../server/publish/write/paper-places.ts";

/** The paper, checked against its schema and for links that lead nowhere. Throws with the sentence of a refusal. */
export function printed(outcome: Outcome<Paper>): Paper {
  if (!outcome.ok) throw new Error(outcome.refusal.error.sentence);
  const paper = Paper.parse(outcome.value);
  const { dangling } = placesOf(paper);
  if (dangling.length > 0) throw new Error(`Leads nowhere: ${dangling.join("; ")}`);
  return paper;
}

/** The words of a line: "· · ·" where the text does not say, "—" where nothing is done, signs as they are, calls of notes left out. */
export function plain(line: Line): string {
  const said: { [is in Span["is"]]: (span: Span) => string } = {
    words: (span) => (span.is === "words" ? span.text : ""),
    silent: () => "· · ·",
    nothing: () => "—",
    sign: (span) => (span.is === "sign" ? span.sign : ""),
    note: () => "",
  };
  return line.map((span) => said[span.is](span)).join("");
}

export function blocksOf(paper: Paper): PlainBlock[] {
  return plainBlocks(paper.blocks);
}

export function allLines(blocks: readonly Block[]): string[] {
  return plainBlocks(blocks).flatMap(linesOf).map(plain);
}

/** All the words of the paper and its notes, a line each. */
export function wordsOf(paper: Paper): string {
  return [...allLines(paper.blocks), ...paper.notes.flatMap(({ lines }) => lines.map(plain))].join("\n");
}

export function blocksThat<K extends PlainBlock["is"]>(paper: Paper, is: K): Extract<PlainBlock, { is: K }>[] {
  return blocksOf(paper).filter((block): block is Extract<PlainBlock, { is: K }> => block.is === is);
}

/** Rows of the tables of steps. */
export function stepRowsOf(paper: Paper) {
  return blocksThat(paper, "table")
    .filter(({ as }) => as === "steps")
    .flatMap(({ rows }) => rows);
}
