/** server/publish/papers/marked-text.ts - the words of a passage with the signs of cruxes and questions in them.
 *  May import: schema types, siblings. Offsets: UTF-16 units from 0, half-open. No word is lost, changed or told twice. */
import type { DrillStanding } from "../../../schema/drill.ts";
import type { Line, Span } from "../../../schema/paper.ts";
import { said } from "./spans.ts";

/** Something tied to a stretch of the text; `from` = `to` for a place between words. */
export interface TextMark {
  from: number;
  to: number;
  /** Stands behind the words. */
  signs: Span[];
  /** The line drawn under them; null for none. */
  standing: DrillStanding | null;
}

/** One line a paragraph of the text; paragraphs without words are left out. */
export function markedText(text: string, language: string, marks: readonly TextMark[]): Line[] {
  const cuts = new Set([0, text.length]);
  for (const { from, to } of marks) for (const at of [from, to]) cuts.add(at);
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) {
    cuts.add(at);
    cuts.add(at + 1);
  }
  const places = [...cuts].filter((at) => at >= 0 && at <= text.length).sort((a, b) => a - b);
  const lines: Line[] = [[]];
  for (const [index, from] of places.entries()) {
    const to = places[index + 1] ?? from;
    const stretch = text.slice(from, to);
    if (stretch === "\n") lines.push([]);
    else if (stretch !== "") {
      const under = marks.find((mark) => mark.standing !== null && mark.from <= from && to <= mark.to);
      lines.at(-1)?.push({ ...said(stretch, language), standing: under?.standing ?? null });
    }
    // Signs stand where their words end; the wider ones last.
    const ending = marks.filter((mark) => mark.to === to && (mark.from < mark.to || mark.from === to));
    if (to > from || places.length === 1) {
      const inOrder = [...ending].sort((a, b) => b.from - a.from);
      lines.at(-1)?.push(...inOrder.flatMap(({ signs }) => signs));
    }
  }
  return lines.filter((line) => line.length > 0);
}
