/** server/publish/papers/map-lines.ts - every line of a paper's blocks, in the order it is read.
 *  May import: schema types. */
import type { Block, Line, PlainBlock } from "../../../schema/paper.ts";

/** The blocks with each line as `change` gives it; it is asked in reading order. */
export function mapLines(blocks: readonly Block[], change: (line: Line) => Line): Block[] {
  return blocks.map((block): Block => {
    if (block.is !== "beside") return mapBlock(block, change);
    const left = block.left.map((inner) => mapBlock(inner, change));
    return { ...block, left, right: block.right.map((inner) => mapBlock(inner, change)) };
  });
}

function mapBlock(block: PlainBlock, change: (line: Line) => Line): PlainBlock {
  switch (block.is) {
    case "heading":
    case "paragraph":
      return { ...block, words: change(block.words) };
    case "list":
      return { ...block, items: block.items.map((item) => ({ ...item, words: change(item.words) })) };
    case "facts":
      return { ...block, rows: block.rows.map((row) => ({ ...row, words: change(row.words) })) };
    case "table": {
      const caption = change(block.caption);
      return {
        ...block,
        caption,
        rows: block.rows.map((row) => ({ ...row, cells: row.cells.map((cell) => cell.map(change)) })),
      };
    }
    case "calls":
      return {
        ...block,
        items: block.items.map((item) => ({
          ...item,
          call: change(item.call),
          ...(item.acts === undefined ? {} : { acts: item.acts.map(change) }),
          when: change(item.when),
          where: change(item.where),
        })),
      };
    case "figure":
      return { ...block, caption: change(block.caption) };
    case "entries":
      return {
        ...block,
        items: block.items.map((item) => ({ ...item, head: change(item.head), lines: item.lines.map(change) })),
      };
    case "writing":
    case "contents":
    case "page break":
      return block;
  }
}
