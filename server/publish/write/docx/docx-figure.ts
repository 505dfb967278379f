/** server/publish/write/docx/docx-figure.ts - a drawing in a letter: the drawing itself, and dots for who cannot show it.
 *  May import: docx, schema types, figures, the room above. */
import { ImageRun } from "docx";
import type { Block } from "../../../../schema/paper.ts";
import { pngOf } from "../../figures/png.ts";
import { figureRatio } from "../figure-size.ts";

interface FigurePlace {
  /** From 1, in the order of the letter. */
  number: number;
  /** Width of the column, in twips. */
  measure: number;
  alternative: string;
}

/** Pixels to the millimetre, as letters count them: 96 to the inch. */
const PIXELS = 96 / 25.4;

export function figureRun({ svg, width }: Extract<Block, { is: "figure" }>, place: FigurePlace): ImageRun {
  const millimetres = Math.min(width, (place.measure / 1440) * 25.4);
  const across = millimetres * PIXELS;
  const transformation = { width: across, height: across / figureRatio(svg) };
  return new ImageRun({
    type: "svg",
    data: Buffer.from(svg),
    fallback: { type: "png", data: Buffer.from(pngOf(svg, millimetres)) },
    transformation,
    altText: { id: String(place.number), name: `Figure ${place.number}`, description: place.alternative },
  });
}
