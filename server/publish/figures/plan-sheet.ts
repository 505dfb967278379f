/** server/publish/figures/plan-sheet.ts - how the ground lies on the paper: its scale, and room for the names around it.
 *  May import: shared/drawing, shared/ground, shared/ride types, siblings. Millimetres on the paper, y down. */
import type { Spot } from "../../../shared/drawing/labels.ts";
import { cornersOfStation, wallSide } from "../../../shared/drawing/plan-frame.ts";
import type { RidingGround } from "../../../shared/ground/grounds.ts";
import { type Box, boxAround, boxOfPiece, type Piece } from "../../../shared/ground/piece.ts";
import type { Point } from "../../../shared/ground/plane.ts";
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
  /** Heights of letters: names of stations, numbers of steps. */
  letters: { name: number; number: number };
  at: (point: Point) => Spot;
  /** The same as a transform, for lines given in the frame of the ground. */
  transform: string;
  names: ReadonlyMap<string, Name>;
}

/** `width` and `tallest` in millimetres; what is not asked for is as large as reads well. */
export function sheetFor(
  ground: RidingGround,
  pieces: readonly Piece[],
  { width, tallest }: { width?: number; tallest?: number },
): Sheet {
  const box = boxOf(ground, pieces);
  const [across, along] = [box.right - box.left, box.head - box.foot];
  const wished = Math.min(width ?? WIDEST, WIDEST * 2);
  const letter = Math.min(4.2, Math.max(2.7, wished / 34));
  const letters = { name: letter, number: letter * 1.06 };
  const most = wished * 0.2;
  const names = new Map(ground.stations.map((station) => [station.id, nameOf(station.name, letters.name, most)]));
  const beside = (side: -1 | 1): number =>
    Math.max(
      0,
      ...ground.stations
        .filter((station) => wallSide(station, ground) === side)
        .map(({ id }) => (names.get(id)?.width ?? 0) + SIGN * 1.7),
    );
  const over = (end: -1 | 1): number =>
    Math.max(
      0,
      ...ground.stations
        .filter((one) => endSide(one.outline, ground) === end)
        .map(({ id }) => (names.get(id)?.height ?? 0) + SIGN * 1.4),
    );
  // What stands beyond the wall already gives the names room.
  const left = EDGE + Math.max(SIGN, beside(-1));
  const right = EDGE + Math.max(SIGN, beside(1));
  const top = EDGE + Math.max(SIGN, over(1));
  const bottom = EDGE + Math.max(SIGN, over(-1)) + MEASURE_ROOM;
  const byWidth = Math.max(10, wished - left - right) / across;
  const byHeight =
    Math.max(10, (tallest ?? (width === undefined ? TALLEST : Number.POSITIVE_INFINITY)) - top - bottom) / along;
  const scale = Math.min(byWidth, byHeight);
  return {
    width: scale * across + left + right,
    height: scale * along + top + bottom,
    scale,
    letters,
    at: ({ x, y }) => ({ x: left + (x - box.left) * scale, y: top + (box.head - y) * scale }),
    transform: `matrix(${scale.toFixed(5)} 0 0 ${(-scale).toFixed(5)} ${(left - box.left * scale).toFixed(4)} ${(top + box.head * scale).toFixed(4)})`,
    names,
  };
}

/** Half the height of a station's lozenge. */
export const SIGN = 1.35;

/** The end wall a station lies in: 1 at the head, -1 at the foot, 0 neither. */
export function endSide(outline: RidingGround["stations"][number]["outline"], ground: RidingGround): -1 | 0 | 1 {
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
