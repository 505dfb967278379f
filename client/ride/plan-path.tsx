/** client/ride/plan-path.tsx - the line that is ridden, step by step: firm where it is done, heavy now, thin to come;
 *  dotted where it is supplied or only joins, dashed where it is implied. Ticks show the way it goes, numbers where
 *  a step begins. Drawn anew when another step comes, not with every frame. */
import { useMemo } from "preact/hooks";
import { distanceToWall } from "../../shared/ground/grounds.ts";
import { pieceData } from "../../shared/ground/path-data.ts";
import { poseOn } from "../../shared/ground/piece.ts";
import { beside as besidePose, distance, type Pose } from "../../shared/ground/plane.ts";
import { poseAtTime, timeAtLength } from "../../shared/ground/timed-path.ts";
import type { Ridden, RiddenStage, Standing } from "../../shared/ride/ridden.ts";
import { GROUND_TO_PAGE, onPage, turnOnPage } from "./plan-frame.ts";

/** Metres between two ticks of direction. */
const TICKS_APART = 9;
const MOST_TICKS = 200;

/** One run of a stage's line that is drawn alike. */
interface Stroke {
  d: string;
  line: "stated" | "implied" | "supplied" | "join";
}

const LINES: Partial<Record<Standing, Stroke["line"]>> = { implied: "implied", supplied: "supplied" };

function strokesOf(ride: Ridden, stage: RiddenStage): Stroke[] {
  const spans = ride.lanes.find(({ key }) => key === "horse")?.spans ?? [];
  const strokes: Stroke[] = [];
  for (let index = stage.pieces.from; index < stage.pieces.to; index += 1) {
    const piece = ride.timed.path.pieces[index];
    const data = piece === undefined ? "" : pieceData(piece);
    if (data === "") continue;
    const middle = ((ride.timed.times[index] ?? 0) + (ride.timed.times[index + 1] ?? 0)) / 2;
    const span = spans.find(({ from, to }) => from <= middle && middle < to);
    const line = ride.pieces[index]?.joins ? "join" : ((span && LINES[span.standing]) ?? "stated");
    const last = strokes.at(-1);
    if (last?.line === line) last.d += ` ${data.replace(/^M \S+ \S+ /, "")}`;
    else strokes.push({ d: data, line });
  }
  return strokes;
}

export function PlanPath({ ride, now, soft = false }: { ride: Ridden; now: number; soft?: boolean }) {
  const strokes = useMemo(() => ride.stages.map((stage) => strokesOf(ride, stage)), [ride]);
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
  const ticks = useMemo(() => ticksOf(ride), [ride]);
  const size = 4 * pixel;
  const current = ride.stages[now];
  return (
    <g class="ticks">
      {ticks.map(({ time, pose, turn }) => {
        const { x, y } = onPage(pose);
        const isNow = current !== undefined && current.from <= time && time < current.to;
        return (
          <path
            key={time}
            class={isNow ? "now" : undefined}
            transform={`translate(${x} ${y}) rotate(${turn})`}
            d={`M${-size},${size} L0,0 L${size},${size}`}
          />
        );
      })}
    </g>
  );
}

interface Tick {
  time: number;
  pose: Pose;
  /** Degrees clockwise from up, the way it is ridden. */
  turn: number;
}

function ticksOf(ride: Ridden): Tick[] {
  const ticks: Tick[] = [];
  for (let metres = TICKS_APART / 2; metres < ride.metres && ticks.length < MOST_TICKS; metres += TICKS_APART) {
    const time = timeAtLength(ride.timed, metres);
    const pose = poseAtTime(ride.timed, time);
    const turn = turnOnPage(pose) + (isBackAt(ride, time) ? 180 : 0);
    const again = ticks.some(
      (tick) => distance(tick.pose, pose) < TICKS_APART / 2 && Math.cos(((tick.turn - turn) * Math.PI) / 180) > 0,
    );
    if (!again) ticks.push({ time, pose, turn });
  }
  return ticks;
}

function isBackAt({ timed }: Ridden, time: number): boolean {
  const index = timed.times.findIndex((end) => end > time) - 1;
  const piece = timed.path.pieces[index];
  return piece !== undefined && "back" in piece && piece.back;
}

/** Numbers of steps where they begin, on the side that is farther from the wall; those that begin together stand in one
 *  row, and what is done again has its number where it first begins. */
export function PlanNumbers({ ride, now, pixel }: { ride: Ridden; now: number; pixel: number }) {
  const places: { pose: Pose; stages: { index: number; number: number }[] }[] = [];
  const seen = new Set<number>();
  for (const [index, { number, pieces }] of ride.stages.entries()) {
    if (number === null || seen.has(number)) continue;
    seen.add(number);
    const pose = beginningOf(ride, pieces);
    const near = places.find((place) => distance(place.pose, pose) < 18 * pixel);
    if (near) near.stages.push({ index, number });
    else places.push({ pose, stages: [{ index, number }] });
  }
  const nowNumber = ride.stages[now]?.number;
  return (
    <g class="step-numbers">
      {places.map(({ pose, stages }) => {
        const { x, y, anchor } = besideLine(ride, pose, pixel);
        return (
          <text key={stages[0]?.index} x={x} y={y} text-anchor={anchor}>
            {stages.map(({ index, number }, order) => (
              <tspan
                key={index}
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

/** Where a stage begins once it has been joined to the one before; where it takes no way, where that one ended. */
function beginningOf(ride: Ridden, { from, to }: RiddenStage["pieces"]): Pose {
  const { pieces, start } = ride.timed.path;
  let first = from;
  while (first < to - 1 && ride.pieces[first]?.joins) first += 1;
  const piece = pieces[first];
  if (piece !== undefined && to > from) return poseOn(piece, 0);
  const before = pieces[from - 1];
  return before ? poseOn(before, 1) : start;
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
