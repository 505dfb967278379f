/** client/ride/moving-rider.tsx - a rider on the plan. With every frame a transform is set and nothing is rendered; the
 *  drawing itself is rendered anew when the hands change. */
import type { ReadonlySignal } from "@preact/signals";
import { useSignalEffect } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { atPose, onPage } from "../../shared/drawing/plan-frame.ts";
import { poseAtTime, type TimedPath } from "../../shared/ground/timed-path.ts";
import type { HandsFigure } from "../../shared/hands/figure.ts";
import { onFoot } from "./moment.ts";
import { seconds } from "./playing.ts";
import { RiderFromAbove } from "./rider-from-above.tsx";

export function MovingRider({
  timed,
  starts = 0,
  figure,
  soft = false,
  letter = "",
  children,
}: {
  timed: TimedPath;
  /** Seconds of the common clock at which this rider begins. */
  starts?: number;
  figure: ReadonlySignal<HandsFigure | null>;
  soft?: boolean;
  letter?: string;
  children?: ComponentChildren;
}) {
  const group = useRef<SVGGElement>(null);
  const name = useRef<SVGGElement>(null);
  const path = useRef({ timed, starts });
  path.current = { timed, starts };
  const place = () => {
    const own = seconds.value - path.current.starts;
    const pose = poseAtTime(path.current.timed, own);
    // Who has not set out yet, or has ended, is drawn where he is, but faintly.
    const away = own < 0 || own > path.current.timed.duration;
    group.current?.classList.toggle("away", away);
    name.current?.classList.toggle("away", away);
    group.current?.setAttribute("transform", atPose(pose));
    const { x, y } = onPage(pose);
    name.current?.setAttribute("transform", `translate(${x.toFixed(3)} ${y.toFixed(3)})`);
  };
  useSignalEffect(place);
  useLayoutEffect(place);
  const drawn = figure.value;
  return (
    <>
      <g ref={group} class={`moving-rider ${soft ? "soft" : ""}`}>
        {children}
        {drawn && <RiderFromAbove figure={drawn} onFoot={onFoot.value} />}
      </g>
      {letter && (
        <g ref={name} class="rider-letter">
          <text x="1.1" y="-1.1">
            {letter}
          </text>
        </g>
      )}
    </>
  );
}
