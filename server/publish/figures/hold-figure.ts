/** server/publish/figures/hold-figure.ts - one state of hands, reins and shaft on paper: the rider from above.
 *  May import: shared/drawing, shared/hands types, siblings. Pure. */
import { handsBox, heightShapes } from "../../../shared/drawing/height-shapes.ts";
import { riderShapes } from "../../../shared/drawing/rider-shapes.ts";
import type { HandsFigure } from "../../../shared/hands/figure.ts";
import type { PaperFigure } from "./plan-figure.ts";
import { riderMarkup } from "./rider-markup.ts";
import { shape, svgOf } from "./svg.ts";

export interface HoldFigureOptions {
  /** Millimetres on the paper for a decimetre: the same for all figures that stand together. */
  scale?: number;
  onFoot?: boolean;
}

/** A horse of 2.6 m is about 30 mm long on the paper, unless another scale is asked for. */
export function holdFigure(figure: HandsFigure, { scale = 1.15, onFoot = false }: HoldFigureOptions = {}): PaperFigure {
  const { left, top, width, height } = handsBox(figure);
  const transform = `scale(${scale.toFixed(5)}) translate(${(-left).toFixed(3)} ${(-top).toFixed(3)})`;
  const svg = svgOf({
    width: width * scale,
    height: height * scale,
    alternative: figure.sentence,
    shapes: [shape("g", { transform }, riderMarkup([...riderShapes(figure, onFoot), ...heightShapes(figure)], scale))],
  });
  return { svg, alternative: figure.sentence, width: Math.round(width * scale * 10) / 10 };
}
