/** client/read/hands-figure.tsx - the small plan from above: horse, rider, both hands, reins and shaft after a step.
 *  Drawn in decimetres, ahead is up. What is not known is drawn open and broken, never left out. */
import type { HandsFigureData } from "../../shared/hands/figure.ts";

const HORSE =
  "M0,-13 C1.9,-11.6 2.3,-8.6 1.9,-6.4 C3.9,-3.2 4.2,4.4 3.1,9.8 C2,12.6 -2,12.6 -3.1,9.8 C-4.2,4.4 -3.9,-3.2 -1.9,-6.4 C-2.3,-8.6 -1.9,-11.6 0,-13Z";

export function HandsFigure({ figure }: { figure: HandsFigureData }) {
  const at = (point: { x: number; y: number }) => ({ x: point.x * 10, y: -point.y * 10 });
  const hands = [figure.leftHand, figure.rightHand];
  const shaft = figure.shaft && { butt: at(figure.shaft.butt), point: at(figure.shaft.point) };
  return (
    <svg class="hands-figure" viewBox="-17 -21 34 40" role="img" aria-label={figure.sentence}>
      <title>{figure.sentence}</title>
      <path class="horse" d={HORSE} stroke-width=".45" />
      <path class="ear" d="M-1.1,-11.4 l-1,-1.9 M1.1,-11.4 l1,-1.9" stroke-width=".4" />
      <circle class="rider" r="2" cy="1" stroke-width=".45" />
      {hands.map((hand, index) => {
        const { x, y } = at(hand);
        return (
          <g key={index}>
            {hand.reins === "yes" && (
              <path class="rein" d={`M${x},${y} L-1.2,-9.4 M${x},${y} L1.2,-9.4`} stroke-width=".3" />
            )}
            <circle
              class={`hand ${hand.reins === "yes" ? "rein-hand" : ""} ${hand.known ? "" : "unknown"}`}
              cx={x}
              cy={y}
              r="1"
              stroke-width=".5"
            />
          </g>
        );
      })}
      {figure.reinsOnNeck && <path class="rein" d="M-1.2,-9.4 Q0,-3.4 1.2,-9.4" stroke-width=".3" />}
      {shaft && (
        <>
          <path
            class={`shaft ${figure.shaftKnown ? "" : "unknown"}`}
            d={`M${shaft.butt.x},${shaft.butt.y} L${shaft.point.x},${shaft.point.y}`}
            stroke-width=".6"
          />
          <path class="point" d={pointPath(shaft.butt, shaft.point)} />
        </>
      )}
    </svg>
  );
}

/** A small solid point at the end of the line from `from` to `to`. */
function pointPath(from: { x: number; y: number }, to: { x: number; y: number }): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const tip = `${to.x + dx * 2},${to.y + dy * 2}`;
  return `M${tip} L${to.x - dy * 0.9},${to.y + dx * 0.9} L${to.x + dy * 0.9},${to.y - dx * 0.9}Z`;
}
