/** shared/drawing/path-strokes.ts - the line that is ridden, cut into runs that are drawn alike.
 *  May import: shared/ground, types of shared/ride. Keeps rules W1-W3 (shared/drawing/RULES.md). Metres on the ground frame. */
import { pieceData } from "../ground/path-data.ts";
import type { Piece } from "../ground/piece.ts";
import type { Ridden, RiddenStage, Standing } from "../ride/ridden.ts";

/** How a stretch is drawn: by its warrant, or as a supplied line that joins. */
export type StrokeLine = "stated" | "implied" | "supplied" | "join";

/** One run of a stage's line that is drawn alike. */
export interface Stroke {
  /** SVG path data in the frame of the ground. */
  d: string;
  line: StrokeLine;
}

/** A piece of the path with the way it is drawn. */
export interface DrawnPiece {
  piece: Piece;
  line: StrokeLine;
  stage: number;
}

const LINES: Partial<Record<Standing, StrokeLine>> = { implied: "implied", supplied: "supplied" };

/** The pieces of one stage that have a line, in the order they are ridden. */
export function drawnPieces(ride: Ridden, stage: number): DrawnPiece[] {
  const spans = ride.lanes.find(({ key }) => key === "horse")?.spans ?? [];
  const { pieces } = ride.stages[stage] as RiddenStage;
  const drawn: DrawnPiece[] = [];
  for (let index = pieces.from; index < pieces.to; index += 1) {
    const piece = ride.timed.path.pieces[index];
    if (piece === undefined || piece.length === 0) continue;
    const middle = ((ride.timed.times[index] ?? 0) + (ride.timed.times[index + 1] ?? 0)) / 2;
    const span = spans.find(({ from, to }) => from <= middle && middle < to);
    const line = ride.pieces[index]?.joins ? "join" : ((span && LINES[span.standing]) ?? "stated");
    drawn.push({ piece, line, stage });
  }
  return drawn;
}

/** Pieces that follow one another and are drawn alike, each run in one stroke. `meet` tells whether the second goes on
 *  where the first ends; without it they all do. */
export function strokesOf(
  drawn: readonly DrawnPiece[],
  meet: (first: Piece, second: Piece) => boolean = () => true,
): Stroke[] {
  const strokes: Stroke[] = [];
  for (const [index, { piece, line }] of drawn.entries()) {
    const data = pieceData(piece);
    const last = strokes.at(-1);
    const before = drawn[index - 1];
    if (last?.line === line && before && meet(before.piece, piece)) last.d += ` ${data.replace(/^M \S+ \S+ /, "")}`;
    else strokes.push({ d: data, line });
  }
  return strokes;
}
