/** client/read/hands-figure.tsx - the small plan from above: horse, rider, both hands, reins and shaft after a step.
 *  Drawn in decimetres, ahead is up. What is not known is drawn open and broken, never left out. */
import type { HandsFigure as Figure, FigureHand, Point } from "../../shared/hands/figure.ts";

const HORSE =
  "M0,-13 C1.9,-11.6 2.3,-8.6 1.9,-6.4 C3.9,-3.2 4.2,4.4 3.1,9.8 C2,12.6 -2,12.6 -3.1,9.8 C-4.2,4.4 -3.9,-3.2 -1.9,-6.4 C-2.3,-8.6 -1.9,-11.6 0,-13Z";

/** Decimetres, y down as the page has it. */
const onPage = ({ x, y }: Point): Point => ({ x: x * 10, y: -y * 10 });

export function HandsFigure({ figure }: { figure: Figure }) {
  const shaft = figure.shaft && { butt: onPage(figure.shaft.butt), point: onPage(figure.shaft.point) };
  return (
    <svg class="hands-figure" viewBox={viewBox(shaft)} role="img" aria-label={figure.sentence}>
      <title>{figure.sentence}</title>
      <path class="horse" d={HORSE} stroke-width=".45" />
      <path class="ear" d="M-1.1,-11.4 l-1,-1.9 M1.1,-11.4 l1,-1.9" stroke-width=".4" />
      <circle class="rider" r="2" cy="1" stroke-width=".45" />
      <HandMark hand={figure.left} />
      <HandMark hand={figure.right} />
      {shaft && (
        <>
          <path
            class={`shaft ${figure.unknown.point ? "unknown" : ""}`}
            d={`M${shaft.butt.x},${shaft.butt.y} L${shaft.point.x},${shaft.point.y}`}
            stroke-width=".6"
          />
          <path class="point" d={pointPath(shaft.butt, shaft.point)} />
          {figure.shaft?.planted === "yes" && <path class="planted" d={crossAt(shaft.butt)} stroke-width=".5" />}
        </>
      )}
      {!shaft && figure.unknown.shaft && (
        <text x="0" y="18" text-anchor="middle" class="not-known">
          · · ·
        </text>
      )}
    </svg>
  );
}

/** A dot; an open ring where it has the reins; broken where nothing is known of it. */
function HandMark({ hand }: { hand: FigureHand }) {
  const { x, y } = onPage(hand.at);
  return (
    <g>
      {hand.reins !== "no" && (
        <path
          class={`rein ${hand.reins === "may" ? "unknown" : ""}`}
          d={`M${x},${y} L-1.2,-9.4 M${x},${y} L1.2,-9.4`}
          stroke-width=".3"
        />
      )}
      <circle
        class={`hand ${hand.reins === "yes" ? "rein-hand" : ""} ${hand.unknown ? "unknown" : ""}`}
        cx={x}
        cy={y}
        r="1"
        stroke-width=".5"
      />
    </g>
  );
}

/** The horse, and all of the shaft. */
function viewBox(shaft: { butt: Point; point: Point } | null): string {
  const xs = [-9, 9, ...(shaft ? [shaft.butt.x, shaft.point.x] : [])];
  const ys = [-15, 15, ...(shaft ? [shaft.butt.y, shaft.point.y] : [])];
  const [left, top] = [Math.min(...xs) - 3, Math.min(...ys) - 3];
  return `${left} ${top} ${Math.max(...xs) + 3 - left} ${Math.max(...ys) + 3 - top}`;
}

/** A small solid point at the end of the line from `from` to `to`. */
function pointPath(from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return `M${to.x + dx * 2.2},${to.y + dy * 2.2} L${to.x - dy},${to.y + dx} L${to.x + dy},${to.y - dx}Z`;
}

const crossAt = ({ x, y }: Point) => `M${x - 1},${y - 1} l2,2 M${x + 1},${y - 1} l-2,2`;
