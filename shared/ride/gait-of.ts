/** shared/ride/gait-of.ts - how fast a piece is ridden: the gait and pace that stand, or those supplied for want of them.
 *  May import: schema types, shared/ground, shared/hands. Keeps rules R19-R20 (shared/ride/RULES.md). Metres a second. */
import type { ValueOf } from "../../schema/values.ts";
import { type HorseGait, speedOf } from "../ground/gaits.ts";
import { exactly } from "../hands/known.ts";
import type { ControlState } from "../hands/state.ts";
import type { RiddenPiece } from "./ridden.ts";

export type PieceGait = Pick<RiddenPiece, "gait" | "pace" | "gaitSupplied" | "speed" | "strideLength">;

/** A person walking; common practice, no source. */
export const ON_FOOT_SPEED = 1.4;

const ON_FOOT: PieceGait = { gait: "walk", pace: null, gaitSupplied: false, speed: ON_FOOT_SPEED, strideLength: null };
export const STANDING: PieceGait = { gait: "halt", pace: null, gaitSupplied: false, speed: 0, strideLength: 0 };

/** The gait of a figure that goes on, where the horse may have stood before it. */
export function gaitOf(
  state: ControlState,
  figure: ValueOf<"figure"> | null,
  horse: readonly HorseGait[],
  notes: string[],
): PieceGait {
  if (state.way === "on foot") {
    notes.push(`On foot: the rider walks the lines himself at ${ON_FOOT_SPEED} m/s, supplied.`);
    return ON_FOOT;
  }
  if (figure === "rein back") return { ...speedIn("walk", null, horse), gaitSupplied: false };
  const said = exactly(state.gait);
  const pace = exactly(state.pace);
  if (said !== null && said !== "halt") return { ...speedIn(said, pace, horse), gaitSupplied: false };
  const supplied = figure === "charge" ? "gallop" : "walk";
  notes.push(`The text does not say at what gait the horse goes; ${supplied} is supplied.`);
  return { ...speedIn(supplied, null, horse), gaitSupplied: true };
}

function speedIn(gait: ValueOf<"gait">, pace: ValueOf<"pace"> | null, horse: readonly HorseGait[]) {
  const { speed, strideLength } = speedOf(gait, pace, horse);
  return { gait, pace, speed, strideLength };
}
