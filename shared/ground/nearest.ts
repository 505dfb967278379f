/** shared/ground/nearest.ts - the least distance between two lines or points of the plane, and where it is.
 *  May import: siblings in shared/ground. Metres. */
import { distance, type Point } from "./plane.ts";
import { nearestOnLine } from "./stations.ts";

/** A point, or a line between two. */
export type Span = readonly [Point] | readonly [Point, Point];

/** The least distance, with a nearest place on each. 0 with one common place when they cross. */
export type NearestPlaces = { readonly metres: number; readonly onA: Point; readonly onB: Point };

/** Twice the surface of the triangle, positive when `point` lies to the left of the way from a to b. */
function leftOf(a: Point, b: Point, point: Point): number {
  return (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
}

/** Where two lines cross between their ends; null when they do not, or run along each other. */
function crossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  if (leftOf(a, b, c) * leftOf(a, b, d) >= 0) return null;
  const atA = leftOf(c, d, a);
  const atB = leftOf(c, d, b);
  if (atA * atB >= 0) return null;
  const part = atA / (atA - atB);
  return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
}

function nearer(best: NearestPlaces, onA: Point, onB: Point): NearestPlaces {
  const metres = distance(onA, onB);
  return metres < best.metres ? { metres, onA, onB } : best;
}

/** The least distance between two spans. */
export function nearestPlaces(a: Span, b: Span): NearestPlaces {
  const [a0, a1] = a;
  const [b0, b1] = b;
  let best: NearestPlaces = { metres: distance(a0, b0), onA: a0, onB: b0 };
  if (a1 !== undefined && b1 !== undefined) {
    const met = crossing(a0, a1, b0, b1);
    if (met !== null) return { metres: 0, onA: met, onB: met };
  }
  if (b1 !== undefined) for (const end of a) best = nearer(best, end, nearestOnLine(end, b0, b1));
  if (a1 !== undefined) for (const end of b) best = nearer(best, nearestOnLine(end, a0, a1), end);
  return best;
}
