/** shared/text/carry-range.ts - carries ranges through the editor's steps, and says what became of their words.
 *  May import: prosemirror-model types, prosemirror-transform, siblings in shared/text.
 *  Keeps rules T13-T18 (shared/text/RULES.md). Offsets: UTF-16 units from 0, half-open. */
import type { Node as DocNode } from "prosemirror-model";
import { Mapping, type StepMap } from "prosemirror-transform";
import { type AnchorRange, type AnchorSide, requireRange } from "./anchor-range.ts";
import { BLOCK_BREAK, offsetToPosition, type Projection, positionToOffset, projectionOf } from "./projection.ts";
import { countQuote, findQuote, type Quote } from "./quote.ts";

export type CarryResult =
  | { readonly ok: true; readonly range: AnchorRange }
  | {
      readonly ok: false;
      readonly code: "collapsed";
      /** Where the words stood, in the new text; what was written in their stead lies between. */
      readonly near: { readonly from: number; readonly to: number };
    };

/** Carries one range from `oldDoc` to `newDoc`, where `maps` are the maps of the steps between them, in order. Block
 *  breaks at the two ends of a range are left behind. The result is "collapsed" when a range that held words has none of
 *  them left. `docs`, where given, holds the document before each step (as a Transform keeps them): without it, a range
 *  whose first or last block was deleted whole may take in what later steps of the same list write at the seam.
 *  Throws RangeError when the range is not within the old text. */
export function carryRange(
  range: AnchorRange,
  maps: readonly StepMap[],
  oldDoc: DocNode,
  newDoc: DocNode,
  docs?: readonly DocNode[],
): CarryResult {
  const [result] = carryAll(oldDoc, newDoc, maps, [range], docs);
  if (result === undefined) throw new TypeError("carryAll answers once per range; it gave no answer.");
  return result;
}

/** As `carryRange`, for many ranges of one text: each text is gone through once. Answers in the order of `ranges`. */
export function carryAll(
  oldDoc: DocNode,
  newDoc: DocNode,
  maps: readonly StepMap[],
  ranges: readonly AnchorRange[],
  docs?: readonly DocNode[],
): CarryResult[] {
  const before = projectionOf(oldDoc);
  const strides = stridesOf(before, projectionOf(newDoc), maps, docs);
  const words = countWords(before, () => true);
  const survivors = countWords(before, survivalTest(oldDoc.content.size, maps));

  return ranges.map((range) => {
    requireRange(range, before.text.length);
    if (range.from === range.to) return carryGap(range, strides);
    const carried = strides.reduce(carryWords, range);
    const had = within(words, range) > 0;
    const lost = had ? within(survivors, range) === 0 : carried.from >= carried.to;
    if (!lost && carried.from <= carried.to) return { ok: true, range: carried };
    const start = carryEnd(range.from, "before", strides);
    const end = carryEnd(range.to, "after", strides);
    return { ok: false, code: "collapsed", near: { from: start, to: Math.max(start, end) } };
  });
}

/** "same": the quoted words stand at the carried range. "moved": they were found elsewhere. "reworded": other words
 *  stand at the range, to be looked at by a person. "lost": there is neither. */
export type Fate =
  | { readonly fate: "same" | "moved" | "reworded"; readonly from: number; readonly to: number }
  | { readonly fate: "lost" };

/** What became of quoted words. `range` is where they were carried to, or null when they could not be. "moved" is said
 *  only on good ground, since nobody is asked: the words before or after agree whole, or, when `oldText` is given, the
 *  words stand just once in the old text and once in the new. Throws RangeError when `range` is not within the text. */
export function fateOf(
  wanted: Quote,
  newText: string,
  range: { from: number; to: number } | null,
  oldText?: string,
): Fate {
  if (range !== null) requireRange(range, newText.length);
  if (range !== null && newText.slice(range.from, range.to) === wanted.quote) {
    return { fate: "same", from: range.from, to: range.to };
  }
  const found = findQuote(newText, wanted, range?.from);
  if (found !== null && wanted.quote !== "" && !found.tied && isSure(wanted, newText, found, oldText)) {
    return { fate: "moved", from: found.from, to: found.to };
  }
  if (range === null || range.from === range.to) return { fate: "lost" };
  return { fate: "reworded", from: range.from, to: range.to };
}

/** A neighbour shorter than this proves nothing: a space and a letter agree too often. */
const SURE_CONTEXT = 8;

function isSure(wanted: Quote, text: string, found: { from: number; to: number }, oldText?: string): boolean {
  const { prefix, suffix, quote } = wanted;
  if (prefix.length >= SURE_CONTEXT && text.slice(0, found.from).endsWith(prefix)) return true;
  if (suffix.length >= SURE_CONTEXT && text.startsWith(suffix, found.to)) return true;
  return oldText !== undefined && countQuote(oldText, quote) === 1 && countQuote(text, quote) === 1;
}

/** Steps that are mapped at one go, between two known texts. */
type Stride = { start: Projection; mapping: Mapping; end: Projection };

function stridesOf(
  before: Projection,
  after: Projection,
  maps: readonly StepMap[],
  docs: readonly DocNode[] | undefined,
): Stride[] {
  if (docs === undefined) return [{ start: before, mapping: new Mapping([...maps]), end: after }];
  if (docs.length !== maps.length) {
    throw new RangeError(`There must be one document per step; got ${docs.length} for ${maps.length} steps.`);
  }
  const texts = [...docs.map((doc, index) => (index === 0 ? before : projectionOf(doc))), after];
  return maps.map((map, index) => ({
    start: texts[index] ?? before,
    mapping: new Mapping([map]),
    end: texts[index + 1] ?? after,
  }));
}

function carryEnd(offset: number, side: AnchorSide, strides: readonly Stride[]): number {
  return strides.reduce((at, { start, mapping, end }) => {
    const position = offsetToPosition(start, at, side);
    return positionToOffset(end, mapping.map(position, side === "before" ? -1 : 1), side);
  }, offset);
}

/** Both ends over one stride. Ends that cling to the words leave block breaks behind first: once a break goes, an end
 *  between the break and its block would have no character to cling to. */
function carryWords(range: AnchorRange, stride: Stride): AnchorRange {
  const { text } = stride.start;
  let { from, to } = range;
  if (range.fromSide === "after") while (from < to && text[from] === BLOCK_BREAK) from += 1;
  if (range.toSide === "before") while (to > from && text[to - 1] === BLOCK_BREAK) to -= 1;
  // Nothing but breaks: they are then what the range holds.
  if (from >= to) ({ from, to } = range);
  return { ...range, from: carryEnd(from, range.fromSide, [stride]), to: carryEnd(to, range.toSide, [stride]) };
}

/** A gap is one point, and never collapses; only where its ends cling apart ("before" and "after") does it take in what
 *  is written into it. */
function carryGap(range: AnchorRange, strides: readonly Stride[]): CarryResult {
  const from = carryEnd(range.from, range.fromSide, strides);
  const grows = range.fromSide === "before" && range.toSide === "after";
  const to = grows ? Math.max(from, carryEnd(range.to, "after", strides)) : from;
  return { ok: true, range: { ...range, from, to } };
}

/** Per offset, how many characters of words (no white space, no break) that pass `keep` stand before it. */
function countWords(projection: Projection, keep: (position: number) => boolean): Uint32Array {
  const counts = new Uint32Array(projection.text.length + 1);
  let offset = 0;
  let count = 0;
  for (const block of projection.blocks) {
    block.node.forEach((child, start) => {
      const text = child.text ?? "";
      for (let index = 0; index < text.length; index += 1) {
        if (!isSpace(text[index] ?? "") && keep(block.position + start + index)) count += 1;
        offset += 1;
        counts[offset] = count;
      }
    });
    // The break after the block; past the last block the write falls outside and does nothing.
    offset += 1;
    counts[offset] = count;
  }
  return counts;
}

function within(counts: Uint32Array, range: { from: number; to: number }): number {
  return (counts[range.to] ?? 0) - (counts[range.from] ?? 0);
}

function isSpace(unit: string): boolean {
  return /\s/u.test(unit);
}

/** A stretch of the old document that no step has touched; `shift` leads from its old positions to the present ones. */
type Piece = { from: number; to: number; shift: number };

/** Tells of old positions, asked in rising order, whether what stood there is still there. */
function survivalTest(size: number, maps: readonly StepMap[]): (position: number) => boolean {
  let pieces: Piece[] = [{ from: 0, to: size, shift: 0 }];
  for (const map of maps) pieces = cutPieces(pieces, map);
  let index = 0;
  return (position) => {
    while (index < pieces.length && (pieces[index]?.to ?? 0) <= position) index += 1;
    const piece = pieces[index];
    return piece !== undefined && piece.from <= position;
  };
}

function cutPieces(pieces: readonly Piece[], map: StepMap): Piece[] {
  const kept: Piece[] = [];
  const changes: { start: number; end: number; grow: number }[] = [];
  map.forEach((oldStart, oldEnd, newStart, newEnd) => {
    changes.push({ start: oldStart, end: oldEnd, grow: newEnd - newStart - (oldEnd - oldStart) });
  });
  for (const piece of pieces) {
    let start = piece.from + piece.shift;
    const end = piece.to + piece.shift;
    let grown = 0;
    const keep = (from: number, to: number) => {
      if (from < to) kept.push({ from: from - piece.shift, to: to - piece.shift, shift: piece.shift + grown });
    };
    for (const change of changes) {
      if (change.start > start) keep(start, Math.min(end, change.start));
      start = Math.max(start, change.end);
      grown += change.grow;
      if (change.start >= end) {
        start = end;
        break;
      }
    }
    keep(start, end);
  }
  return kept;
}
