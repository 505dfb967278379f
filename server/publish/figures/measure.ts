/** server/publish/figures/measure.ts - the measure below a plan: so long are so many metres.
 *  May import: shared/drawing, siblings. Millimetres. */
import type { Area } from "../../../shared/drawing/labels.ts";
import type { Markup } from "../markup.ts";
import { SAID_FACE, SOFT } from "./paper-ink.ts";
import type { Sheet } from "./plan-sheet.ts";
import { widthOfWords } from "./station-names.ts";
import { shape } from "./svg.ts";

const LENGTHS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;
const HEIGHT = 2.9;

/** At the foot, from `left` on; about a fifth of the sheet long. */
export function measureShapes(sheet: Sheet, left: number): { shapes: Markup[]; areas: Area[] } {
  const metres = LENGTHS.findLast((count) => count * sheet.scale <= sheet.width * 0.24) ?? LENGTHS[0];
  const length = metres * sheet.scale;
  const y = sheet.height - 1.6;
  const words = `${metres} m`;
  const d = `M${left.toFixed(2)} ${(y - 0.7).toFixed(2)} v0.7 h${length.toFixed(2)} v-0.7`;
  const shapes = [
    shape("path", { d, fill: "none", stroke: SOFT, "stroke-width": 0.2 }),
    shape(
      "text",
      { x: left + length + 1, y: y + 0.3, "font-family": SAID_FACE, "font-size": HEIGHT, fill: SOFT },
      words,
    ),
  ];
  const width = length + 1 + widthOfWords(words, HEIGHT);
  return { shapes, areas: [{ x: left + width / 2, y: y - 0.6, width, height: HEIGHT }] };
}
