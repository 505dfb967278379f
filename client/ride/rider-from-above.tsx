/** client/ride/rider-from-above.tsx - horse, rider, hands, reins and shaft seen from above, for the small figure in Read
 *  and for the plan. The shapes are those of shared/drawing; the widths given here are those of the small figure, the
 *  plan sets its own. */
import { heightShapes } from "../../shared/drawing/height-shapes.ts";
import { type RiderInk, type RiderShape, riderShapes } from "../../shared/drawing/rider-shapes.ts";
import type { HandsFigure } from "../../shared/hands/figure.ts";

const CLASSES: Partial<Record<RiderInk, string>> = { "rein hand": "hand rein-hand", "not known": "not-known" };

export function RiderFromAbove({ figure, onFoot = false }: { figure: HandsFigure; onFoot?: boolean }) {
  return (
    <>
      {riderShapes(figure, onFoot).map((shape, index) => (
        <Shape key={index} shape={shape} />
      ))}
    </>
  );
}

/** How high each weapon is carried, beside the rider. */
export function HeightsBeside({ figure }: { figure: HandsFigure }) {
  return (
    <>
      {heightShapes(figure).map((shape, index) => (
        <Shape key={index} shape={shape} />
      ))}
    </>
  );
}

function Shape({ shape }: { shape: RiderShape }) {
  const name = `${CLASSES[shape.as] ?? shape.as}${shape.broken ? " unknown" : ""}`;
  const width = shape.width === 0 ? undefined : shape.width;
  switch (shape.is) {
    case "path":
      return <path class={name} d={shape.d} stroke-width={width} />;
    case "circle":
      return <circle class={name} cx={shape.x} cy={shape.y} r={shape.r} stroke-width={width} />;
    case "words":
      return (
        <text class={name} x={shape.x} y={shape.y} text-anchor={shape.from}>
          {shape.words}
        </text>
      );
  }
}
