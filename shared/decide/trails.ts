/** shared/decide/trails.ts - some assignments that hold, traced back from the end.
 *  May import: siblings in shared/decide. Every cell that is reached at all goes back to the beginning, and each assignment
 *  has one way through: so different trails are different assignments, and none runs dry. */
import { type Block, nonZero } from "./blocks.ts";
import type { Layer } from "./layers.ts";
import type { Link } from "./links.ts";

/** A value for each crux. */
export type Trail = ReadonlyMap<number, number>;

interface Open {
  cell: number;
  values: Trail;
}

export class Trails {
  private open: Open[];

  /** From the cells of the last frontier; at most `wanted`. */
  constructor(
    last: Block,
    private readonly wanted: number,
  ) {
    this.open = [...nonZero(last)].flatMap((flag, cell) => (flag === 1 ? [{ cell, values: new Map() }] : []));
    this.open = this.open.slice(0, wanted);
  }

  get any(): boolean {
    return this.open.length > 0;
  }

  get all(): Trail[] {
    return this.open.map(({ values }) => values);
  }

  /** Over one event back. `leading` is the block before it. */
  back(layer: Layer, link: Link, leading: Block): void {
    if (link.is === "split") {
      this.open = this.open.map(({ cell, values }) => ({ cell: link.from[cell] as number, values }));
      return;
    }
    const { to } = link;
    if (!to) return;
    const goals = new Map<number, Open[]>();
    for (const one of this.open) goals.set(one.cell, [...(goals.get(one.cell) ?? []), one]);
    const reached = nonZero(leading);
    const further: Open[] = [];
    for (let cell = 0; cell < to.length && further.length < this.wanted; cell += 1) {
      if (reached[cell] !== 1) continue;
      for (const { values } of goals.get(to[cell] as number) ?? []) {
        further.push({ cell, values: layer.is === "leave" ? withValue(values, layer, cell) : values });
      }
    }
    this.open = further.slice(0, this.wanted);
  }
}

function withValue(values: Trail, layer: Layer & { is: "leave" }, cell: number): Trail {
  return new Map([...values, [layer.crux, layer.columns.get(layer.crux)?.[cell % layer.before] as number]]);
}
