/** shared/drawing/drawn-once.ts - what is ridden again is drawn once: each stretch of the ground by its strongest line.
 *  May import: shared/ground, siblings. Keeps rules W4-W6 (shared/drawing/RULES.md). Metres, hundredths of a degree.
 *  On paper nothing tells the rounds of a circle apart but their numbers; dashes drawn over dashes would close up to a
 *  line that is stated. */
import { type Arc, cutPiece, type Piece, poseOn } from "../ground/piece.ts";
import { distance, FULL_TURN, type Point, radiansOf } from "../ground/plane.ts";
import type { DrawnPiece, StrokeLine } from "./path-strokes.ts";

/** Lines nearer than this are one: a tenth of what a pen draws on a page-wide court. */
const NEAR = 0.06;
/** A rest shorter than this is not drawn by itself. */
const SHORTEST = 0.1;

const STRONGEST_FIRST: readonly StrokeLine[] = ["stated", "implied", "supplied", "join"];

type Interval = readonly [from: number, to: number];

/** A straight line or a circle of the ground, with the stretches of it that are drawn already: metres from the foot of
 *  the normal, or hundredths of a degree about the centre in [0, 36000). */
type Carrier =
  | { is: "line"; at: Point; way: Point; drawn: Interval[] }
  | { is: "circle"; centre: Point; radius: number; drawn: Interval[] };

/** The pieces, cut where a stronger or an earlier one lies over them; in the order they came. */
export function drawnOnce(pieces: readonly DrawnPiece[]): DrawnPiece[] {
  const carriers: Carrier[] = [];
  const kept: DrawnPiece[][] = pieces.map(() => []);
  for (const line of STRONGEST_FIRST) {
    for (const [index, drawn] of pieces.entries()) {
      if (drawn.line !== line) continue;
      const rests = restsOf(carriers, drawn.piece);
      kept[index] = rests.map((piece) => ({ ...drawn, piece }));
    }
  }
  return kept.flat();
}

/** What is left of a piece; all of it counts as drawn from now on. */
function restsOf(carriers: Carrier[], piece: Piece): Piece[] {
  if (piece.is !== "straight" && piece.is !== "arc") return [];
  let carrier = carriers.find((known) => carries(known, piece));
  if (carrier === undefined) {
    carrier =
      piece.is === "arc"
        ? { is: "circle", centre: piece.centre, radius: piece.radius, drawn: [] }
        : { is: "line", at: piece.from, way: wayOf(piece.from, piece.to), drawn: [] };
    carriers.push(carrier);
  }
  const [start, end] = stretchOf(carrier, piece);
  const parts = withoutDrawn([Math.min(start, end), Math.max(start, end)], carrier);
  const shortest = SHORTEST / piece.length;
  return parts.flatMap(([from, to]) => {
    const [a, b] = [(from - start) / (end - start), (to - start) / (end - start)];
    const [first, last] = a < b ? [a, b] : [b, a];
    return last - first < shortest && (first > 0 || last < 1) ? [] : [between(piece, first, last)];
  });
}

function carries(carrier: Carrier, piece: Piece): boolean {
  if (carrier.is === "circle")
    return (
      piece.is === "arc" &&
      distance(carrier.centre, piece.centre) < NEAR &&
      Math.abs(carrier.radius - piece.radius) < NEAR
    );
  return piece.is === "straight" && off(carrier, piece.from) < NEAR && off(carrier, piece.to) < NEAR;
}

const off = ({ at, way }: { at: Point; way: Point }, { x, y }: Point) =>
  Math.abs((x - at.x) * way.y - (y - at.y) * way.x);

function wayOf(from: Point, to: Point): Point {
  const length = distance(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** Where a piece begins and ends on its carrier; on a circle the end may lie past a whole turn. */
function stretchOf(carrier: Carrier, piece: Piece): Interval {
  if (carrier.is === "line") {
    const along = ({ x, y }: Point) => (x - carrier.at.x) * carrier.way.x + (y - carrier.at.y) * carrier.way.y;
    return [along(poseOn(piece, 0)), along(poseOn(piece, 1))];
  }
  const from = poseOn(piece, 0);
  const start = Math.atan2(from.y - carrier.centre.y, from.x - carrier.centre.x) / radiansOf(1);
  return [start, start + (piece as Arc).sweep];
}

/** The parts of a stretch that nothing is drawn on yet; marks them drawn. */
function withoutDrawn(stretch: Interval, carrier: Carrier): Interval[] {
  const round = carrier.is === "circle";
  // More than one lap in a piece lies over itself.
  const [from, to] = round ? [stretch[0], Math.min(stretch[1], stretch[0] + FULL_TURN)] : stretch;
  const turns = round ? [-3, -2, -1, 0, 1, 2, 3].map((turn) => turn * FULL_TURN) : [0];
  const copies = carrier.drawn.flatMap(([a, b]) => turns.map((turn): Interval => [a + turn, b + turn]));
  let rests: Interval[] = [[from, to]];
  for (const [a, b] of copies) {
    rests = rests.flatMap(([low, high]): Interval[] => {
      if (b <= low || a >= high) return [[low, high]];
      return [[low, a] as const, [b, high] as const].filter(([one, other]) => other > one);
    });
  }
  carrier.drawn.push([from, to]);
  return rests;
}

function between(piece: Piece, first: number, last: number): Piece {
  const head = last < 1 ? cutPiece(piece, last)[0] : piece;
  return first > 0 ? cutPiece(head, first / last)[1] : head;
}
