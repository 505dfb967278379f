/** shared/ground/figures/spiral.ts - spiral in and spiral out: half circles whose diameters change evenly.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G48 (shared/ground/RULES.md).
 *  A spiral of half circles keeps its heading unbroken and its lengths exact; the true one is as good as never ridden. */
import { arcFrom, type Piece } from "../piece.ts";
import { HALF_TURN, type Pose, type Side, signOf } from "../plane.ts";
import {
  after,
  checkCount,
  checkSize,
  checkStart,
  type FigureNote,
  type FigureResult,
  finish,
  firstRefusal,
  inWords,
  type Manege,
  refuse,
  sideOrRein,
  valueOr,
} from "./figure.ts";

/** From `outer` to `inner` (spiral out: from inner to outer), both ridden, in metres across. `laps` is how many times
 *  round, in halves: as many half circles as twice that. */
export type SpiralAsk = {
  readonly figure: "spiral in" | "spiral out";
  readonly outer?: number | null;
  readonly inner?: number | null;
  readonly side?: Side | null;
  readonly laps?: number | null;
};

export function rideSpiral(manege: Manege, start: Pose, ask: SpiralAsk): FigureResult {
  const { usual, ground } = manege;
  const what = `the ${ask.figure}`;
  const laps = ask.laps ?? null;
  const wrong = firstRefusal(
    checkStart(manege, start),
    (ask.outer ?? null) === null ? null : checkSize(`the outer diameter of ${what}`, ask.outer as number, 20),
    (ask.inner ?? null) === null ? null : checkSize(`the inner diameter of ${what}`, ask.inner as number, 6),
    laps === null ? null : checkCount(`twice the laps of ${what} (its half circles)`, 2 * laps, true),
  );
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const side = sideOrRein(ask.side, start, what, notes);
  const room = Math.min(usual.circleDiameter, Math.min(ground.width, ground.length) - 2 * ground.trackOffset);
  const outer = valueOr(ask.outer, room, "outer", "how large it is outside", " m across", notes);
  const inner = valueOr(ask.inner, usual.spiralInner, "inner", "how far in it goes", " m across", notes);
  if (!(inner < outer))
    return refuse(
      "contradiction",
      `The inside of a spiral was expected to be smaller than its outside, but it is ${inWords(inner)} m and the outside ${inWords(outer)} m. Exchange the two, or ride a circle.`,
    );
  const usualHalves = Math.max(2, Math.round((outer - inner) / usual.spiralStep) + 1);
  const halves = Math.round(
    2 * valueOr(laps, usualHalves / 2, "laps", "how often it goes round", " times round", notes),
  );
  if (halves < 2)
    return refuse(
      "contradiction",
      `At least one whole round was expected for ${what}, from one size to the other, but it is ${inWords(halves / 2)}. Give 1 or more.`,
    );
  const pieces: Piece[] = [];
  for (let half = 0; half < halves; half += 1) {
    const part = half / (halves - 1);
    const diameter = ask.figure === "spiral in" ? outer + (inner - outer) * part : inner + (outer - inner) * part;
    pieces.push(arcFrom(after(start, pieces), diameter / 2, signOf(side) * HALF_TURN));
  }
  return finish(manege, `${what} between ${inWords(outer)} m and ${inWords(inner)} m across`, pieces, notes);
}
