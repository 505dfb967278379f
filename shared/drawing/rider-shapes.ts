/** shared/drawing/rider-shapes.ts - horse, rider, hands, reins and shaft seen from above, as shapes: one drawing for the
 *  small figure, for the plan and for paper. May import: shared/hands. Keeps rules W15-W17 (shared/drawing/RULES.md).
 *  In decimetres, y down as the page has it, ahead is up, the rider's seat is the origin. What is not known is drawn
 *  open and broken, never left out. */
import type { FigureHand, FigureLine, HandsFigure, Point } from "../hands/figure.ts";

export type RiderInk =
  | "horse"
  | "ear"
  | "shoulders"
  | "rider"
  | "rein"
  | "hand"
  | "rein hand"
  | "shaft"
  | "point"
  | "planted"
  | "measure"
  | "ground"
  | "height"
  | "told"
  | "not known";

/** A shape with what it is; `broken`: not known to be so. `width` of the line is that of the small figure. */
export type RiderShape = { as: RiderInk; broken: boolean; width: number } & (
  | { is: "path"; d: string }
  | { is: "circle"; x: number; y: number; r: number }
  | { is: "words"; from: "middle" | "start"; x: number; y: number; words: string }
);

const HORSE =
  "M0,-13 C1.9,-11.6 2.3,-8.6 1.9,-6.4 C3.9,-3.2 4.2,4.4 3.1,9.8 C2,12.6 -2,12.6 -3.1,9.8 C-4.2,4.4 -3.9,-3.2 -1.9,-6.4 C-2.3,-8.6 -1.9,-11.6 0,-13Z";
const EARS = "M-1.1,-11.4 l-1,-1.9 M1.1,-11.4 l1,-1.9";
const SHOULDERS = "M-2.9,1.2 C-2.6,-.5 2.6,-.5 2.9,1.2 C2.4,2.6 -2.4,2.6 -2.9,1.2Z";

/** From metres with y ahead. */
export const inDecimetres = ({ x, y }: Point): Point => ({ x: x * 10, y: -y * 10 });

/** The shapes in the order they are drawn. */
export function riderShapes(figure: HandsFigure, onFoot: boolean): RiderShape[] {
  const body: RiderShape[] = onFoot
    ? [path("shoulders", SHOULDERS, 0.45)]
    : [path("horse", HORSE, 0.45), path("ear", EARS, 0.4)];
  const rider: RiderShape = {
    as: "rider",
    broken: false,
    width: 0.45,
    is: "circle",
    x: 0,
    y: 1,
    r: onFoot ? 1.4 : 2,
  };
  return [
    ...body,
    rider,
    ...handShapes(figure.left, onFoot),
    ...handShapes(figure.right, onFoot),
    ...thingShapes(figure),
  ];
}

function path(as: RiderInk, d: string, width: number, broken = false): RiderShape {
  return { as, broken, width, is: "path", d };
}

/** A dot; an open ring where it has the reins; broken where nothing is known of it. */
function handShapes(hand: FigureHand, onFoot: boolean): RiderShape[] {
  const { x, y } = inDecimetres(hand.at);
  const reins = path("rein", `M${x},${y} L-1.2,-9.4 M${x},${y} L1.2,-9.4`, 0.3, hand.reins === "may");
  const as = hand.reins === "yes" ? "rein hand" : "hand";
  const mark: RiderShape = { as, broken: hand.unknown, width: 0.5, is: "circle", x, y, r: 1 };
  return hand.reins === "no" || onFoot ? [mark] : [reins, mark];
}

/** Each weapon with its point. One that may be in a hand and cannot be drawn is told by three dots, once. */
function thingShapes({ things }: HandsFigure): RiderShape[] {
  const open = things.some((thing) => thing.open);
  const silent: RiderShape = {
    as: "not known",
    broken: false,
    width: 0,
    is: "words",
    from: "middle",
    x: 0,
    y: 18,
    words: "· · ·",
  };
  return [...things.flatMap(({ line }) => (line === null ? [] : lineShapes(line))), ...(open ? [silent] : [])];
}

function lineShapes(ends: FigureLine): RiderShape[] {
  const [butt, point] = [inDecimetres(ends.butt), inDecimetres(ends.point)];
  const line = path("shaft", `M${butt.x},${butt.y} L${point.x},${point.y}`, 0.6, ends.looselyHeld);
  const planted = ends.planted === "yes" ? [path("planted", crossAt(butt), 0.5)] : [];
  return [line, path("point", pointPath(butt, point), 0), ...planted];
}

/** A small solid point at the end of the line from `from` to `to`. */
function pointPath(from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return `M${to.x + dx * 2.2},${to.y + dy * 2.2} L${to.x - dy},${to.y + dx} L${to.x + dy},${to.y - dx}Z`;
}

const crossAt = ({ x, y }: Point) => `M${x - 1},${y - 1} l2,2 M${x + 1},${y - 1} l-2,2`;

export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** What the drawing takes up: the horse, and all of every shaft. */
export function riderBox({ things }: HandsFigure): Box {
  const ends = things.flatMap(({ line }) => (line ? [inDecimetres(line.butt), inDecimetres(line.point)] : []));
  const xs = [-9, 9, ...ends.map(({ x }) => x)];
  const ys = [-15, 15, ...ends.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - 3, Math.min(...ys) - 3];
  return { left, top, width: Math.max(...xs) + 3 - left, height: Math.max(...ys) + 3 - top };
}
