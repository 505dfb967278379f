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
  for (const [index, at] of places.entries()) {
    // Signs stand where their words end, the wider ones last; those of a place between words behind them.
    const ending = marks.filter((mark) => mark.to === at).sort((a, b) => width(a) - width(b));
    const inOrder = [...ending.filter((mark) => width(mark) > 0), ...ending.filter((mark) => width(mark) === 0)];
    lines.at(-1)?.push(...inOrder.flatMap(({ signs }) => signs));
    const to = places[index + 1] ?? at;
    const stretch = text.slice(at, to);
    if (stretch === "\n") lines.push([]);
    else if (stretch !== "") {
      const under = marks.find((mark) => mark.standing !== null && mark.from <= at && to <= mark.to);
      lines.at(-1)?.push({ ...said(stretch, language), standing: under?.standing ?? null });
    }
  }
  return lines.filter((line) => line.length > 0);
}

function width({ from, to }: TextMark): number {
  return to - from;
}
