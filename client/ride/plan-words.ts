/** client/ride/plan-words.ts - where the names of stations and the numbers of steps stand on the plan, so that they hide
 *  neither the line nor each other. Metres on the page; `pixel` is the metres in one CSS pixel. */
import { type Area, type Label, placeLabels, type Spot } from "../../shared/drawing/labels.ts";
import { type Frame, onPage, wallSide } from "../../shared/drawing/plan-frame.ts";
import { type Beginning, stepBeginnings } from "../../shared/drawing/step-beginnings.ts";
import { distanceToWall, type RidingGround, roundedFrame } from "../../shared/ground/grounds.ts";
import { poseOn } from "../../shared/ground/piece.ts";
import { beside, type Point } from "../../shared/ground/plane.ts";
import type { GroundStation } from "../../shared/ground/stations.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";

export interface PlacedName extends Spot {
  station: GroundStation;
  /** The middle of its sign. */
  sign: Point;
}
export interface PlacedNumbers extends Spot {
  numbers: readonly number[];
}
export interface PlanWords {
  names: PlacedName[];
  numbers: PlacedNumbers[];
}

/** CSS pixels: about how wide a letter of a name and a figure of a number are, and how high both. */
const LETTER = 6.3;
const FIGURE = 8;
const HEIGHT = 13;
/** From the middle of a sign to its name, beside it and over or under it; from the line to a number. */
const ASIDE = 9;
const OVER = 6;
const OFF_LINE = 8;

/** `drawn`: every ride that has a line on the plan, the first rider's first. */
export function placePlanWords(drawn: readonly Ridden[], frame: Frame, pixel: number): PlanWords {
  const [ride] = drawn;
  if (ride === undefined) return { names: [], numbers: [] };
  const { ground } = ride;
  const signs = ground.stations.map((station) => ({ station, sign: middleOf(station) }));
  const beginnings = stepBeginnings(ride, 18 * pixel);
  const labels = [
    ...signs.map(({ station, sign }) => nameLabel(station, sign, ground, pixel)),
    ...beginnings.map((beginning) => numberLabel(beginning, ground, pixel)),
  ];
  const spots = placeLabels(labels, {
    sheet: {
      x: frame.left + frame.width / 2,
      y: frame.top + frame.height / 2,
      width: frame.width,
      height: frame.height,
    },
    points: [...drawn.flatMap((one) => linePoints(one, 7 * pixel)), ...wallPoints(ground, 7 * pixel)],
    areas: signs.map(({ sign }): Area => ({ ...sign, width: 12 * pixel, height: 16 * pixel })),
  });
  return {
    names: signs.map((one, index) => ({ ...one, ...(spots[index] as Spot) })),
    numbers: beginnings.map(({ numbers }, index) => ({ numbers, ...(spots[signs.length + index] as Spot) })),
  };
}

export function pointsOf({ outline }: GroundStation): Point[] {
  if (outline.is === "point") return [onPage(outline.at)];
  return (outline.is === "line" ? [outline.from, outline.to] : outline.corners).map(onPage);
}

function middleOf(station: GroundStation): Point {
  const points = pointsOf(station);
  const mean = (of: "x" | "y") => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  return { x: mean("x"), y: mean("y") };
}

/** Of what lies in a side wall outside it, of what lies in another wall beyond it, else to the right of its sign; then
 *  wherever there is room. */
function nameLabel(station: GroundStation, sign: Point, ground: RidingGround, pixel: number): Label {
  const [width, height] = [station.name.length * LETTER * pixel, HEIGHT * pixel];
  const side = wallSide(station, ground);
  const [x, y] = [ASIDE * pixel + width / 2, OVER * pixel + height / 2];
  const right = { x: sign.x + x, y: sign.y };
  const left = { x: sign.x - x, y: sign.y };
  const rows = [-1, 1].flatMap((down) =>
    [0, 1, -1].map((across) => ({ x: sign.x + across * x, y: sign.y + down * y })),
  );
  const outward = sign.y < 0 ? rows : [...rows.slice(3), ...rows.slice(0, 3)];
  const inEndWall = side === 0 && Math.abs(sign.y) > ground.length / 2 - 0.5;
  const spots =
    side === -1 ? [left, ...rows] : side === 1 ? [right, ...rows] : inEndWall ? outward : [right, left, ...rows];
  return { width, height, spots };
}

/** Beside the line where a step begins, on the side that is farther from the wall first. */
function numberLabel({ pose, numbers }: Beginning, ground: RidingGround, pixel: number): Label {
  const width = numbers.reduce((sum, number) => sum + String(number).length * FIGURE + 5, -5) * pixel;
  const height = HEIGHT * pixel;
  const [left, right] = [beside(pose, 0, 15 * pixel), beside(pose, 0, -15 * pixel)];
  const inward = distanceToWall(ground, left) >= distanceToWall(ground, right) ? 1 : -1;
  const at = onPage(pose);
  const spots = [90, 45, 135, 0, 180, -90, -45, -135].flatMap((turn) => {
    const angle = ((pose.heading / 100 + inward * turn) * Math.PI) / 180;
    const [dx, dy] = [Math.cos(angle), -Math.sin(angle)];
    const reach =
      OFF_LINE * pixel + Math.min(width / 2 / Math.max(Math.abs(dx), 1e-9), height / 2 / Math.max(Math.abs(dy), 1e-9));
    return [{ x: at.x + dx * reach, y: at.y + dy * reach }];
  });
  return { width, height, spots };
}

function linePoints({ timed }: Ridden, apart: number): Point[] {
  return timed.path.pieces.flatMap((piece) => {
    const count = Math.max(1, Math.ceil(piece.length / apart));
    return Array.from({ length: count + 1 }, (_, index) => onPage(poseOn(piece, index / count)));
  });
}

/** The straight parts of the wall; its rounded corners hold no words. */
function wallPoints(ground: RidingGround, apart: number): Point[] {
  const { x, y, corner } = roundedFrame(ground, 0);
  const points: Point[] = [];
  for (let at = corner - x; at <= x - corner; at += apart) points.push({ x: at, y }, { x: at, y: -y });
  for (let at = corner - y; at <= y - corner; at += apart) points.push({ x, y: at }, { x: -x, y: at });
  return points;
}
