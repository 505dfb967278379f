/** shared/drawing/threat-shape.ts - where an opponent is taken to be: a hatched arc on its bearing from the rider.
 *  May import: nothing. Keeps rule W20 (shared/drawing/RULES.md). In the drawing of the rider: decimetres, ahead is up. */

const INNER = 30;
const OUTER = 37;
/** Degrees to either side of the bearing. */
const HALF = 24;
const HATCHES = 9;
/** Degrees to the side on which the weapon is drawn. */
const WEAPON = 17;

/** The radius of the ring that is drawn open and broken where the bearing is not said. */
export const THREAT_RING = (INNER + OUTER) / 2;

/** Path data of the arc for an opponent ahead; the hour of the clock turns it by 30 degrees each. */
export function threatArc(): string {
  const hatch = Array.from({ length: HATCHES }, (_, index) => {
    const degrees = -HALF + ((index + 0.5) * 2 * HALF) / HATCHES;
    return `M${place(INNER, degrees - 2)} L${place(OUTER, degrees + 2)}`;
  });
  const arc = (radius: number) => `M${place(radius, -HALF)} A${radius},${radius} 0 0 1 ${place(radius, HALF)}`;
  return [arc(INNER), arc(OUTER), ...hatch].join(" ");
}

/** Path data of the weapon of an opponent ahead: a point that comes out of the arc toward the rider, on that side as the
 *  rider sees it. */
export function threatWeapon(side: "left" | "right"): string {
  const degrees = (side === "left" ? -1 : 1) * WEAPON;
  const barb = (off: number) => `M${place(INNER - 5, degrees + off)} L${place(INNER - 9, degrees)}`;
  return `M${place(OUTER, degrees)} L${place(INNER - 9, degrees)} ${barb(-3)} ${barb(3)}`;
}

/** A place so many decimetres from the rider, so many degrees clockwise from ahead. */
function place(radius: number, degrees: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${(radius * Math.sin(angle)).toFixed(2)},${(-radius * Math.cos(angle)).toFixed(2)}`;
}
