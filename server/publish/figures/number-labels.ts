/** server/publish/figures/number-labels.ts - numbers of steps in the rubric where each begins, moved apart where they
 *  would crowd; a thin line leads back from a number that stands far off.
 *  May import: shared/drawing, shared/ground, siblings. Millimetres. */
import type { Label, Spot } from "../../../shared/drawing/labels.ts";
import type { Beginning } from "../../../shared/drawing/step-beginnings.ts";
import { stepNumberWords } from "../../../shared/drawing/step-number-words.ts";
import { distanceToWall, type RidingGround } from "../../../shared/ground/grounds.ts";
import { beside, type Pose } from "../../../shared/ground/plane.ts";
import type { Markup } from "../markup.ts";
import { PAPER, RUBRIC, SAID_FACE } from "./paper-ink.ts";
import type { Sheet } from "./plan-sheet.ts";
import { widthOfWords } from "./station-names.ts";
import { shape } from "./svg.ts";

export interface NumberLabel {
  label: Label;
  words: string;
  /** Where the steps begin. */
  at: Spot;
  ink: string;
}

/** What stands beside a place of the line: numbers in the rubric, the letter of a rider in ink. */
export interface Beside {
  pose: Pose;
  words: string;
  ink: string;
}

/** "1–6 ×4" where the line that begins here is ridden four times. */
export const besideOf = ({ pose, numbers }: Beginning, times: number): Beside => ({
  pose,
  words: times > 1 ? `${stepNumberWords(numbers)} ×${times}` : stepNumberWords(numbers),
  ink: RUBRIC,
});

/** Free room between the place and the number; the nearest is wished most. */
const GAPS = [0.9, 2, 3.6, 5.6, 8.4] as const;
/** Degrees from the side that is farther from the wall. */
const AROUND = [0, 180, 45, -45, 135, -135, 22, -22, 158, -158, 90, -90] as const;
const DOT = 0.62;
/** A number farther off than this has a line that leads to it. */
const LED = 2.5;

export function numberLabels(ground: RidingGround, places: readonly Beside[], sheet: Sheet): NumberLabel[] {
  const height = sheet.letters.number * 0.78;
  return places.map(({ pose, words, ink }) => {
    const width = widthOfWords(words, sheet.letters.number) + 0.5;
    const at = sheet.at(pose);
    const aside = 15 / sheet.scale;
    const [left, right] = [beside(pose, 0, aside), beside(pose, 0, -aside)];
    const inward = distanceToWall(ground, left) >= distanceToWall(ground, right) ? 1 : -1;
    const side = pose.heading / 100 + 90 * inward;
    const spots = GAPS.flatMap((gap) =>
      AROUND.map((turn): Spot => {
        const angle = ((side + turn) * Math.PI) / 180;
        const [dx, dy] = [Math.cos(angle), -Math.sin(angle)];
        const free = gap + DOT;
        return { x: at.x + dx * free + beyond(dx) * (width / 2), y: at.y + dy * free + beyond(dy) * (height / 2) };
      }),
    );
    return { words, at, ink, label: { width, height, spots } };
  });
}

/** How far the middle of a number lies beyond its nearest edge, from -1 to 1: half way round a corner it is a corner. */
const beyond = (direction: number): number => Math.min(1, Math.max(-1, direction * Math.SQRT2));

/** The dots where steps begin, and the lines that lead to numbers farther off. */
export function beginningShapes(numbers: readonly NumberLabel[], spots: readonly Spot[]): Markup[] {
  return numbers.flatMap(({ at, label, ink }, index) => {
    const lead = leading(at, spots[index] as Spot, label, ink);
    const dot = shape("circle", { cx: at.x, cy: at.y, r: DOT, fill: ink });
    return lead === null ? [dot] : [lead, dot];
  });
}

export function numberShapes(numbers: readonly NumberLabel[], spots: readonly Spot[], sheet: Sheet): Markup[] {
  const size = sheet.letters.number;
  return numbers.map(({ words, ink }, index) => {
    const spot = spots[index] as Spot;
    return shape(
      "text",
      {
        x: spot.x,
        y: spot.y + size * 0.33,
        "text-anchor": "middle",
        "font-family": SAID_FACE,
        "font-weight": 600,
        "font-size": size,
        fill: ink,
        stroke: PAPER,
        "stroke-width": 0.8,
        "stroke-linejoin": "round",
        "paint-order": "stroke",
      },
      words,
    );
  });
}

function leading(at: Spot, spot: Spot, { width, height }: Label, ink: string): Markup | null {
  const [dx, dy] = [spot.x - at.x, spot.y - at.y];
  const whole = Math.hypot(dx, dy);
  const inside = Math.min(
    width / 2 / Math.max(Math.abs(dx / whole), 1e-9),
    height / 2 / Math.max(Math.abs(dy / whole), 1e-9),
  );
  const free = whole - inside;
  if (free < LED) return null;
  const part = (free - 0.4) / whole;
  const d = `M${at.x.toFixed(2)} ${at.y.toFixed(2)} L${(at.x + dx * part).toFixed(2)} ${(at.y + dy * part).toFixed(2)}`;
  return shape("path", { d, fill: "none", stroke: ink, "stroke-width": 0.16 });
}
