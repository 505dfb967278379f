/** shared/ground/stations.ts - named points, lines and areas of a ground, at free places, and where one rides to for each.
 *  May import: schema types, siblings in shared/ground. Keeps rules G21-G23 (shared/ground/RULES.md). Metres. */
import type { ValueOf } from "../../schema/values.ts";
import { distance, mirrorPoint, type Point } from "./plane.ts";

/** Where a station is. A line has two ends, an area at least three corners, in order round it. */
export type Outline =
  | { readonly is: "point"; readonly at: Point }
  | { readonly is: "line"; readonly from: Point; readonly to: Point }
  | { readonly is: "area"; readonly corners: readonly Point[] };

/** A station. `partner` is the id of the one that answers to it on the other rein; null when none is declared. */
export type GroundStation = {
  readonly id: string;
  readonly name: string;
  readonly outline: Outline;
  readonly partner: string | null;
};

/** An outline as it is stored, in whole millimetres, taken to metres. */
export function outlineFromMillimetres(outline: ValueOf<"outline">): Outline {
  const metres = (point: Point): Point => ({ x: point.x / 1_000, y: point.y / 1_000 });
  switch (outline.is) {
    case "point":
      return { is: "point", at: metres(outline.at) };
    case "line":
      return { is: "line", from: metres(outline.from), to: metres(outline.to) };
    case "area":
      return { is: "area", corners: outline.corners.map(metres) };
  }
}

/** The place nearest to `point` on the line between two places. */
export function nearestOnLine(point: Point, from: Point, to: Point): Point {
  const x = to.x - from.x;
  const y = to.y - from.y;
  const squared = x * x + y * y;
  if (squared === 0) return from;
  const part = Math.min(1, Math.max(0, ((point.x - from.x) * x + (point.y - from.y) * y) / squared));
  return { x: from.x + x * part, y: from.y + y * part };
}

/** The middle of an area, weighed by its surface; of its corners when it has none. */
function middleOf(corners: readonly Point[]): Point {
  const first = corners[0] as Point;
  let doubled = 0;
  let x = 0;
  let y = 0;
  for (const [index, corner] of corners.entries()) {
    const next = corners[(index + 1) % corners.length] as Point;
    // From the first corner, so that the place of the area on the ground costs no digits.
    const cross = (corner.x - first.x) * (next.y - first.y) - (next.x - first.x) * (corner.y - first.y);
    doubled += cross;
    x += (corner.x + next.x - 2 * first.x) * cross;
    y += (corner.y + next.y - 2 * first.y) * cross;
  }
  if (Math.abs(doubled) > 1e-12) return { x: first.x + x / (3 * doubled), y: first.y + y / (3 * doubled) };
  const mean = (of: "x" | "y"): number => corners.reduce((sum, corner) => sum + corner[of], 0) / corners.length;
  return { x: mean("x"), y: mean("y") };
}

/** Where one who stands at `from` rides to: the point, the nearest place of the line, the middle of the area. */
export function placeOfStation(station: GroundStation, from: Point): Point {
  switch (station.outline.is) {
    case "point":
      return station.outline.at;
    case "line":
      return nearestOnLine(from, station.outline.from, station.outline.to);
    case "area":
      return middleOf(station.outline.corners);
  }
}

/** Whether a place is at the station: within `reach` metres of its point, of its line, or of its area. */
export function isAtStation(station: GroundStation, place: Point, reach: number): boolean {
  const outline = station.outline;
  if (outline.is !== "area") return distance(place, placeOfStation(station, place)) <= reach;
  let inside = false;
  for (const [index, a] of outline.corners.entries()) {
    const b = outline.corners[(index + 1) % outline.corners.length] as Point;
    if (distance(place, nearestOnLine(place, a, b)) <= reach) return true;
    if (a.y > place.y !== b.y > place.y && place.x < a.x + ((b.x - a.x) * (place.y - a.y)) / (b.y - a.y))
      inside = !inside;
  }
  return inside;
}

/** The station in the mirrored world: it keeps its id and name. */
export function mirrorStation(station: GroundStation): GroundStation {
  const outline = station.outline;
  switch (outline.is) {
    case "point":
      return { ...station, outline: { is: "point", at: mirrorPoint(outline.at) } };
    case "line":
      return { ...station, outline: { is: "line", from: mirrorPoint(outline.from), to: mirrorPoint(outline.to) } };
    case "area":
      return { ...station, outline: { is: "area", corners: outline.corners.map(mirrorPoint) } };
  }
}
