/** client/ride/plan-ground.tsx - the ground from above: walls one firm line, the track a faint one, stations with their
 *  names. Sizes of signs and letters are in CSS pixels, turned to metres by `--m` (metres a pixel) of the plan. */

import { onPage, wallSide } from "../../shared/drawing/plan-frame.ts";
import { type RidingGround, roundedFrame } from "../../shared/ground/grounds.ts";
import type { Point } from "../../shared/ground/plane.ts";
import type { GroundStation } from "../../shared/ground/stations.ts";

/** `pixel`: metres in one CSS pixel. */
export function PlanGround({ ground, pixel }: { ground: RidingGround; pixel: number }) {
  return (
    <g class="the-ground">
      <Outline ground={ground} inset={0} name="wall" />
      {ground.trackOffset > 0 && <Outline ground={ground} inset={ground.trackOffset} name="track" />}
      {ground.stations.map((station) => (
        <Station key={station.id} station={station} ground={ground} pixel={pixel} />
      ))}
    </g>
  );
}

function Outline({ ground, inset, name }: { ground: RidingGround; inset: number; name: string }) {
  const { x, y, corner } = roundedFrame(ground, inset);
  return <rect class={name} x={-x} y={-y} width={2 * x} height={2 * y} rx={corner} />;
}

function Station({ station, ground, pixel }: { station: GroundStation; ground: RidingGround; pixel: number }) {
  const { outline } = station;
  const points = (
    outline.is === "point" ? [outline.at] : outline.is === "line" ? [outline.from, outline.to] : outline.corners
  ).map(onPage);
  const middle = {
    x: points.reduce((sum, point) => sum + point.x, 0) / points.length,
    y: points.reduce((sum, point) => sum + point.y, 0) / points.length,
  };
  return (
    <g class="station">
      {outline.is === "point" ? (
        <path d={lozenge(middle, 7 * pixel)} />
      ) : (
        <path d={shapeOf(points, outline.is === "area")} />
      )}
      <text {...nameAt(station, middle, ground, pixel)}>{station.name}</text>
    </g>
  );
}

const lozenge = ({ x, y }: Point, r: number) =>
  `M${x},${y - r} l${r * 0.72},${r} ${-r * 0.72},${r} ${-r * 0.72},${-r}Z`;
const shapeOf = (points: readonly Point[], closed: boolean) =>
  `M${points.map(({ x, y }) => `${x},${y}`).join(" L")}${closed ? "Z" : ""}`;

/** The name stands to the right of its sign; of what lies in a side wall, outside it. */
function nameAt(station: GroundStation, at: Point, ground: RidingGround, pixel: number) {
  const leftward = wallSide(station, ground) === -1;
  const atEnd = Math.abs(at.y) > ground.length / 2 - 0.5 && Math.abs(at.x) < ground.width / 2 - 0.5;
  return {
    x: at.x + (leftward ? -9 : 9) * pixel,
    y: at.y + (atEnd ? (at.y < 0 ? -5 : 14) : 4.5) * pixel,
    "text-anchor": leftward ? ("end" as const) : ("start" as const),
  };
}
