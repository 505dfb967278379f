/** server/publish/write/leading-blocks.ts - blocks that lead in what follows and must not be parted from it by the end of a
 *  page. May import: schema types. */
import type { Block, Line } from "../../../schema/paper.ts";

const SHORT_KINDS: ReadonlySet<string> = new Set(["small", "lead", "key"]);
/** A line below a heading leads in what follows when it has fewer letters than this. */
const SHORT = 400;

/** A heading does; so does a short line right below one. */
export function leadsIn(block: Block, before: Block | undefined): boolean {
  if (block.is === "heading") return true;
  return block.is === "paragraph" && before?.is === "heading" && SHORT_KINDS.has(block.as) && isShort(block.words);
}

function isShort(line: Line): boolean {
  return line.reduce((sum, span) => sum + (span.is === "words" ? span.text.length : 2), 0) < SHORT;
}
