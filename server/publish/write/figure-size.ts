/** server/publish/write/figure-size.ts - how wide a drawing is for its height, and how wide a column of drawings.
 *  May import: schema types. */
import type { PlainBlock } from "../../../schema/paper.ts";

/** No column of figures leaves the words beside it less than the rest of the measure. */
const WIDEST = 0.52;

/** Of a column of figures beside words: as wide as the widest, printed in `scale` of its size. Millimetres. */
export function besideWidth(blocks: readonly PlainBlock[], measure: number, scale: number): number {
  const widest = Math.max(0, ...blocks.map((block) => (block.is === "figure" ? block.width * scale : 0)));
  return Math.round(Math.min(widest === 0 ? measure / 3 : widest, measure * WIDEST) * 100) / 100;
}

/** Width over height, from the drawing's viewBox, else its width and height; 1 where it says neither. */
export function figureRatio(svg: string): number {
  const head = /<svg\b[^>]*>/u.exec(svg)?.[0] ?? "";
  const box = /\bviewBox\s*=\s*["']([^"']*)["']/u
    .exec(head)?.[1]
    ?.trim()
    .split(/[\s,]+/u)
    .map(Number);
  const [, , width = Number.NaN, height = Number.NaN] = box ?? [];
  const ratio = width / height || size(head, "width") / size(head, "height");
  return Number.isFinite(ratio) && ratio > 0 ? ratio : 1;
}

function size(head: string, name: string): number {
  return Number.parseFloat(new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`, "u").exec(head)?.[1] ?? "");
}
