/** shared/ground/figures/serpentine.ts - loops from side to side: half circles joined by straight lines.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G47 (shared/ground/RULES.md).
 *  After FEI Dressage Rules Art. 410.2. The horse begins across the way the serpentine goes, at the middle of its width,
 *  as at the middle of a short side: half a line, then loops with whole lines between them, and half a line to end. */
import { reachToWall } from "../grounds.ts";
import { arcFrom, type Piece, straight } from "../piece.ts";
import { beside, HALF_TURN, type Pose, QUARTER_TURN, type Side, signOf, turned } from "../plane.ts";
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
  supplied,
  valueOr,
} from "./figure.ts";

/** `side` is the way it goes on, seen from the start; `width` from the outer edge of one loop to that of the next, across
 *  the way it goes; `diameter` that of each half circle. What is not said is made to fill the ground within the track. */
export type SerpentineAsk = {
  readonly figure: "serpentine";
  readonly loops?: number | null;
  readonly side?: Side | null;
  readonly diameter?: number | null;
  readonly width?: number | null;
};

export function rideSerpentine(manege: Manege, start: Pose, ask: SerpentineAsk): FigureResult {
  const { usual, ground } = manege;
  const wrong = firstRefusal(
    checkStart(manege, start),
    (ask.loops ?? null) === null ? null : checkCount("the loops of the serpentine", ask.loops as number, true),
    (ask.diameter ?? null) === null
      ? null
      : checkSize("the half circles of the serpentine", ask.diameter as number, 10),
    (ask.width ?? null) === null ? null : checkSize("the width of the serpentine", ask.width as number, 20),
  );
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const side = sideOrRein(ask.side, start, "the serpentine", notes);
  const loops = valueOr(ask.loops, usual.serpentineLoops, "loops", "how many loops there are", "", notes);
  const inset = Math.max(ground.trackOffset, usual.margin);
  const onward = reachToWall(ground, start, turned(start.heading, signOf(side) * QUARTER_TURN), inset);
  const diameter = ask.diameter ?? onward / loops;
  if (diameter < usual.tolerance.distance)
    return refuse(
      "does-not-fit",
      `Room to the ${side} was expected for the loops of the serpentine, but there is none from here. Begin it elsewhere, or let it go to the other side.`,
    );
  if ((ask.diameter ?? null) === null)
    notes.push(
      supplied(
        "diameter",
        `The text does not say how large the loops are; half circles of ${inWords(diameter)} m fill the ${inWords(onward)} m there are.`,
      ),
    );
  const ahead = Math.min(
    reachToWall(ground, start, start.heading, inset),
    reachToWall(ground, start, turned(start.heading, HALF_TURN), inset),
  );
  const width = ask.width ?? 2 * ahead;
  if ((ask.width ?? null) === null)
    notes.push(
      supplied(
        "width",
        `The text does not say how wide the serpentine is; ${inWords(width)} m is supplied, as far as the ground goes to both sides.`,
      ),
    );
  if (width < diameter - usual.tolerance.distance)
    return refuse(
      "contradiction",
      `The serpentine was to be at least as wide as its half circles, but it is ${inWords(width)} m wide and they are ${inWords(diameter)} m. Ride more loops, or make it wider.`,
    );
  const pieces = lines(start, signOf(side), loops, diameter, width, usual.tolerance.distance);
  return finish(manege, `the serpentine of ${loops} loops`, pieces, notes);
}

function lines(start: Pose, first: number, loops: number, diameter: number, width: number, least: number): Piece[] {
  const pieces: Piece[] = [];
  const go = (metres: number): void => {
    // Loops that touch one another have no line between them.
    if (metres <= least) return;
    const here = after(start, pieces);
    pieces.push(straight(here, beside(here, metres)));
  };
  const line = width - diameter;
  go(line / 2);
  for (let loop = 0; loop < loops; loop += 1) {
    const sense = loop % 2 === 0 ? first : -first;
    pieces.push(arcFrom(after(start, pieces), diameter / 2, sense * HALF_TURN));
    go(loop === loops - 1 ? line / 2 : line);
  }
  return pieces;
}
