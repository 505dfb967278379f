/** shared/text/graphemes.ts - where a text may be cut without splitting what a reader sees as one character.
 *  May import: nothing. Keeps rule T9 (shared/text/RULES.md). Offsets: UTF-16 units from 0. */

// The rules of Unicode's text segmentation do not depend on the language here; naming one keeps machines alike.
const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });

/** How far to look for a sure boundary, in units. Longer clusters than this are not found in writing. */
const WINDOW = 256;

/** Whether the text may be cut at `offset`. The two ends of the text always may. */
export function isGraphemeBoundary(text: string, offset: number): boolean {
  if (offset <= 0 || offset >= text.length) return true;
  return graphemeAround(text, offset).from === offset;
}

/** The smallest range that splits no grapheme and holds `from` to `to`. A gap inside a grapheme moves to the
 *  start of that grapheme. Ends outside the text are brought in. */
export function snapToGraphemes(text: string, from: number, to: number): { from: number; to: number } {
  const first = Math.min(Math.max(from, 0), text.length);
  const last = Math.min(Math.max(to, first), text.length);
  const start = isGraphemeBoundary(text, first) ? first : graphemeAround(text, first).from;
  if (last === first) return { from: start, to: start };
  return { from: start, to: isGraphemeBoundary(text, last) ? last : graphemeAround(text, last).to };
}

/** The grapheme that holds the unit at `offset`, which must be within the text. */
function graphemeAround(text: string, offset: number): { from: number; to: number } {
  // Two plain letters beside each other never join: this spares the segmenter in nearly all western text.
  if (isPlain(text.charCodeAt(offset - 1)) && isPlain(text.charCodeAt(offset)) && isPlain(text.charCodeAt(offset + 1)))
    return { from: offset, to: offset + 1 };
  let start = offset;
  while (start > 0 && offset - start < WINDOW && !(start < offset && isPlain(text.charCodeAt(start)))) start -= 1;
  const window = text.slice(start, Math.min(text.length, offset + WINDOW));
  const segment = segmenter.segment(window).containing(offset - start);
  if (segment === undefined) return { from: offset, to: offset };
  return { from: start + segment.index, to: start + segment.index + segment.segment.length };
}

/** Printable ASCII: never joins a plain unit before it, and never extends a grapheme. */
function isPlain(unit: number): boolean {
  return unit >= 0x20 && unit < 0x7f;
}
