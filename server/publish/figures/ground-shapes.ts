/** server/publish/figures/ground-shapes.ts - the ground on paper: walls one firm line, the track a faint one, stations a
 *  lozenge or their own shape. May import: shared/drawing, shared/ground, siblings. Millimetres. */
import type { Area, Spot } from "../../../shared/drawing/labels.ts";
import { cornersOfStation } from "../../../shared/drawing/plan-frame.ts";
import { type RidingGround, roundedFrame } from "../../../shared/ground/grounds.ts";
import type { Point } from "../../../shared/ground/plane.ts";
import type { GroundStation } from "../../../shared/ground/stations.ts";
import type { Markup } from "../markup.ts";
import { FIRM, INK, PAPER } from "./paper-ink.ts";
import type { Sheet } from "./plan-sheet.ts";
import { shape } from "./svg.ts";

export function groundShapes(ground: RidingGround, sheet: Sheet): Markup[] {
  const track =
    ground.trackOffset > 0 ? [outline(ground, ground.trackOffset, sheet, { stroke: FIRM, width: 0.14 })] : [];
  return [outline(ground, 0, sheet, { stroke: INK, width: 0.55 }), ...track];
}

/** The signs lie over the line that is ridden. */
export function stationShapes(ground: RidingGround, sheet: Sheet): Markup[] {
  return ground.stations.map((station) => stationShape(station, sheet));
}

function outline(
  ground: RidingGround,
  inset: number,
  sheet: Sheet,
  { stroke, width }: { stroke: string; width: number },
): Markup {
  const { x, y, corner } = roundedFrame(ground, inset);
  const { x: left, y: top } = sheet.at({ x: -x, y });
  const size = { x: left, y: top, width: 2 * x * sheet.scale, height: 2 * y * sheet.scale };
  const rx = corner === 0 ? null : corner * sheet.scale;
  return shape("rect", { ...size, rx, fill: "none", stroke, "stroke-width": width });
}

function stationShape({ outline: place }: GroundStation, sheet: Sheet): Markup {
  const ink = { fill: PAPER, stroke: INK, "stroke-width": 0.28, "stroke-linejoin": "round" };
  if (place.is === "point") return shape("path", { d: lozenge(sheet.at(place.at), sheet.sign), ...ink });
  const points = (place.is === "line" ? [place.from, place.to] : place.corners).map((corner: Point) => {
    const { x, y } = sheet.at(corner);
    return `${x.toFixed(2)} ${y.toFixed(2)}`;
  });
  const d = `M${points.join(" L")}${place.is === "area" ? "Z" : ""}`;
  return shape("path", { d, ...ink, fill: place.is === "area" ? PAPER : "none" });
}

function lozenge({ x, y }: Spot, size: number): string {
  const [across, down] = [(size * 0.72).toFixed(2), size.toFixed(2)];
  return `M${x.toFixed(2)} ${(y - size).toFixed(2)} l${across} ${down} -${across} ${down} -${across} -${down}Z`;
}

/** The middle of a station on the paper. */
export function middleOf(station: GroundStation, sheet: Sheet): Spot {
  const corners = cornersOfStation(station).map(sheet.at);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return { x: mean(corners.map(({ x }) => x)), y: mean(corners.map(({ y }) => y)) };
}

/** What the signs take up. */
export function stationSigns(ground: RidingGround, sheet: Sheet): Area[] {
  return ground.stations.map((station) => areaOf(station, sheet));
}

export function areaOf(station: GroundStation, sheet: Sheet): Area {
  const corners = cornersOfStation(station).map(sheet.at);
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const width = Math.max(...xs) - Math.min(...xs);
  const height = Math.max(...ys) - Math.min(...ys);
  const middle = { x: (Math.max(...xs) + Math.min(...xs)) / 2, y: (Math.max(...ys) + Math.min(...ys)) / 2 };
  return { ...middle, width: Math.max(sheet.sign * 1.5, width), height: Math.max(sheet.sign * 2, height) };
}

/** Places along the walls, so that words do not stand on them. */
export function wallPoints(ground: RidingGround, sheet: Sheet): Spot[] {
  const { x, y, corner } = roundedFrame(ground);
  const [across, along] = [x - corner, y - corner];
  const points: Point[] = [];
  const step = 1 / sheet.scale;
  for (let at = -across; at <= across; at += step) points.push({ x: at, y }, { x: at, y: -y });
  for (let at = -along; at <= along; at += step) points.push({ x, y: at }, { x: -x, y: at });
  const round = corner === 0 ? 0 : Math.ceil((corner * Math.PI) / 2 / step);
  for (let index = 0; index < round; index += 1) {
    const angle = (index / round) * (Math.PI / 2);
    const [dx, dy] = [across + corner * Math.cos(angle), along + corner * Math.sin(angle)];
    points.push({ x: dx, y: dy }, { x: -dx, y: dy }, { x: dx, y: -dy }, { x: -dx, y: -dy });
  }
  return points.map(sheet.at);
}
