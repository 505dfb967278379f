/** shared/ground/figures/half-volte.ts - half volte, and half volte reversed: off the wall and back to it on the other rein.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G44 (shared/ground/RULES.md).
 *  A half circle, then obliquely back to the wall; reversed: the same path the other way (De Bussigny, *Equitation*).
 *  The oblique line leaves the half circle and reaches the wall by bends, so that the horse never jumps in its heading. */
import { reachToWall } from "../grounds.ts";
import { shortestJoin } from "../join.ts";
import { movePath, pathOf, rideTheOtherWay } from "../path.ts";
import { arcFrom, type Piece } from "../piece.ts";
import { beside, HALF_TURN, motionBetween, type Pose, type Side, signOf, turned } from "../plane.ts";
import {
  after,
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
  supplied,
  valueOr,
} from "./figure.ts";

/** `side` is where the figure lies from the line one comes along: the inside, for both. `back` is how far back along
 *  that line the oblique reaches it (reversed: how far on it leaves it), measured from where the half circle touches. */
export type HalfVolteAsk = {
  readonly figure: "half volte" | "half volte reversed";
  readonly diameter?: number | null;
  readonly side?: Side | null;
  readonly back?: number | null;
};

export function rideHalfVolte(manege: Manege, start: Pose, ask: HalfVolteAsk): FigureResult {
  const what = `the ${ask.figure}`;
  const wrong = firstRefusal(
    checkStart(manege, start),
    (ask.diameter ?? null) === null ? null : checkSize(`the diameter of ${what}`, ask.diameter as number, 6),
    (ask.back ?? null) === null ? null : checkSize(`the way back to the wall of ${what}`, ask.back as number, 12),
  );
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const side = sideOrRein(ask.side, start, what, notes);
  const diameter = valueOr(
    ask.diameter,
    manege.usual.halfVolteDiameter,
    "diameter",
    "how large its half circle is",
    " m across",
    notes,
  );
  const back = valueOr(
    ask.back,
    usualBack(manege, start, ask, diameter),
    "back",
    "how obliquely it comes back to the wall",
    " m along the wall",
    notes,
  );
  // The same path the other way begins where the half volte ends, and lies on the same side of the line.
  const made =
    ask.figure === "half volte"
      ? halfVolte(start, side, diameter, back)
      : reversed(manege, start, side, diameter, back);
  if (made === null)
    return refuse(
      "contradiction",
      `A half volte that comes back to the wall was expected, but with ${inWords(diameter)} m across and ${inWords(back)} m along the wall its oblique line has no room. Make the way back longer, or the half circle smaller.`,
    );
  const words = ask.figure === "half volte" ? "back to" : "from";
  notes.push(
    supplied(
      "bends",
      `The text does not say how the oblique line bends; the two bends ${words} the wall are supplied.`,
    ),
  );
  return finish(manege, `${what} of ${inWords(diameter)} m to the ${side}`, made, notes);
}

/** Twice the diameter, or what room there is; at least the diameter, below which the two bends do not go in. */
function usualBack(manege: Manege, start: Pose, ask: HalfVolteAsk, diameter: number): number {
  const inset = Math.max(manege.ground.trackOffset, manege.usual.margin);
  const room =
    ask.figure === "half volte"
      ? reachToWall(manege.ground, start, turned(start.heading, HALF_TURN), inset)
      : reachToWall(manege.ground, start, start.heading, inset) - diameter / 2;
  return Math.min(2 * diameter, Math.max(room, diameter));
}

/** The half circle, then bend, line, bend back to the line one came along; null when there is no room for them. */
function halfVolte(start: Pose, side: Side, diameter: number, back: number): Piece[] | null {
  const half = arcFrom(start, diameter / 2, signOf(side) * HALF_TURN);
  const wall = { ...beside(start, -back), heading: turned(start.heading, HALF_TURN) };
  const word = side === "left" ? "LSR" : "RSL";
  const oblique = shortestJoin(after(start, [half]), wall, diameter / 2, () => true);
  return oblique === null || oblique.word !== word ? null : [half, ...oblique.pieces];
}

function reversed(manege: Manege, start: Pose, side: Side, diameter: number, back: number): Piece[] | null {
  // It ends heading against the start, so that ridden the other way it begins heading along it, on the same side.
  const forward = halfVolte(start, side, diameter, back);
  if (forward === null) return null;
  const other = rideTheOtherWay(pathOf(forward, manege.usual.tolerance));
  return [...movePath(other, motionBetween(other.start, start)).pieces];
}
