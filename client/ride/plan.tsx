/** client/ride/plan.tsx - the plan: the ground with what is ridden on it, and over it the riders, which alone move.
 *  The riders have a sheet of their own, so that the lines beneath need not be painted again with every frame. */
import { useSignal, useSignalEffect } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { frameOf, onPage } from "../../shared/drawing/plan-frame.ts";
import { poseAtTime } from "../../shared/ground/timed-path.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { besideLine, compared, stagesThatDiffer } from "./compared.ts";
import { nearestShown } from "./gone-to.ts";
import { besideFigure, figure, foundPose, stageIndex } from "./moment.ts";
import { MovingRider } from "./moving-rider.tsx";
import { PlanGround } from "./plan-ground.tsx";
import { PlanDifferences, PlanNumbers, PlanPath, PlanTicks } from "./plan-path.tsx";
import { type PlacedNumbers, placePlanWords } from "./plan-words.ts";
import { following, seconds } from "./playing.ts";
import { otherRiders } from "./riders.ts";
import { beside } from "./riding.ts";
import { ThreatArc } from "./threat-arc.tsx";

/** Metres from side to side while the plan follows the horse. */
const FOLLOWED_WIDTH = 14;

export function Plan({ ride }: { ride: Ridden }) {
  const box = useRef<HTMLDivElement>(null);
  const sheets = useRef<(SVGGElement | null)[]>([]);
  const size = useSignal({ width: 400, height: 600 });
  const others = otherRiders.value;
  const second = beside.value;
  const line = besideLine.value;
  const frame = frameOf([ride, ...(second ? [second] : []), ...others.map((other) => other.ride)]);
  const zoom = following.value ? Math.max(1, Math.min(frame.width, frame.height) / FOLLOWED_WIDTH) : 1;
  const pixel = 1 / (Math.min(size.value.width / frame.width, size.value.height / frame.height) * zoom);

  useLayoutEffect(() => {
    if (box.current === null) return;
    const measure = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0)
        size.value = { width: entry.contentRect.width, height: entry.contentRect.height };
    });
    measure.observe(box.current);
    return () => measure.disconnect();
  }, []);

  const turnSheets = () => {
    let transform = "";
    if (following.value) {
      const { x, y } = onPage(poseAtTime(ride.timed, seconds.value));
      const [midX, midY] = [frame.left + frame.width / 2, frame.top + frame.height / 2];
      transform = `translate(${(midX - x * zoom).toFixed(3)} ${(midY - y * zoom).toFixed(3)}) scale(${zoom.toFixed(4)})`;
    }
    for (const sheet of sheets.current) sheet?.setAttribute("transform", transform);
  };
  const turn = useRef(turnSheets);
  turn.current = turnSheets;
  useSignalEffect(() => turn.current());
  useLayoutEffect(turnSheets);

  // Words need not move with every hair's breadth of the window.
  const step = Number(pixel.toPrecision(2));
  const drawn = [ride, ...(second ? [second] : []), ...others.map((other) => other.ride)];
  const words = useMemo(() => placePlanWords(drawn, frame, step), [...drawn, step]);

  const viewBox = `${frame.left} ${frame.top} ${frame.width} ${frame.height}`;
  const sheet = (index: number) => (element: SVGGElement | null) => {
    sheets.current[index] = element;
  };
  return (
    <div ref={box} class="plan" style={{ aspectRatio: `${frame.width} / ${frame.height}`, "--m": pixel }}>
      <svg viewBox={viewBox} role="img" aria-label={planWords(ride)}>
        <g ref={sheet(0)}>
          <PlanGround ground={ride.ground} names={words.names} pixel={pixel} />
          {second && <PlanDifferences ride={ride} stages={stagesThatDiffer.value} />}
          {line && <PlanDifferences ride={line} stages={compared.value?.lines.second ?? []} />}
          {line && <PlanPath ride={line} now={-1} soft />}
          {others.map((other) => (
            <PlanPath key={other.id} ride={other.ride} now={-1} soft />
          ))}
          <TheLine ride={ride} numbers={words.numbers} pixel={pixel} />
          <Places pixel={pixel} />
        </g>
      </svg>
      <svg class="riders" viewBox={viewBox} aria-hidden="true">
        <g ref={sheet(1)}>
          {second && <MovingRider timed={second.timed} figure={besideFigure} soft />}
          {others.map((other) => (
            <MovingRider
              key={other.id}
              timed={other.ride.timed}
              starts={other.starts}
              figure={other.figure}
              letter={other.letter}
            />
          ))}
          <MovingRider timed={ride.timed} figure={figure} letter={others.length > 0 ? "A" : ""}>
            <Threats ride={ride} />
          </MovingRider>
        </g>
      </svg>
    </div>
  );
}

/** By itself, so that a new step draws only this anew. */
function TheLine({ ride, numbers, pixel }: { ride: Ridden; numbers: readonly PlacedNumbers[]; pixel: number }) {
  const now = stageIndex.value;
  return (
    <>
      <PlanPath ride={ride} now={now} />
      <PlanTicks ride={ride} now={now} pixel={pixel} />
      <PlanNumbers ride={ride} now={now} places={numbers} pixel={pixel} />
    </>
  );
}

function Threats({ ride }: { ride: Ridden }): ComponentChildren {
  const now = stageIndex.value;
  return ride.threats
    .filter((threat) => threat.stage === now)
    .map((threat) => <ThreatArc key={threat.threat} threat={threat} />);
}

/** Where a finding that was gone to begins, and where two riders are nearest. */
function Places({ pixel }: { pixel: number }) {
  const nearest = nearestShown.value;
  const found = foundPose.value;
  const at = found && onPage(found);
  const [a, b] = nearest ? [onPage(nearest.onA), onPage(nearest.onB)] : [null, null];
  return (
    <>
      {at && <circle class="finding-place" cx={at.x} cy={at.y} r={22 * pixel} />}
      {a && b && <path class="nearest" d={`M${a.x},${a.y} L${b.x},${b.y}`} />}
    </>
  );
}

function planWords(ride: Ridden): string {
  const { ground } = ride;
  return `Plan of ${ride.groundName}, ${ground.width} by ${ground.length} m, with the line of ${ride.title}`;
}
