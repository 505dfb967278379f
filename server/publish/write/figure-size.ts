/** server/publish/write/figure-size.ts - how wide a drawing is for its height.
 *  May import: nothing. */

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
