/** shared/ride/round-to.ts - a circle ridden until a place is beside the horse.
 *  May import: shared/ground. Keeps rule R16 (shared/ride/RULES.md). Hundredths of a degree. */
import { AMOUNTS } from "../ground/figures/circle.ts";
import { type FigureResult, type Manege, placeNamed } from "../ground/figures/figure.ts";
import { type FigureAsk, rideFigure } from "../ground/figures/ride-figure.ts";
import { poseOn } from "../ground/piece.ts";
import { bearing, distance, FULL_TURN, type Pose, turned } from "../ground/plane.ts";

/** Nearer than this to the place already, once round to it is meant: two degrees. */
const THERE = 200;

/** Other figures know themselves what a place to go to means. */
export function withWayTo(manege: Manege, start: Pose, ask: FigureAsk, toward: string): FigureResult {
  if (ask.figure !== "circle" && ask.figure !== "part circle" && ask.figure !== "volte")
    return rideFigure(manege, start, ask);
  const place = placeNamed(manege, toward, start);
  if ("code" in place) return place;
  const { amount: _, laps, ...rest } = ask;
  // Ridden once round first, to learn where the circle lies and where the horse comes onto it.
  const whole = rideFigure(manege, start, { ...rest, laps: 1 });
  const arc = whole.path?.pieces.at(-1);
  if (arc?.is !== "arc" || distance(arc.centre, place) < 0.001) return whole;
  const from = bearing(arc.centre, poseOn(arc, 0));
  const to = bearing(arc.centre, place);
  const way = arc.sweep > 0 ? turned(to, -from) : turned(from, -to);
  const rounds = laps ?? (ask.amount ? Math.floor((AMOUNTS[ask.amount] ?? 0) / FULL_TURN) : 0);
  const near = way < THERE || FULL_TURN - way < THERE;
  const once = near ? Math.max(1, rounds ?? 0) : (rounds ?? 0) + way / FULL_TURN;
  return rideFigure(manege, start, { ...rest, laps: once });
}
