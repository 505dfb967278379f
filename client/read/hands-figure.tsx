/** client/read/hands-figure.tsx - the small plan from above: horse, rider, both hands, reins and shaft after a step.
 *  Drawn in decimetres, ahead is up. What is not known is drawn open and broken, never left out. */
import { riderBox } from "../../shared/drawing/rider-shapes.ts";
import type { HandsFigure as Figure } from "../../shared/hands/figure.ts";
import { RiderFromAbove } from "../ride/rider-from-above.tsx";

export function HandsFigure({ figure, onFoot = false }: { figure: Figure; onFoot?: boolean }) {
  return (
    <svg class="hands-figure" viewBox={viewBox(figure)} role="img" aria-label={figure.sentence}>
      <title>{figure.sentence}</title>
      <RiderFromAbove figure={figure} onFoot={onFoot} />
    </svg>
  );
}

function viewBox(figure: Figure): string {
  const { left, top, width, height } = riderBox(figure);
  return `${left} ${top} ${width} ${height}`;
}
