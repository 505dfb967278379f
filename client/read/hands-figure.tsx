/** client/read/hands-figure.tsx - the small plan from above: horse, rider, both hands, reins and shaft after a step.
 *  Drawn in decimetres, ahead is up. What is not known is drawn open and broken, never left out. */
import type { HandsFigure as Figure, Point } from "../../shared/hands/figure.ts";
import { inDecimetres, RiderFromAbove } from "../ride/rider-from-above.tsx";

export function HandsFigure({ figure, onFoot = false }: { figure: Figure; onFoot?: boolean }) {
  return (
    <svg class="hands-figure" viewBox={viewBox(figure)} role="img" aria-label={figure.sentence}>
      <title>{figure.sentence}</title>
      <RiderFromAbove figure={figure} onFoot={onFoot} />
    </svg>
  );
}

/** The horse, and all of the shaft. */
function viewBox({ shaft }: Figure): string {
  const ends: Point[] = shaft ? [inDecimetres(shaft.butt), inDecimetres(shaft.point)] : [];
  const xs = [-9, 9, ...ends.map(({ x }) => x)];
  const ys = [-15, 15, ...ends.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - 3, Math.min(...ys) - 3];
  return `${left} ${top} ${Math.max(...xs) + 3 - left} ${Math.max(...ys) + 3 - top}`;
}
