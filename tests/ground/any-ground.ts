/** Random poses, pieces, paths and grounds for the properties of the ground room, and short words to build with. */
import fc from "fast-check";
import {
  arcFrom,
  beside,
  type GroundStation,
  halt,
  type Path,
  type Piece,
  type Pose,
  pathOf,
  poseAt,
  poseOn,
  type RidingGround,
  roundGround,
  straight,
  TOLERANCE,
  turnOnSpot,
} from "../../shared/ground/index.ts";

/** A pose as a step keeps it: whole millimetres within 20 m of the centre, whole hundredths of a degree. */
export const anyPose: fc.Arbitrary<Pose> = fc
  .tuple(
    fc.integer({ min: -20_000, max: 20_000 }),
    fc.integer({ min: -20_000, max: 20_000 }),
    fc.integer({ min: 0, max: 35_999 }),
  )
  .map(([x, y, heading]) => poseAt(x / 1_000, y / 1_000, heading));

/** Whole millimetres from 0.5 m to 30 m. */
export const anySize = fc.integer({ min: 500, max: 30_000 }).map((mm) => mm / 1_000);
export const anySide = fc.constantFrom("left" as const, "right" as const);
const anySweep = fc.integer({ min: -72_000, max: 72_000 }).filter((sweep) => sweep !== 0);

type Draw = { is: Piece["is"]; size: number; sweep: number; back: boolean };
const anyDraw: fc.Arbitrary<Draw> = fc.record({
  is: fc.constantFrom("straight" as const, "arc" as const, "turn" as const, "halt" as const),
  size: anySize,
  sweep: anySweep,
  back: fc.boolean(),
});

function drawn(from: Pose, draw: Draw): Piece {
  switch (draw.is) {
    case "straight":
      return straight(from, beside(from, draw.back ? -draw.size : draw.size), draw.back);
    case "arc":
      return arcFrom(from, draw.size, draw.sweep);
    case "turn":
      return turnOnSpot(from, draw.sweep);
    case "halt":
      return halt(from, draw.size);
  }
}

/** One to eight pieces, each from where the last ended. */
export const anyPath: fc.Arbitrary<Path> = fc
  .tuple(anyPose, fc.array(anyDraw, { minLength: 1, maxLength: 8 }))
  .map(([start, draws]) => {
    let here = start;
    const pieces = draws.map((draw) => {
      const piece = drawn(here, draw);
      here = poseOn(piece, 1);
      return piece;
    });
    return pathOf(pieces, TOLERANCE);
  });

/** A path that goes somewhere: some of its pieces move. */
export const anyMovingPath = anyPath.filter((path) => path.pieces.some((piece) => piece.length > 0));

/** A point station. */
export function station(name: string, x: number, y: number, partner: string | null = null): GroundStation {
  return { id: name, name, outline: { is: "point", at: { x, y } }, partner };
}

/** A round field so large that no figure of the tests meets its wall. */
export function openField(stations: readonly GroundStation[] = []): RidingGround {
  const made = roundGround({ diameter: 4_000, trackOffset: 0, stations });
  if (!made.ok) throw new Error(made.sentence);
  return made.ground;
}
