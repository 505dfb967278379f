/** shared/decide/frontiers.ts - how many assignments lead to each cell, and how many lead on from it.
 *  May import: siblings in shared/decide. Going forward every √n-th frontier is kept; going backward the stretch between
 *  two of them is counted again. So memory grows with √n, time stays linear. */
import { type Block, emptyBlock, gathered, multiply, spread } from "./blocks.ts";
import { sizeOf } from "./cells.ts";
import type { Course } from "./course.ts";
import type { Layer } from "./layers.ts";
import { type Link, Linker } from "./links.ts";

/** Cells of all frontiers up to which links are kept: some 30 MB. Beyond, they are made a second time. */
const LINKS_KEPT = 5_000_000;

/** How large counts can get at each frontier, in bits: of assignments leading there, and of those leading on. */
interface Sizes {
  forward: number[];
  backward: number[];
}

export class Frontiers {
  readonly sizes: Sizes;
  /** The last frontier. */
  readonly last: Block;
  private readonly linker: Linker;
  private readonly stride: number;
  private readonly kept = new Map<number, Block>();
  private readonly links: Link[] = [];
  /** From one kept frontier to the next: the blocks and links between, by event. */
  private stretch = new Map<number, { leading: Block; link: Link }>();

  constructor(course: Course) {
    const { layers, cells } = course;
    this.sizes = sizesOf(course);
    this.linker = new Linker(course);
    this.stride = Math.max(1, Math.ceil(Math.sqrt(layers.length)));
    const keep = cells.reduce((sum, set) => sum + sizeOf(set), 0) <= LINKS_KEPT;
    let block = emptyBlock(cells[0]?.length ?? 0, this.sizes.forward[0] as number);
    block.limbs[0]?.fill(1);
    for (const index of layers.keys()) {
      if (index % this.stride === 0) this.kept.set(index, block);
      const link = this.linker.link(index);
      if (keep) this.links[index] = link;
      block = this.after(index, link, block);
    }
    this.last = block;
  }

  /** An event, and the assignments that lead to each cell before it, counted by the readings of cruxes that have left play.
   *  Ask from the last event to the first. */
  at(index: number): { leading: Block; link: Link } {
    const known = this.stretch.get(index);
    if (known) return known;
    this.stretch = new Map();
    const start = index - (index % this.stride);
    let leading = this.kept.get(start) as Block;
    for (let at = start; ; at += 1) {
      const link = this.links[at] ?? this.linker.link(at);
      const event = { leading, link };
      this.stretch.set(at, event);
      if (at === index) return event;
      leading = this.after(at, link, leading);
    }
  }

  private after(index: number, link: Link, block: Block): Block {
    const bits = this.sizes.forward[index + 1] as number;
    if (link.is !== "enter") return gathered(block, link.to, link.after, bits);
    const next = spread(block, link.from, bits);
    weigh(next, link);
    return next;
  }

  /** Assignments that lead on from each cell before an event, from those that lead on after it. */
  before(index: number, link: Link, after: Block): Block {
    const bits = this.sizes.backward[index] as number;
    if (link.is !== "enter") return spread(after, link.to, bits);
    if (!link.weights) return gathered(after, link.from, link.before, bits);
    const weighed = spread(
      after,
      Int32Array.from({ length: after.cells }, (_, cell) => cell),
      bits,
    );
    weigh(weighed, link);
    return gathered(weighed, link.from, link.before, bits);
  }
}

function weigh(block: Block, { weights }: Link & { is: "enter" }): void {
  if (weights) multiply(block, (cell) => weights[cell] as bigint);
}

function sizesOf({ layers, values }: Course): Sizes {
  const choices = (crux: number) => Math.log2(Math.max(1, values[crux]?.length ?? 1));
  const weight = (layer: Layer) =>
    layer.is === "enter" && layer.weights ? Math.max(0, ...layer.weights.map((one) => one.toString(2).length)) : 0;
  const forward = [1];
  for (const layer of layers) {
    forward.push((forward.at(-1) as number) + weight(layer) + (layer.is === "leave" ? choices(layer.crux) : 0));
  }
  const backward = [1];
  for (const layer of layers.toReversed()) {
    backward.push((backward.at(-1) as number) + weight(layer) + (layer.is === "enter" ? choices(layer.crux) : 0));
  }
  return { forward, backward: backward.reverse() };
}
