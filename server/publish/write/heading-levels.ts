/** server/publish/write/heading-levels.ts - headings without gaps in their levels, as who hears a paper read needs them.
 *  May import: schema types. */
import type { Block, PlainBlock } from "../../../schema/paper.ts";

/** The first heading is of level 1, and none is more than one below the heading before it: 1, 3, 4 becomes 1, 2, 3. */
export function withLevelsInOrder(blocks: readonly Block[]): Block[] {
  let above = 0;
  const mended = (block: PlainBlock): PlainBlock => {
    if (block.is !== "heading") return block;
    above = Math.min(block.level, above + 1);
    return { ...block, level: above };
  };
  return blocks.map((block) =>
    block.is === "beside" ? { ...block, left: block.left.map(mended), right: block.right.map(mended) } : mended(block),
  );
}
