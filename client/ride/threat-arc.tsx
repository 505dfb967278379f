/** client/ride/threat-arc.tsx - where the opponent of a step is taken to be: a hatched arc on its bearing from the rider.
 *  In the drawing of the rider (decimetres, ahead is up). Where the bearing is not said the ring stays open and broken. */
import type { RiddenThreat } from "../../shared/ride/ridden.ts";

const INNER = 30;
const OUTER = 37;
/** Degrees to either side of the bearing. */
const HALF = 24;
const HATCHES = 9;

export function ThreatArc({ threat }: { threat: RiddenThreat }) {
  if (threat.hour === null) {
    return <circle class="threat unknown" r={(INNER + OUTER) / 2} />;
  }
  const hatch = Array.from({ length: HATCHES }, (_, index) => {
    const degrees = -HALF + ((index + 0.5) * 2 * HALF) / HATCHES;
    return `M${place(INNER, degrees - 2)} L${place(OUTER, degrees + 2)}`;
  });
  return (
    <g class="threat" transform={`rotate(${threat.hour * 30})`}>
      <path
        d={`M${place(INNER, -HALF)} A${INNER},${INNER} 0 0 1 ${place(INNER, HALF)} M${place(OUTER, -HALF)} A${OUTER},${OUTER} 0 0 1 ${place(OUTER, HALF)} ${hatch.join(" ")}`}
      />
    </g>
  );
}

/** A place so many decimetres from the rider, so many degrees clockwise from ahead. */
function place(radius: number, degrees: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${(radius * Math.sin(angle)).toFixed(2)},${(-radius * Math.cos(angle)).toFixed(2)}`;
}
