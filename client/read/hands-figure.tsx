/** client/read/hands-figure.tsx - the small plan from above: horse, rider, both hands, reins and weapons after a step,
 *  and how high those are carried.
 *  Drawn in decimetres, ahead is up. What is not known is drawn open and broken, never left out. */
import { handsBox } from "../../shared/drawing/height-shapes.ts";
import type { HandsFigure as Figure } from "../../shared/hands/figure.ts";
import { HeightsBeside, RiderFromAbove } from "../ride/rider-from-above.tsx";

export function HandsFigure({ figure, onFoot = false }: { figure: Figure; onFoot?: boolean }) {
  return (
    <svg class="hands-figure" viewBox={viewBox(figure)} role="img" aria-label={figure.sentence}>
      <title>{figure.sentence}</title>
      <RiderFromAbove figure={figure} onFoot={onFoot} />
      <HeightsBeside figure={figure} />
    </svg>
  );
}

function viewBox(figure: Figure): string {
  const { left, top, width, height } = handsBox(figure);
  return `${left} ${top} ${width} ${height}`;
}
