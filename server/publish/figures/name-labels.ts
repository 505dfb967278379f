/** server/publish/figures/name-labels.ts - names of stations on a plan: outside the wall they lie in, else beside their
 *  sign where nothing is in the way. May import: shared/drawing, shared/ground, siblings. Millimetres. */
import type { Label, Spot } from "../../../shared/drawing/labels.ts";
import { wallSide } from "../../../shared/drawing/plan-frame.ts";
import type { RidingGround } from "../../../shared/ground/grounds.ts";
import type { GroundStation } from "../../../shared/ground/stations.ts";
import type { Markup } from "../markup.ts";
import { areaOf, middleOf } from "./ground-shapes.ts";
import { INK, PAPER, TEXT_FACE } from "./paper-ink.ts";
import { endSide, type Sheet } from "./plan-sheet.ts";
import { baselines, type Name } from "./station-names.ts";
import { shape } from "./svg.ts";

export interface NameLabel {
  label: Label;
  name: Name;
}

const GAP = 0.7;

export function nameLabels(ground: RidingGround, sheet: Sheet): NameLabel[] {
  return ground.stations.map((station) => {
    const name = sheet.names.get(station.id) ?? { lines: [], width: 0, height: 0 };
    const spots = spotsOf(station, ground, name, sheet);
    return { name, label: { width: name.width, height: name.height, spots } };
  });
}

function spotsOf(station: GroundStation, ground: RidingGround, { width, height }: Name, sheet: Sheet): Spot[] {
  const at = middleOf(station, sheet);
  const sign = areaOf(station, sheet);
  const [across, down] = [sign.width / 2 + GAP + width / 2, sign.height / 2 + GAP * 0.4 + height / 2];
  const right = { x: at.x + across, y: at.y };
  const left = { x: at.x - across, y: at.y };
  const [above, below] = [
    { x: at.x, y: at.y - down },
    { x: at.x, y: at.y + down },
  ];
  const corners = [
    { x: right.x, y: above.y + height / 2 },
    { x: right.x, y: below.y - height / 2 },
    { x: left.x, y: above.y + height / 2 },
    { x: left.x, y: below.y - height / 2 },
  ];
  const end = endSide(station.outline, ground);
  if (end !== 0) {
    const [outside, inside] = end === 1 ? [above, below] : [below, above];
    // Beside each other the names of a wall make way along it, as far as each still stands by its sign, or stand a line further out.
    const along = [0, -0.2, 0.2, -0.4, 0.4].map((share) => ({ x: outside.x + share * width, y: outside.y }));
    const further = along.map(({ x, y }) => ({ x, y: y + Math.sign(outside.y - at.y) * height }));
    return [...along, ...further, ...corners, inside];
  }
  const side = wallSide(station, ground);
  if (side !== 0) return side === 1 ? [right, ...corners, left] : [left, ...corners, right];
  const inner = station.outline.is === "area" && sign.width > width + 2 && sign.height > height + 1 ? [at] : [];
  return [...inner, right, left, below, above, ...corners];
}

export function nameShapes(names: readonly NameLabel[], spots: readonly Spot[], sheet: Sheet): Markup[] {
  return names.flatMap(({ name }, index) => {
    const { x, y } = spots[index] as Spot;
    const rows = baselines(name, y, sheet.letters.name);
    return name.lines.map((line, at) =>
      shape(
        "text",
        {
          x,
          y: rows[at],
          "text-anchor": "middle",
          "font-family": TEXT_FACE,
          "font-style": "italic",
          "font-size": sheet.letters.name,
          fill: INK,
          stroke: PAPER,
          "stroke-width": 0.7,
          "stroke-linejoin": "round",
          "paint-order": "stroke",
        },
        line,
      ),
    );
  });
}
