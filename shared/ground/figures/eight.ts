/** shared/ground/figures/eight.ts - figures that go round two ends: the figure of eight and the oblong.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G45-G46 (shared/ground/RULES.md). */
import { reachToWall } from "../grounds.ts";
import { arcFrom, type Piece, straight } from "../piece.ts";
import { beside, FULL_TURN, HALF_TURN, type Pose, type Side, signOf } from "../plane.ts";
import {
  after,
  checkCount,
  checkSize,
  checkStart,
  type FigureNote,
  type FigureRefusal,
  type FigureResult,
  finish,
  firstRefusal,
  inWords,
  type Manege,
  sideOrRein,
  valueOr,
} from "./figure.ts";

/** Two equal circles joined where the horse is; the first to `side`. `straight` metres are ridden straight before each
 *  change: “straight an instant before changing” (FEI Dressage Rules Art. 410.3), here 0 unless said. */
export type EightAsk = {
  readonly figure: "figure of eight";
  readonly diameter?: number | null;
  readonly side?: Side | null;
  readonly straight?: number | null;
  readonly laps?: number | null;
};

/** Two straights with a half circle at either end (Xenophon, *On Horsemanship* 7.14), from the start of a straight.
 *  `diameter` is the width across, `straight` the length of each straight. */
export type OblongAsk = {
  readonly figure: "oblong";
  readonly diameter?: number | null;
  readonly straight?: number | null;
  readonly side?: Side | null;
  readonly laps?: number | null;
};

function checkAsk(manege: Manege, start: Pose, ask: EightAsk | OblongAsk): FigureRefusal | null {
  const size = (what: string, value: number | null | undefined): FigureRefusal | null =>
    value === null || value === undefined ? null : checkSize(`${what} of the ${ask.figure}`, value, 10);
  const laps = ask.laps ?? null;
  return firstRefusal(
    checkStart(manege, start),
    size("the diameter", ask.diameter),
    // A figure of eight without a straight is the usual one: 0 is a length there.
    ask.figure === "figure of eight" && ask.straight === 0 ? null : size("the straight", ask.straight),
    laps === null ? null : checkCount(`the laps of the ${ask.figure}`, laps, true),
  );
}

export function rideEight(manege: Manege, start: Pose, ask: EightAsk): FigureResult {
  const wrong = checkAsk(manege, start, ask);
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const side = sideOrRein(ask.side, start, "the first circle of the figure of eight", notes);
  const diameter = valueOr(
    ask.diameter,
    manege.usual.eightDiameter,
    "diameter",
    "how large its circles are",
    " m across",
    notes,
  );
  const between = ask.straight ?? 0;
  const pieces: Piece[] = [];
  let here = start;
  for (let lap = 0; lap < (ask.laps ?? 1); lap += 1) {
    for (const sense of [signOf(side), -signOf(side)]) {
      pieces.push(arcFrom(here, diameter / 2, sense * FULL_TURN));
      if (between > 0) {
        pieces.push(straight(here, beside(here, between)));
        here = { ...beside(here, between), heading: here.heading };
      }
    }
  }
  return finish(manege, `the figure of eight of circles of ${inWords(diameter)} m`, pieces, notes);
}

/** Twice the width, or what there is ahead with the half circle behind it, unless that is too little to be one. */
function usualStraight(manege: Manege, start: Pose, width: number): number {
  const inset = Math.max(manege.ground.trackOffset, manege.usual.margin);
  const room = reachToWall(manege.ground, start, start.heading, inset) - width / 2;
  return room >= width / 2 ? Math.min(2 * width, room) : 2 * width;
}

export function rideOblong(manege: Manege, start: Pose, ask: OblongAsk): FigureResult {
  const wrong = checkAsk(manege, start, ask);
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const side = sideOrRein(ask.side, start, "the oblong", notes);
  const width = valueOr(
    ask.diameter,
    manege.usual.oblongWidth,
    "diameter",
    "how wide the oblong is",
    " m across",
    notes,
  );
  const length = valueOr(
    ask.straight,
    usualStraight(manege, start, width),
    "straight",
    "how long its straights are",
    " m",
    notes,
  );
  const first = straight(start, beside(start, length));
  const near: Piece[] = [first];
  near.push(arcFrom(after(start, near), width / 2, signOf(side) * HALF_TURN));
  const far = after(start, near);
  near.push(straight(far, beside(far, length)));
  near.push(arcFrom(after(start, near), width / 2, signOf(side) * HALF_TURN));
  const pieces = Array.from({ length: ask.laps ?? 1 }, () => near).flat();
  return finish(manege, `the oblong of ${inWords(length)} m straights, ${inWords(width)} m across,`, pieces, notes);
}
