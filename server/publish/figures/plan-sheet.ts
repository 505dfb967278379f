/** server/publish/figures/plan-sheet.ts - how the ground lies on the paper: its scale, and room for the names around it.
 *  May import: shared/drawing, shared/ground, shared/ride types, siblings. Millimetres on the paper, y down. */
import type { Spot } from "../../../shared/drawing/labels.ts";
import { cornersOfStation, wallSide } from "../../../shared/drawing/plan-frame.ts";
import type { RidingGround } from "../../../shared/ground/grounds.ts";
import { type Box, boxAround, boxOfPiece, type Piece } from "../../../shared/ground/piece.ts";
import type { Point } from "../../../shared/ground/plane.ts";
import type { GroundStation } from "../../../shared/ground/stations.ts";
import { type Name, nameOf } from "./station-names.ts";

/** The largest plan when no width is asked for. */
const WIDEST = 150;
const TALLEST = 120;
/** Around everything, and below it for the measure. */
const EDGE = 1.5;
export const MEASURE_ROOM = 6;

export interface Sheet {
  width: number;
  height: number;
  /** Millimetres on the paper for a metre on the ground. */
  scale: number;
  /** Half the height of a station's lozenge. */
  sign: number;
  /** Heights of letters: names of stations, numbers of steps. */
  letters: { name: number; number: number };
  at: (point: Point) => Spot;
  /** The same as a transform, for lines given in the frame of the ground. */
  transform: string;
  names: ReadonlyMap<string, Name>;
}

interface Wish {
  width?: number;
  tallest?: number;
}

/** `width` and `tallest` in millimetres; what is not asked for is as large as reads well. */
export function sheetFor(ground: RidingGround, pieces: readonly Piece[], wish: Wish): Sheet {
  const box = boxOf(ground, pieces);
  // How large the letters are depends on how large the plan comes out, and that a little on the letters.
  const first = layOut(ground, box, wish, LETTERS.least);
  const letter = Math.sqrt(first.width * first.height) / LETTERS.toSheet;
  return layOut(ground, box, wish, Math.min(LETTERS.most, Math.max(LETTERS.least, letter)));
}

/** Heights of type that can be read at arm's length, eight points even where a paper prints its figures smaller, and on a
 *  large sheet; and how many fit a side of the sheet. */
const LETTERS = { least: 3.1, most: 4.2, toSheet: 38 } as const;
/** A name takes no more of the width and of the height that are wished for than this, so long as its words can be parted. */
const NAME = { ofWidth: 0.2, ofHeight: 0.22 } as const;

function layOut(ground: RidingGround, box: Box, { width, tallest }: Wish, letter: number): Sheet {
  const [across, along] = [box.right - box.left, box.head - box.foot];
  const wished = Math.min(width ?? WIDEST, WIDEST * 2);
  const limit = tallest ?? (width === undefined ? TALLEST : Number.POSITIVE_INFINITY);
  const sign = letter * 0.42;
  const longest = Math.min(wished * NAME.ofWidth, limit * NAME.ofHeight);
  const names = new Map(ground.stations.map(({ id, name }) => [id, nameOf(name, letter, longest)]));
  const widest = (there: (station: GroundStation) => boolean, of: (name: Name) => number): number =>
    Math.max(sign, ...ground.stations.filter(there).map(({ id }) => of(names.get(id) as Name) + sign * 1.7));
  // Names stand outside the wall their station lies in.
  const beside = (side: -1 | 1) =>
    EDGE +
    widest(
      (one) => wallSide(one, ground) === side,
      (name) => name.width,
    );
  const over = (end: -1 | 1) =>
    EDGE +
    widest(
      (one) => endSide(one.outline, ground) === end,
      (name) => name.height,
    );
  const [left, right, top, bottom] = [beside(-1), beside(1), over(1), over(-1) + MEASURE_ROOM];
  const byWidth = Math.max(10, wished - left - right) / across;
  const byHeight = Math.max(10, limit - top - bottom) / along;
  const scale = Math.min(byWidth, byHeight);
  const [x0, y0] = [left - box.left * scale, top + box.head * scale];
  return {
    width: scale * across + left + right,
    height: scale * along + top + bottom,
    scale,
    sign,
    letters: { name: letter, number: letter * 1.13 },
    at: ({ x, y }) => ({ x: x0 + x * scale, y: y0 - y * scale }),
    transform: `matrix(${scale.toFixed(5)} 0 0 ${(-scale).toFixed(5)} ${x0.toFixed(4)} ${y0.toFixed(4)})`,
    names,
  };
}

/** The end wall a station lies in: 1 at the head, -1 at the foot, 0 neither. */
export function endSide(outline: GroundStation["outline"], ground: RidingGround): -1 | 0 | 1 {
  if (outline.is !== "point" || Math.abs(outline.at.y) < ground.length / 2 - 0.6) return 0;
  return outline.at.y < 0 ? -1 : 1;
}

function boxOf(ground: RidingGround, pieces: readonly Piece[]): Box {
  const [x, y] = [ground.width / 2, ground.length / 2];
  const corners = [
    { x: -x, y: -y },
    { x, y },
  ];
  const boxes = pieces.map(boxOfPiece).flatMap(({ left, right, foot, head }) => [
    { x: left, y: foot },
    { x: right, y: head },
  ]);
  return boxAround([...corners, ...boxes, ...ground.stations.flatMap(cornersOfStation)]);
}
