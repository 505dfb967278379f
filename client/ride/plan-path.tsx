/** client/ride/plan-path.tsx - the line that is ridden, step by step: firm where it is done, heavy now, thin to come;
 *  dotted where it is supplied or only joins, dashed where it is implied. Ticks show the way it goes, numbers where
 *  a step begins. Drawn anew when another step comes, not with every frame. */
import { useMemo } from "preact/hooks";
import { arrowsOf } from "../../shared/drawing/arrows.ts";
import { drawnPieces, strokesOf } from "../../shared/drawing/path-strokes.ts";
import { GROUND_TO_PAGE, onPage } from "../../shared/drawing/plan-frame.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import type { PlacedNumbers } from "./plan-words.ts";

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

/** A wash under the stages in which the reading that is ridden beside has something else. */
export function PlanDifferences({ ride, stages }: { ride: Ridden; stages: readonly number[] }) {
  return (
    <g class="differences" transform={GROUND_TO_PAGE}>
      {stages.flatMap((index) =>
        strokesOf(drawnPieces(ride, index)).map((stroke, at) => <path key={`${index} ${at}`} d={stroke.d} />),
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

/** Numbers of steps where they begin; those that begin together stand in one row, and what is done again has its number
 *  where it first begins. */
export function PlanNumbers({
  ride,
  now,
  places,
  pixel,
}: {
  ride: Ridden;
  now: number;
  places: readonly PlacedNumbers[];
  pixel: number;
}) {
  const nowNumber = ride.stages[now]?.number;
  return (
    <g class="step-numbers">
      {places.map(({ numbers, x, y }) => (
        <text key={numbers[0]} x={x} y={y + 4.5 * pixel} text-anchor="middle">
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
      ))}
    </g>
  );
}
