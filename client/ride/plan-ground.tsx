/** client/ride/plan-ground.tsx - the ground from above: walls one firm line, the track a faint one, stations with their
 *  names. Sizes of signs and letters are in CSS pixels, turned to metres by `--m` (metres a pixel) of the plan. */

import { type RidingGround, roundedFrame } from "../../shared/ground/grounds.ts";
import type { Point } from "../../shared/ground/plane.ts";
import { type PlacedName, pointsOf } from "./plan-words.ts";

/** `pixel`: metres in one CSS pixel. */
export function PlanGround({
  ground,
  names,
  pixel,
}: {
  ground: RidingGround;
  names: readonly PlacedName[];
  pixel: number;
}) {
  return (
    <g class="the-ground">
      <Outline ground={ground} inset={0} name="wall" />
      {ground.trackOffset > 0 && <Outline ground={ground} inset={ground.trackOffset} name="track" />}
      {names.map((name) => (
        <Station key={name.station.id} name={name} pixel={pixel} />
      ))}
    </g>
  );
}

function Outline({ ground, inset, name }: { ground: RidingGround; inset: number; name: string }) {
  const { x, y, corner } = roundedFrame(ground, inset);
  return <rect class={name} x={-x} y={-y} width={2 * x} height={2 * y} rx={corner} />;
}

function Station({ name: { station, sign, x, y }, pixel }: { name: PlacedName; pixel: number }) {
  return (
    <g class="station">
      {station.outline.is === "point" ? (
        <path d={lozenge(sign, 7 * pixel)} />
      ) : (
        <path d={shapeOf(pointsOf(station), station.outline.is === "area")} />
      )}
      <text x={x} y={y + 4.5 * pixel} text-anchor="middle">
        {station.name}
      </text>
    </g>
  );
}

const lozenge = ({ x, y }: Point, r: number) =>
  `M${x},${y - r} l${r * 0.72},${r} ${-r * 0.72},${r} ${-r * 0.72},${-r}Z`;
const shapeOf = (points: readonly Point[], closed: boolean) =>
  `M${points.map(({ x, y }) => `${x},${y}`).join(" L")}${closed ? "Z" : ""}`;
