/** shared/drawing/labels.ts - where words stand on a drawing so that they hide neither the line nor each other.
 *  May import: nothing. Keeps rules W12-W14 (shared/drawing/RULES.md). Any unit, y down as on a page. */

export interface Spot {
  x: number;
  y: number;
}
/** An upright box, by its middle. */
export interface Area extends Spot {
  width: number;
  height: number;
}

export interface Label {
  width: number;
  height: number;
  /** Middles it may have, the one that is wished most first. */
  spots: readonly Spot[];
}

export interface Drawn {
  /** Nothing may stand outside. */
  sheet: Area;
  /** What a word must not hide: places on lines. */
  points: readonly Spot[];
  /** What it must not lie over: signs, other words. */
  areas: readonly Area[];
}

/** What it costs to stand a spot later in the list, to lie over a place of a line, over a share of an area, outside. */
const COST = { later: 0.2, point: 0.5, area: 30, outside: 100 };
/** Rounds in which each label looks again for the best spot among the others. */
const ROUNDS = 3;

/** The middles of the labels, in their order. The same labels give the same spots. */
export function placeLabels(labels: readonly Label[], drawn: Drawn): Spot[] {
  const points = inColumns(drawn.points);
  // What the line and the sheet cost does not change with the other labels.
  const fixed: number[][] = labels.map(() => []);
  const chosen: number[] = labels.map(() => -1);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [index, label] of labels.entries()) {
      const others = labels.flatMap((other, at) => {
        const spot = other.spots[chosen[at] ?? -1];
        return at === index || spot === undefined ? [] : [areaOf(other, spot)];
      });
      const known = fixed[index] ?? [];
      let [best, least] = [0, Number.POSITIVE_INFINITY];
      for (const [at, spot] of label.spots.entries()) {
        // Standing late in the list alone costs as much as the best so far: nothing after it can be better.
        if (at * COST.later >= least) break;
        const area = areaOf(label, spot);
        known[at] ??= fixedCost(area, drawn, points) + at * COST.later;
        let cost = known[at] as number;
        for (const other of others) cost += shareUnder(area, other) * COST.area;
        if (cost < least) [best, least] = [at, cost];
      }
      chosen[index] = best;
    }
  }
  return labels.map((label, index) => label.spots[chosen[index] ?? 0] as Spot);
}

/** Places by their column, so that those near a word are found without looking at all. */
type Columns = ReadonlyMap<number, readonly Spot[]>;
const COLUMN = 4;

function inColumns(points: readonly Spot[]): Columns {
  const columns = new Map<number, Spot[]>();
  for (const point of points) {
    const column = Math.floor(point.x / COLUMN);
    const known = columns.get(column);
    if (known) known.push(point);
    else columns.set(column, [point]);
  }
  return columns;
}

const areaOf = ({ width, height }: Label, { x, y }: Spot): Area => ({ x, y, width, height });

function fixedCost(area: Area, { sheet, areas }: Drawn, columns: Columns): number {
  let cost = 0;
  const last = Math.floor((area.x + area.width / 2) / COLUMN);
  for (let column = Math.floor((area.x - area.width / 2) / COLUMN); column <= last; column += 1) {
    for (const { x, y } of columns.get(column) ?? [])
      if (Math.abs(x - area.x) < area.width / 2 && Math.abs(y - area.y) < area.height / 2) cost += COST.point;
  }
  for (const other of areas) cost += shareUnder(area, other) * COST.area;
  return cost + (1 - shareUnder(area, sheet)) * COST.outside;
}

/** How much of the first lies in the second, from 0 to 1. */
function shareUnder(area: Area, other: Area): number {
  const across = overlap(area.x, area.width, other.x, other.width);
  const down = overlap(area.y, area.height, other.y, other.height);
  return (across * down) / (area.width * area.height);
}

function overlap(a: number, aSize: number, b: number, bSize: number): number {
  return Math.max(0, Math.min(a + aSize / 2, b + bSize / 2) - Math.max(a - aSize / 2, b - bSize / 2));
}
