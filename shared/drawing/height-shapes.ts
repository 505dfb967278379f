/** shared/drawing/height-shapes.ts - how high each weapon is carried, beside the rider from above: a measure that stands on
 *  the ground, with the point's mark at its height and the word for it. May import: shared/hands, siblings in
 *  shared/drawing. Keeps rules W16, W21 (shared/drawing/RULES.md). Seen from above a height has no place of its own, so it
 *  stands to the right of the rider. Decimetres of the rider's drawing, y down. */
import type { FigureThing, HandsFigure } from "../hands/figure.ts";
import type { Level } from "../hands/state.ts";
import { type Box, type RiderShape, riderBox } from "./rider-shapes.ts";

const WORDS: Record<Level, string> = { ground: "ground", low: "low", middle: "middle", high: "high" };
/** Above the ground, in decimetres of the drawing: even steps, no measured heights. */
const ABOVE: Record<Level, number> = { ground: 0, low: 3, middle: 6.5, high: 10 };
const TALL = 11;
/** From the foot of one measure to the head of the one below it, with room for a name. */
const APART = 6;
/** What a measure takes to its right for its word, and a letter of a name that stands over it. */
const WIDE = 13;
const LETTER = 1.6;
const MARGIN = 2.5;

/** The box of the figure with its measures: that of the rider where nothing is carried. */
export function handsBox(figure: HandsFigure): Box {
  const rider = riderBox(figure);
  const count = measured(figure).length;
  if (count === 0) return rider;
  const tall = count * (TALL + APART) + MARGIN;
  return { ...rider, width: rider.width + wideOf(figure) + MARGIN, height: Math.max(rider.height, tall) };
}

/** One measure for each weapon that is carried, from above down in their order; named where there are several. */
export function heightShapes(figure: HandsFigure): RiderShape[] {
  const things = measured(figure);
  const { left, width, top, height } = handsBox(figure);
  const x = left + width - wideOf(figure);
  const foot = (index: number) => top + height - MARGIN - (things.length - 1 - index) * (TALL + APART);
  return things.flatMap((thing, index) => measureOf(thing, x, foot(index), things.length > 1));
}

function wideOf(figure: HandsFigure): number {
  const things = measured(figure);
  return Math.max(WIDE, ...(things.length > 1 ? things.map(({ name }) => name.length * LETTER - 1) : []));
}

function measured({ things }: HandsFigure): FigureThing[] {
  return things.filter(({ carried }) => carried);
}

function measureOf({ name, levels }: FigureThing, x: number, foot: number, named: boolean): RiderShape[] {
  const rungs = (["low", "middle", "high"] as const)
    .map((level) => `M${x - 0.7},${foot - ABOVE[level]} h1.4`)
    .join(" ");
  const sure = levels.length === 1;
  const marks = levels.flatMap((level): RiderShape[] => [
    { as: "height", broken: !sure, width: 0.4, is: "circle", x, y: foot - ABOVE[level], r: 1 },
    words("told", x + 2.2, foot - ABOVE[level] + 1, WORDS[level]),
  ]);
  const silent: RiderShape[] =
    levels.length === 0 ? [words("not known", x + 2.2, foot - ABOVE.middle + 1, "· · ·")] : [];
  return [
    { as: "measure", broken: false, width: 0.25, is: "path", d: `M${x},${foot} V${foot - TALL} ${rungs}` },
    { as: "ground", broken: false, width: 0.5, is: "path", d: `M${x - 2},${foot} h4` },
    ...marks,
    ...silent,
    ...(named ? [words("told", x - 2, foot - TALL - 1.6, name)] : []),
  ];
}

function words(as: "told" | "not known", x: number, y: number, said: string): RiderShape {
  return { as, broken: false, width: 0, is: "words", from: "start", x, y, words: said };
}
