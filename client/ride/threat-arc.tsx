/** client/ride/threat-arc.tsx - where the opponent of a step is taken to be: a hatched arc on its bearing from the rider, with
 *  his weapon on its side. In the drawing of the rider (decimetres, ahead is up). Where the bearing is not said the ring
 *  stays open and broken. */
import { THREAT_RING, threatArc, threatWeapon } from "../../shared/drawing/threat-shape.ts";
import type { RiddenThreat } from "../../shared/ride/ridden.ts";

export function ThreatArc({ threat }: { threat: RiddenThreat }) {
  if (threat.hour === null) return <circle class="threat unknown" r={THREAT_RING} />;
  return (
    <g class="threat" transform={`rotate(${threat.hour * 30})`}>
      <path d={threatArc()} />
      {threat.weaponSide && <path class="weapon" d={threatWeapon(threat.weaponSide)} />}
    </g>
  );
}
