/** shared/ground/figures/ride-figure.ts - every figure by its name: the one door for whoever compiles steps.
 *  May import: schema types, siblings in shared/ground. Keeps rules G31-G36 (shared/ground/RULES.md). */
import type { ValueOf } from "../../../schema/values.ts";
import { mirrorHeading, otherSide, type Pose, type Side } from "../plane.ts";
import { type CircleAsk, rideCircle } from "./circle.ts";
import { type EightAsk, type OblongAsk, rideEight, rideOblong } from "./eight.ts";
import type { FigureResult, Manege } from "./figure.ts";
import { type HalfVolteAsk, rideHalfVolte } from "./half-volte.ts";
import { type HaltAsk, type ReinBackAsk, rideHalt, rideReinBack } from "./rein-back.ts";
import { rideSerpentine, type SerpentineAsk } from "./serpentine.ts";
import { rideSpiral, type SpiralAsk } from "./spiral.ts";
import { rideStraight, type StraightAsk } from "./straight.ts";
import { rideTurn, type TurnAsk } from "./turn.ts";
import { type AcrossAsk, rideAcross, rideAlongWall, type WallAsk } from "./wall.ts";

/** A figure with its parameters. A parameter that is missing or null is not said. */
export type FigureAsk =
  | StraightAsk
  | WallAsk
  | AcrossAsk
  | CircleAsk
  | HalfVolteAsk
  | EightAsk
  | OblongAsk
  | SerpentineAsk
  | SpiralAsk
  | TurnAsk
  | ReinBackAsk
  | HaltAsk;

/** The names of figures are those a slot may hold; the compiler sees to it. */
export type FigureName = ValueOf<"figure"> & FigureAsk["figure"];

/** The figure ridden from `start`, or the refusal with its words. Never throws for what the ask holds. */
export function rideFigure(manege: Manege, start: Pose, ask: FigureAsk): FigureResult {
  switch (ask.figure) {
    case "straight":
    case "charge":
      return rideStraight(manege, start, ask);
    case "along the wall":
      return rideAlongWall(manege, start, ask);
    case "change across":
      return rideAcross(manege, start, ask);
    case "circle":
    case "part circle":
    case "volte":
      return rideCircle(manege, start, ask);
    case "half volte":
    case "half volte reversed":
      return rideHalfVolte(manege, start, ask);
    case "figure of eight":
      return rideEight(manege, start, ask);
    case "oblong":
      return rideOblong(manege, start, ask);
    case "serpentine":
      return rideSerpentine(manege, start, ask);
    case "spiral in":
    case "spiral out":
      return rideSpiral(manege, start, ask);
    case "turn":
      return rideTurn(manege, start, ask);
    case "rein back":
      return rideReinBack(manege, start, ask);
    case "halt":
      return rideHalt(manege, start, ask);
  }
}

function mirrorSide(side: Side | null | undefined): Side | null {
  return side === null || side === undefined ? null : otherSide(side);
}

/** The ask in the mirrored world: sides changed over, headings mirrored, stations as they are (their places mirror). */
export function mirrorAsk(ask: FigureAsk): FigureAsk {
  if (ask.figure === "straight" || ask.figure === "charge") {
    const heading = ask.heading ?? null;
    return { ...ask, heading: heading === null || !Number.isFinite(heading) ? heading : mirrorHeading(heading) };
  }
  return "side" in ask ? { ...ask, side: mirrorSide(ask.side) } : ask;
}
