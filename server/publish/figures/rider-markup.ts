/** server/publish/figures/rider-markup.ts - the rider from above in the ink of paper.
 *  May import: shared/drawing, siblings. Decimetres, as shared/drawing/rider-shapes.ts gives them. */
import type { RiderInk, RiderShape } from "../../../shared/drawing/rider-shapes.ts";
import { THREAT_RING, threatArc } from "../../../shared/drawing/threat-shape.ts";
import type { Markup } from "../markup.ts";
import type { XmlAttributes } from "../xml.ts";
import { INK, PAPER, RUBRIC, SOFT, TEXT_FACE } from "./paper-ink.ts";
import { shape } from "./svg.ts";

const INKS: Record<RiderInk, { fill: string; stroke: string | null }> = {
  horse: { fill: PAPER, stroke: INK },
  ear: { fill: "none", stroke: INK },
  shoulders: { fill: PAPER, stroke: INK },
  rider: { fill: PAPER, stroke: INK },
  rein: { fill: "none", stroke: SOFT },
  hand: { fill: INK, stroke: null },
  "rein hand": { fill: PAPER, stroke: INK },
  shaft: { fill: "none", stroke: RUBRIC },
  point: { fill: RUBRIC, stroke: null },
  planted: { fill: "none", stroke: RUBRIC },
  measure: { fill: "none", stroke: SOFT },
  ground: { fill: "none", stroke: INK },
  height: { fill: RUBRIC, stroke: null },
  told: { fill: INK, stroke: null },
  "not known": { fill: RUBRIC, stroke: null },
};

/** No line gets thinner on the paper than a press can print: millimetres. */
const THINNEST: Partial<Record<RiderInk, number>> = { shaft: 0.34, rein: 0.12, planted: 0.25, measure: 0.12 };
const USUAL_THINNEST = 0.2;
/** Millimetres on the paper: words about 8 pt, and dots that are seen. */
const TOLD = 2.9;
const DOTS = 4.4;

/** `scale`: millimetres on the paper for a decimetre. */
export function riderMarkup(shapes: readonly RiderShape[], scale: number): Markup[] {
  return shapes.map((one) => {
    const ink = INKS[one.as];
    const width = Math.max(one.width, (THINNEST[one.as] ?? USUAL_THINNEST) / scale);
    const unknownHand = one.broken && (one.as === "hand" || one.as === "height");
    const look: XmlAttributes = {
      fill: unknownHand ? PAPER : ink.fill,
      stroke: unknownHand ? (one.as === "height" ? RUBRIC : INK) : ink.stroke,
      "stroke-width": ink.stroke === null && !unknownHand ? null : width,
      "stroke-dasharray": one.broken ? `${(width * 2).toFixed(3)} ${(width * 1.6).toFixed(3)}` : null,
    };
    if (one.is === "path") return shape("path", { d: one.d, ...look });
    if (one.is === "circle") return shape("circle", { cx: one.x, cy: one.y, r: one.r, ...look });
    const size = one.as === "told" ? TOLD : DOTS;
    const type = { "text-anchor": one.from, "font-family": TEXT_FACE, "font-size": size / scale };
    return shape("text", { x: one.x, y: one.y, ...type, fill: ink.fill }, one.words);
  });
}

/** `hour` of the clock; null where the text does not say from where. */
export function threatMarkup(hour: number | null, scale: number): Markup {
  const width = Math.max(0.35, USUAL_THINNEST / scale);
  const look = { fill: "none", stroke: RUBRIC, "stroke-width": width };
  if (hour !== null) return shape("path", { d: threatArc(), transform: `rotate(${hour * 30})`, ...look });
  const [dash, gap] = [3 * width, 9 * width];
  return shape("circle", { r: THREAT_RING, ...look, "stroke-dasharray": `${dash.toFixed(3)} ${gap.toFixed(3)}` });
}
