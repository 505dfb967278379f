/** server/publish/figures/times-ridden.ts - how often the line of a step is ridden, since what is ridden again is drawn once.
 *  May import: shared/drawing, shared/ground, types of shared/ride. Metres, hundredths of a degree. */
import { drawnPieces } from "../../../shared/drawing/path-strokes.ts";
import { type Arc, type Piece, poseOn, type Straight } from "../../../shared/ground/piece.ts";
import { bearing, distance, FULL_TURN, type Point } from "../../../shared/ground/plane.ts";
import type { Ridden } from "../../../shared/ride/ridden.ts";

/** Lines nearer than this are one. */
const NEAR = 0.06;
/** Where a line is looked at, in parts of its length: at none of the corners that laps are cut at. */
const PLACES = [0.13, 0.37, 0.61, 0.87] as const;

interface PartOfRide {
  ride: Ridden;
  /** Half-open. */
  stages: { from: number; to: number };
}

/** How often a rider rides the longest line that begins with one of these steps: all of it, by whatever step. 1 where they have no line. */
export function timesRidden(rides: readonly PartOfRide[], numbers: readonly number[]): number {
  let [longest, times] = [0, 1];
  for (const { ride, stages } of rides) {
    const drawn = range(stages).flatMap((stage) => drawnPieces(ride, stage));
    const lines = drawn.flatMap(({ piece, line }) => (line !== "join" && isLine(piece) ? [piece] : []));
    for (const { piece, line, stage } of drawn) {
      const number = ride.stages[stage]?.number ?? null;
      if (line === "join" || !isLine(piece) || number === null || !numbers.includes(number)) continue;
      // A circle that is ridden several times in one step is no longer for that.
      const length = piece.is === "arc" ? Math.min(piece.length, 2 * Math.PI * piece.radius) : piece.length;
      if (length <= longest) continue;
      const places = PLACES.map((share) => poseOn(piece, (share * length) / piece.length));
      [longest, times] = [length, Math.min(...places.map((place) => passes(lines, place)))];
    }
  }
  return times;
}

const range = ({ from, to }: { from: number; to: number }) => Array.from({ length: to - from }, (_, at) => from + at);

const isLine = (piece: Piece): piece is Straight | Arc => piece.is === "straight" || piece.is === "arc";

/** How often the lines come by a place. */
function passes(lines: readonly (Straight | Arc)[], place: Point): number {
  return lines.reduce((sum, line) => sum + (line.is === "arc" ? onArc(line, place) : onStraight(line, place)), 0);
}

function onStraight({ from, to, length }: Straight, place: Point): number {
  return distance(from, place) + distance(place, to) < length + NEAR * NEAR ? 1 : 0;
}

function onArc(arc: Arc, place: Point): number {
  if (Math.abs(distance(arc.centre, place) - arc.radius) > NEAR) return 0;
  const turned = bearing(arc.centre, place) - bearing(arc.centre, poseOn(arc, 0));
  const way = arc.sweep < 0 ? -turned : turned;
  const along = ((way % FULL_TURN) + FULL_TURN) % FULL_TURN;
  const sweep = Math.abs(arc.sweep);
  return along > sweep ? 0 : 1 + Math.floor((sweep - along) / FULL_TURN);
}
