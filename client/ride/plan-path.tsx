/** client/ride/plan-path.tsx - the line that is ridden, step by step: firm where it is done, heavy now, thin to come;
 *  dotted where it is supplied or only joins, dashed where it is implied. Ticks show the way it goes, numbers where
 *  a step begins. Drawn anew when another step comes, not with every frame. */
import { useMemo } from "preact/hooks";
import { arrowsOf } from "../../shared/drawing/arrows.ts";
import { drawnPieces, strokesOf } from "../../shared/drawing/path-strokes.ts";
import { GROUND_TO_PAGE, onPage } from "../../shared/drawing/plan-frame.ts";
import { stepBeginnings } from "../../shared/drawing/step-beginnings.ts";
import { distanceToWall } from "../../shared/ground/grounds.ts";
import { beside as besidePose, type Pose } from "../../shared/ground/plane.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";

/** Metres between two ticks of direction, and what each keeps from the others. */
const TICKS = { apart: 9, clear: 1.2 };

export function PlanPath({ ride, now, soft = false }: { ride: Ridden; now: number; soft?: boolean }) {
  const strokes = useMemo(() => ride.stages.map((_, index) => strokesOf(drawnPieces(ride, index))), [ride]);
  const when = (index: number) => (soft ? "soft" : index < now ? "done" : index === now ? "now" : "next");
  // The stage that is ridden now is drawn last, over the others.
  const order = [...strokes.keys()].sort((a, b) => Number(a === now) - Number(b === now));
  return (
    <g class="the-path" transform={GROUND_TO_PAGE}>
      {order.map((index) =>
        strokes[index]?.map((stroke, at) => (
          <path key={`${index} ${at}`} class={`line ${when(index)} w-${stroke.line}`} d={stroke.d} />
        )),
      )}
    </g>
  );
}

/** Small open arrowheads along the line; where it is ridden again the same way, one is enough. */
export function PlanTicks({ ride, now, pixel }: { ride: Ridden; now: number; pixel: number }) {
  const ticks = useMemo(() => arrowsOf(ride, TICKS), [ride]);
  const size = 4 * pixel;
  return (
    <g class="ticks">
      {ticks.map(({ seconds, pose, toward, stage }) => {
        const { x, y } = onPage(pose);
        return (
          <path
            key={seconds}
            class={stage === now ? "now" : undefined}
            transform={`translate(${x} ${y}) rotate(${90 - toward / 100})`}
            d={`M${-size},${size} L0,0 L${size},${size}`}
          />
        );
      })}
    </g>
  );
}

/** Numbers of steps where they begin, on the side that is farther from the wall; those that begin together stand in one
 *  row, and what is done again has its number where it first begins. */
export function PlanNumbers({ ride, now, pixel }: { ride: Ridden; now: number; pixel: number }) {
  const places = stepBeginnings(ride, 18 * pixel);
  const nowNumber = ride.stages[now]?.number;
  return (
    <g class="step-numbers">
      {places.map(({ pose, numbers }) => {
        const { x, y, anchor } = besideLine(ride, pose, pixel);
        return (
          <text key={numbers[0]} x={x} y={y} text-anchor={anchor}>
            {numbers.map((number, order) => (
              <tspan
                key={number}
                class={number === nowNumber ? "now" : undefined}
                dx={order === 0 ? undefined : 5 * pixel}
              >
                {number}
              </tspan>
            ))}
          </text>
        );
      })}
    </g>
  );
}

function besideLine(
  ride: Ridden,
  pose: Pose,
  pixel: number,
): { x: number; y: number; anchor: "start" | "middle" | "end" } {
  const [left, right] = [besidePose(pose, 0, 15 * pixel), besidePose(pose, 0, -15 * pixel)];
  const at = onPage(distanceToWall(ride.ground, left) > distanceToWall(ride.ground, right) ? left : right);
  const across = at.x - onPage(pose).x;
  const anchor = Math.abs(across) < 8 * pixel ? "middle" : across < 0 ? "end" : "start";
  return { x: at.x, y: at.y + 4.5 * pixel, anchor };
}
