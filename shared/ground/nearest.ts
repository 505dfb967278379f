/** shared/ground/nearest.ts - the least distance between two lines or points of the plane, and where it is.
 *  May import: siblings in shared/ground. Metres. */
import { distance, type Point } from "./plane.ts";
import { nearestOnLine } from "./stations.ts";

/** A point, or a line between two. */
export type Span = readonly [Point] | readonly [Point, Point];

/** The least distance, with a nearest place on each. 0 with one common place when they cross. */
export type NearestPlaces = { readonly metres: number; readonly onA: Point; readonly onB: Point };

/** Where two lines cross between their ends; null when they do not, or run along each other. */
function crossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const along = (from: Point, to: Point, point: Point): number =>
    (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  const atC = along(a, b, c);
  const atD = along(a, b, d);
  if (atC * atD >= 0) return null;
  const atA = along(c, d, a);
  const atB = along(c, d, b);
  if (atA * atB >= 0) return null;
  const part = atA / (atA - atB);
  return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
}

/** The least distance between two spans. */
export function nearestPlaces(a: Span, b: Span): NearestPlaces {
  const [a0, a1] = a;
  const [b0, b1] = b;
  if (a1 !== undefined && b1 !== undefined) {
    const met = crossing(a0, a1, b0, b1);
    if (met !== null) return { metres: 0, onA: met, onB: met };
  }
  let best: NearestPlaces | null = null;
  const consider = (onA: Point, onB: Point): void => {
    const metres = distance(onA, onB);
    if (best === null || metres < best.metres) best = { metres, onA, onB };
  };
  for (const end of a) consider(end, b1 === undefined ? b0 : nearestOnLine(end, b0, b1));
  if (a1 !== undefined) for (const end of b) consider(nearestOnLine(end, a0, a1), end);
  return best ?? { metres: distance(a0, b0), onA: a0, onB: b0 };
}
