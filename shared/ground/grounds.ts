/** shared/ground/grounds.ts - riding grounds of any size: rectangular, round-ended, round; and how far the wall is.
 *  May import: siblings in shared/ground. Keeps rules G16-G20 (shared/ground/RULES.md).
 *  Metres; origin at the centre, y toward the head, x to the right seen from the foot. All three shapes are one: a
 *  rectangle whose corners are rounded by 0, by half the width, or by half of both. */
import { directionOf, distance, type Point } from "./plane.ts";
import { type GroundStation, mirrorStation } from "./stations.ts";

export type GroundShape = "rectangular" | "round-ended" | "round";

/** A ground. `width` lies along x, `length` along y. The track is `trackOffset` metres inside the wall. */
export type RidingGround = {
  readonly shape: GroundShape;
  readonly width: number;
  readonly length: number;
  readonly trackOffset: number;
  readonly stations: readonly GroundStation[];
};

export type GroundResult = { ok: true; ground: RidingGround } | { ok: false; code: "not-a-ground"; sentence: string };

type Rest = { trackOffset: number; stations?: readonly GroundStation[] };

/** A wall farther off than this is open country, not a riding ground; it keeps arithmetic away from its ends. */
const LARGEST = 100_000;

/** A ground with square corners, from 1 m up. */
export function rectangularGround(size: { width: number; length: number } & Rest): GroundResult {
  return checked("rectangular", size.width, size.length, size);
}

/** Two straight walls with a half circle at the foot and at the head; `length` is the whole, at least the width. */
export function roundEndedGround(size: { width: number; length: number } & Rest): GroundResult {
  return checked("round-ended", size.width, size.length, size);
}

/** A round ground. */
export function roundGround(size: { diameter: number } & Rest): GroundResult {
  return checked("round", size.diameter, size.diameter, size);
}

function checked(shape: GroundShape, width: number, length: number, rest: Rest): GroundResult {
  const refuse = (sentence: string): GroundResult => ({ ok: false, code: "not-a-ground", sentence });
  for (const [what, value] of [
    ["width", width],
    ["length", length],
  ] as const) {
    if (!(value >= 1 && value <= LARGEST))
      return refuse(
        `The ${what} of a ground is from 1 to ${LARGEST} m, not ${value}. Give its size in metres, such as 20.`,
      );
  }
  if (shape === "round-ended" && length < width)
    return refuse(
      `A round-ended ground is at least as long as it is wide; this one is ${length} m long and ${width} m wide. Exchange the two, or make it rectangular.`,
    );
  const most = Math.min(width, length) / 2;
  if (!(rest.trackOffset >= 0 && rest.trackOffset < most))
    return refuse(
      `The track lies from 0 to less than ${most} m inside the wall of this ground, not ${rest.trackOffset}. Give the offset in metres, such as 1.8.`,
    );
  const stations = rest.stations ?? [];
  return { ok: true, ground: { shape, width, length, trackOffset: rest.trackOffset, stations } };
}

/** Half the width, half the length and the radius of the corners, `inset` metres inside the wall. */
export function roundedFrame(ground: RidingGround, inset = 0): { x: number; y: number; corner: number } {
  const x = ground.width / 2 - inset;
  const y = ground.length / 2 - inset;
  return { x, y, corner: ground.shape === "rectangular" ? 0 : Math.min(x, y) };
}

/** Metres from a place to the wall, negative outside: the exact least distance, except outside a square corner's two
 *  walls, where it is the distance to the corner. */
export function distanceToWall(ground: RidingGround, place: Point): number {
  const frame = roundedFrame(ground);
  const x = Math.abs(place.x) - (frame.x - frame.corner);
  const y = Math.abs(place.y) - (frame.y - frame.corner);
  return frame.corner - Math.hypot(Math.max(x, 0), Math.max(y, 0)) - Math.min(Math.max(x, y), 0);
}

/** Whether a place keeps `margin` metres from the wall; the bound counts as inside. */
export function isInside(ground: RidingGround, place: Point, margin = 0): boolean {
  return distanceToWall(ground, place) >= margin;
}

/** Metres straight on from a place inside until it is `inset` metres from the wall; 0 when it is there or past it. */
export function reachToWall(ground: RidingGround, from: Point, heading: number, inset = 0): number {
  const frame = roundedFrame(ground, inset);
  const way = directionOf(heading);
  if (distanceToWall(ground, from) < inset) return 0;
  const along = (position: number, step: number, half: number): number =>
    step === 0 ? Number.POSITIVE_INFINITY : (half - position * Math.sign(step)) / Math.abs(step);
  const toBox = Math.min(along(from.x, way.x, frame.x), along(from.y, way.y, frame.y));
  const exit = { x: from.x + way.x * toBox, y: from.y + way.y * toBox };
  const centre = {
    x: Math.sign(exit.x) * (frame.x - frame.corner),
    y: Math.sign(exit.y) * (frame.y - frame.corner),
  };
  const inCorner = Math.abs(exit.x) > Math.abs(centre.x) && Math.abs(exit.y) > Math.abs(centre.y);
  if (frame.corner === 0 || !inCorner) return Math.max(0, toBox);
  // Out through a rounded corner: the farther meeting of the line with that corner's circle.
  const x = from.x - centre.x;
  const y = from.y - centre.y;
  const middle = -(x * way.x + y * way.y);
  const rest = middle * middle - (x * x + y * y - frame.corner * frame.corner);
  return Math.max(0, middle + Math.sqrt(Math.max(0, rest)));
}

/** The corners' centres of the frame the wall is rounded about: from these the farthest place is the nearest to the wall. */
export function cornerCentres(ground: RidingGround): Point[] {
  const frame = roundedFrame(ground);
  const x = frame.x - frame.corner;
  const y = frame.y - frame.corner;
  const all = [
    { x, y },
    { x: 0 - x, y },
    { x: 0 - x, y: 0 - y },
    { x, y: 0 - y },
  ];
  return all.filter((point, index) => all.findIndex((other) => distance(point, other) === 0) === index);
}

/** A station by its id, else by its name; null when there is none. */
export function findStation(ground: RidingGround, name: string): GroundStation | null {
  const byId = ground.stations.find((station) => station.id === name);
  return byId ?? ground.stations.find((station) => station.name === name) ?? null;
}

/** The ground in the mirrored world. */
export function mirrorGround(ground: RidingGround): RidingGround {
  return { ...ground, stations: ground.stations.map(mirrorStation) };
}
