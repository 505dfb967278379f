/** shared/ground/lean.ts - how far horse and rider lean on a circle, and how long a lap takes.
 *  May import: nothing. Keeps rules G56-G57 (shared/ground/RULES.md).
 *  tan(lean) = v^2 / (g r). Horses on a lunge leaned 1.1 (trot) and 0.8 (canter) degrees less than this (Brocklehurst,
 *  Weller and Pfau 2014); there is no published limit, so this is a figure to show and never a bar of its own. */

/** Metres per second squared. */
export const GRAVITY = 9.81;

/** Degrees of lean at a speed (m/s, 0 or more) on a circle of a radius (m). Throws RangeError outside. */
export function leanDegrees(speed: number, radius: number): number {
  if (!(speed >= 0 && radius > 0)) throw new RangeError(`There is no lean at ${speed} m/s on a radius of ${radius} m.`);
  return (Math.atan((speed * speed) / (GRAVITY * radius)) * 180) / Math.PI;
}

/** The radius (m) on which a horse leans so many degrees at a speed (m/s). Throws RangeError outside. */
export function radiusOfLean(speed: number, degrees: number): number {
  if (!(speed >= 0 && degrees > 0 && degrees < 90))
    throw new RangeError(`There is no radius for ${degrees} degrees at ${speed} m/s.`);
  return (speed * speed) / (GRAVITY * Math.tan((degrees * Math.PI) / 180));
}

/** Seconds for one lap of a circle, its diameter in metres. Throws RangeError unless both are above 0. */
export function secondsPerLap(speed: number, diameter: number): number {
  if (!(speed > 0 && diameter > 0)) throw new RangeError(`There is no lap at ${speed} m/s, ${diameter} m across.`);
  return (Math.PI * diameter) / speed;
}
