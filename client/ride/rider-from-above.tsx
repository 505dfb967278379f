/** client/ride/rider-from-above.tsx - horse, rider, hands, reins and shaft seen from above: one drawing for the small
 *  figure in Read and for the plan. In decimetres, ahead is up, the rider's seat is the origin. What is not known is drawn
 *  open and broken, never left out. Widths given here are those of the small figure; the plan sets its own. */
import type { FigureHand, HandsFigure, Point } from "../../shared/hands/figure.ts";

const HORSE =
  "M0,-13 C1.9,-11.6 2.3,-8.6 1.9,-6.4 C3.9,-3.2 4.2,4.4 3.1,9.8 C2,12.6 -2,12.6 -3.1,9.8 C-4.2,4.4 -3.9,-3.2 -1.9,-6.4 C-2.3,-8.6 -1.9,-11.6 0,-13Z";

/** Decimetres, y down as the page has it. */
export const inDecimetres = ({ x, y }: Point): Point => ({ x: x * 10, y: -y * 10 });

export function RiderFromAbove({ figure, onFoot = false }: { figure: HandsFigure; onFoot?: boolean }) {
  return (
    <>
      {onFoot ? (
        <path
          class="shoulders"
          d="M-2.9,1.2 C-2.6,-.5 2.6,-.5 2.9,1.2 C2.4,2.6 -2.4,2.6 -2.9,1.2Z"
          stroke-width=".45"
        />
      ) : (
        <>
          <path class="horse" d={HORSE} stroke-width=".45" />
          <path class="ear" d="M-1.1,-11.4 l-1,-1.9 M1.1,-11.4 l1,-1.9" stroke-width=".4" />
        </>
      )}
      <circle class="rider" r={onFoot ? 1.4 : 2} cy="1" stroke-width=".45" />
      <HandMark hand={figure.left} onFoot={onFoot} />
      <HandMark hand={figure.right} onFoot={onFoot} />
      <Shaft figure={figure} />
    </>
  );
}

function Shaft({ figure }: { figure: HandsFigure }) {
  if (figure.shaft === null) {
    if (!figure.unknown.shaft) return null;
    return (
      <text x="0" y="18" text-anchor="middle" class="not-known">
        · · ·
      </text>
    );
  }
  const [butt, point] = [inDecimetres(figure.shaft.butt), inDecimetres(figure.shaft.point)];
  return (
    <>
      <path
        class={`shaft ${figure.unknown.point ? "unknown" : ""}`}
        d={`M${butt.x},${butt.y} L${point.x},${point.y}`}
        stroke-width=".6"
      />
      <path class="point" d={pointPath(butt, point)} />
      {figure.shaft.planted === "yes" && <path class="planted" d={crossAt(butt)} stroke-width=".5" />}
    </>
  );
}

/** A dot; an open ring where it has the reins; broken where nothing is known of it. */
function HandMark({ hand, onFoot }: { hand: FigureHand; onFoot: boolean }) {
  const { x, y } = inDecimetres(hand.at);
  return (
    <g>
      {hand.reins !== "no" && !onFoot && (
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

/** A small solid point at the end of the line from `from` to `to`. */
function pointPath(from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return `M${to.x + dx * 2.2},${to.y + dy * 2.2} L${to.x - dy},${to.y + dx} L${to.x + dy},${to.y - dx}Z`;
}

const crossAt = ({ x, y }: Point) => `M${x - 1},${y - 1} l2,2 M${x + 1},${y - 1} l-2,2`;
