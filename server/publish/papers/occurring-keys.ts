/** server/publish/papers/occurring-keys.ts - a key of lines without what does not occur on its paper.
 *  May import: schema types, siblings. Asked last, once every line of the paper and of its notes is there. */
import type { Block, Line, Paper, PlainBlock, Span } from "../../../schema/paper.ts";
import { mapLines } from "./map-lines.ts";
import { joinedLines } from "./spans.ts";

/** Stands between the items of a key. */
const BETWEEN = "   ";

/** What an item that has no line and no sign explains: cells in which nothing is entered. */
export const EMPTY_CELLS = "empty: ";

/** The items one after another. */
export const keyLine = (items: readonly Line[]): Line => joinedLines(items, BETWEEN);

interface Occurring {
  standings: ReadonlySet<string>;
  signs: boolean;
  silent: boolean;
  nothing: boolean;
  emptyCells: boolean;
}

/** The blocks with every key cut down; a key of which nothing is left goes, and with it the words that lead up to it. */
export function withOccurringKeys(blocks: readonly Block[], notes: Paper["notes"]): Block[] {
  const occurring = occurringIn(blocks, notes);
  return cutKeys(blocks, occurring).map((block): Block => {
    if (block.is !== "beside") return block;
    return { ...block, left: cutKeys(block.left, occurring), right: cutKeys(block.right, occurring) };
  });
}

function cutKeys<B extends Block>(blocks: readonly B[], occurring: Occurring): B[] {
  const kept: B[] = [];
  for (const block of blocks) {
    if (!isKey(block)) {
      kept.push(block);
      continue;
    }
    const items = itemsIn(block.words).filter((item) => occurs(item, occurring));
    if (items.length > 0) kept.push({ ...block, words: keyLine(items) });
    else if (leadsOn(kept.at(-1))) kept.pop();
  }
  return kept;
}

type Paragraph = Extract<PlainBlock, { is: "paragraph" }>;

const isKey = <B extends Block>(block: B): block is B & Paragraph => block.is === "paragraph" && block.as === "key";

function leadsOn(block: Block | undefined): boolean {
  const last = block?.is === "paragraph" ? block.words.at(-1) : undefined;
  return last?.is === "words" && last.text.endsWith(":");
}

function itemsIn(line: Line): Line[] {
  const items: Line[] = [[]];
  for (const span of line) {
    if (span.is === "words" && span.text === BETWEEN) items.push([]);
    else items.at(-1)?.push(span);
  }
  return items;
}

function occurs(item: Line, { standings, signs, silent, nothing, emptyCells }: Occurring): boolean {
  const [first] = item;
  if (first === undefined) return false;
  if (first.is === "silent") return silent;
  if (first.is === "nothing") return nothing;
  if (first.is !== "words") return true;
  if (first.standing === "not settled") return signs || standings.has(first.standing);
  if (first.standing !== null) return standings.has(first.standing);
  return !first.text.startsWith(EMPTY_CELLS) || emptyCells;
}

function occurringIn(blocks: readonly Block[], notes: Paper["notes"]): Occurring {
  const spans: Span[] = [];
  const gather = (line: Line): Line => {
    spans.push(...line);
    return line;
  };
  const flat = blocks.flatMap((block) => (block.is === "beside" ? [...block.left, ...block.right] : [block]));
  mapLines(
    flat.filter((block) => !isKey(block)),
    gather,
  );
  for (const { lines } of notes) for (const line of lines) gather(line);
  return {
    standings: new Set(spans.flatMap((span) => (span.is === "words" ? (span.standing ?? []) : []))),
    signs: spans.some(({ is }) => is === "sign"),
    silent: spans.some(({ is }) => is === "silent"),
    nothing: spans.some(({ is }) => is === "nothing"),
    emptyCells: flat.some((block) => block.is === "table" && block.as === "steps" && block.rows.some(hasEmptyCell)),
  };
}

/** The number of a step stands in the first cell, and a row below a step is no step. */
function hasEmptyCell({ shown, cells }: Extract<PlainBlock, { is: "table" }>["rows"][number]): boolean {
  return shown !== null && cells.slice(1).some((lines) => lines.every((line) => line.length === 0));
}
