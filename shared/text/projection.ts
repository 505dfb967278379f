/** shared/text/projection.ts - the one projection of a passage document to plain text, and positions both ways.
 *  May import: prosemirror-model types. Keeps rules T1-T6 (shared/text/RULES.md).
 *  Offsets: UTF-16 units from 0. Positions: the editor's, counted in tokens of the document from 0. */
import type { Node as DocNode } from "prosemirror-model";
import type { AnchorSide } from "./anchor-range.ts";

/** What parts two blocks in the projection. */
export const BLOCK_BREAK = "\n";

/** A document with its text and the starts of its blocks, for many look-ups: making one costs O(n), a look-up O(log n)
 *  to the block and then the number of pieces in that block. */
export type Projection = {
  readonly doc: DocNode;
  readonly text: string;
  /** Per block, in order: the offset of its first character, and the position of the start of its content. */
  readonly blocks: readonly ProjectedBlock[];
};

export type ProjectedBlock = {
  readonly node: DocNode;
  readonly offset: number;
  readonly position: number;
  /** Length of the block's text, its break not counted. */
  readonly length: number;
};

/** The text of a passage document: blocks parted by one U+000A; notes, milestones and gaps have no width. */
export function projectDoc(doc: DocNode): string {
  return projectionOf(doc).text;
}

export function projectionOf(doc: DocNode): Projection {
  const blocks: ProjectedBlock[] = [];
  const texts: string[] = [];
  let offset = 0;
  doc.forEach((node, start) => {
    const text = blockText(node);
    blocks.push({ node, offset, position: start + 1, length: text.length });
    texts.push(text);
    offset += text.length + BLOCK_BREAK.length;
  });
  return { doc, text: texts.join(BLOCK_BREAK), blocks };
}

/** The editor position of `offset`. Where atoms stand at that place, "before" gives the position right after the
 *  preceding character and "after" the one right before the following character, atoms passed. An offset before a
 *  block break is in the block that ends there, one after it in the block that begins there.
 *  Throws RangeError when `offset` is not a whole number within the text. */
export function offsetToPosition(source: DocNode | Projection, offset: number, side: AnchorSide): number {
  const projection = asProjection(source);
  requireWithin("offset", offset, projection.text.length);
  const block = lastAtOrBefore(projection.blocks, offset, (candidate) => candidate.offset);
  let left = offset - block.offset;
  let position = block.position;
  for (const child of block.node.children) {
    // "before" stops as soon as the characters are counted; "after" goes on through the atoms that follow.
    if (left === 0 && (side === "before" || child.isText)) return position;
    if (!child.isText) position += child.nodeSize;
    else if (left <= child.nodeSize) {
      position += left;
      if (left < child.nodeSize) return position;
      left = 0;
    } else {
      left -= child.nodeSize;
      position += child.nodeSize;
    }
  }
  return position;
}

/** The offset of editor position `pos`. A position between two blocks is read as the end of the first ("before") or the
 *  start of the second ("after"). Throws RangeError when `pos` is not a whole number within the document. */
export function positionToOffset(source: DocNode | Projection, pos: number, side: AnchorSide = "before"): number {
  const { doc, blocks } = asProjection(source);
  requireWithin("position", pos, doc.content.size);
  const block = lastAtOrBefore(blocks, pos, (candidate) => candidate.position);
  const end = block.position + block.node.content.size;
  if (pos > end) {
    const next = blocks[blocks.indexOf(block) + 1];
    return side === "after" && next !== undefined ? next.offset : block.offset + block.length;
  }
  let left = pos - block.position;
  let offset = block.offset;
  for (const child of block.node.children) {
    if (left <= 0) break;
    if (child.isText) offset += Math.min(left, child.nodeSize);
    left -= child.nodeSize;
  }
  return offset;
}

function asProjection(source: DocNode | Projection): Projection {
  return "blocks" in source ? source : projectionOf(source);
}

function blockText(block: DocNode): string {
  let text = "";
  block.forEach((child) => {
    text += child.text ?? "";
  });
  return text;
}

/** The last block whose key is at most `value`; the first block when there is none. */
function lastAtOrBefore(blocks: readonly ProjectedBlock[], value: number, key: (block: ProjectedBlock) => number) {
  let low = 0;
  let high = blocks.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    const block = blocks[middle];
    if (block !== undefined && key(block) <= value) low = middle;
    else high = middle - 1;
  }
  const found = blocks[low];
  if (found === undefined) throw new TypeError("A passage document has at least one block; this one has none.");
  return found;
}

function requireWithin(what: string, value: number, length: number): void {
  if (!Number.isInteger(value) || value < 0 || value > length) {
    throw new RangeError(`The ${what} must be a whole number from 0 to ${length}; got ${value}.`);
  }
}
