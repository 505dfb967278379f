/** shared/decide/trails.ts - some assignments that hold, traced back from the end.
 *  May import: siblings in shared/decide. Every cell of the course goes back to the beginning, and each assignment has one
 *  way through: so different trails are different assignments, and none runs dry. */
import type { Link } from "./links.ts";

/** A value for each crux. */
export type Trail = ReadonlyMap<number, number>;

interface Open {
  cell: number;
  values: Trail;
}

export class Trails {
  private open: Open[];

  /** From the cells of the last frontier; at most `wanted`, from 0. */
  constructor(
    cells: number,
    private readonly wanted: number,
  ) {
    this.open = Array.from({ length: Math.min(cells, wanted) }, (_, cell) => ({ cell, values: new Map() }));
  }

  get all(): Trail[] {
    return this.open.map(({ values }) => values);
  }

  /** Over one event back. */
  back(link: Link): void {
    if (this.open.length === 0) return;
    if (link.is === "enter") {
      this.open = this.open.map(({ cell, values }) => ({ cell: link.from[cell] as number, values }));
      return;
    }
    const { to } = link;
    if (!to) return;
    const further: Open[] = [];
    for (const { cell: goal, values } of this.open) {
      for (let cell = to.indexOf(goal); cell >= 0 && further.length < this.wanted; cell = to.indexOf(goal, cell + 1)) {
        further.push({ cell, values: link.is === "leave" ? withValue(values, link, cell) : values });
      }
    }
    this.open = further;
  }
}

function withValue(values: Trail, { layer, value }: Link & { is: "leave" }, cell: number): Trail {
  return new Map([...values, [layer.crux, value[cell] as number]]);
}
