/** shared/decide/frontiers.ts - how many assignments lead to each cell, and how many lead on from it.
 *  May import: siblings in shared/decide. Going forward every √n-th frontier is kept; going backward the stretch between
 *  two of them is counted again. So memory grows with √n, time stays linear. */
import type { Automaton } from "./automaton.ts";
import { type Block, emptyBlock, gathered, multiply, spread } from "./blocks.ts";
import type { IndexedPuzzle } from "./indexed.ts";
import type { Layer } from "./layers.ts";
import { type Link, linkOf } from "./links.ts";

/** What a sweep goes over. */
export interface Course {
  puzzle: IndexedPuzzle;
  values: readonly (readonly number[])[];
  layers: readonly Layer[];
  automaton: Automaton;
}

/** How large counts can get at each frontier, in bits: of assignments leading there, and of those leading on. */
interface Sizes {
  forward: number[];
  backward: number[];
}

export class Frontiers {
  readonly sizes: Sizes;
  private readonly boundaries: number[];
  private readonly stride: number;
  private readonly kept = new Map<number, Block>();
  private stretch = new Map<number, Block>();

  constructor(private readonly course: Course) {
    const { layers, automaton } = course;
    this.sizes = sizesOf(course);
    let boundary = 0;
    this.boundaries = layers.map((layer) => (layer.is === "stage" ? boundary++ : boundary));
    this.stride = Math.max(1, Math.ceil(Math.sqrt(layers.length)));
    let block = emptyBlock(automaton.surely[0]?.length ?? 0, this.sizes.forward[0] ?? 0);
    block.limbs[0]?.fill(1);
    this.kept.set(0, block);
    for (const index of layers.keys()) {
      block = this.after(index, block);
      if ((index + 1) % this.stride === 0 || index + 1 === layers.length) this.kept.set(index + 1, block);
    }
  }

  link(index: number): Link {
    return linkOf(this.course.layers[index] as Layer, this.course.automaton, this.boundaries[index] as number);
  }

  /** Assignments that lead to each cell of a frontier, counted by the readings of cruxes that have left play. Ask from
   *  the last to the first. */
  at(index: number): Block {
    const kept = this.kept.get(index) ?? this.stretch.get(index);
    if (kept) return kept;
    this.stretch = new Map();
    const start = index - (index % this.stride);
    let block = this.kept.get(start) as Block;
    for (let at = start; at < index; at += 1) {
      block = this.after(at, block);
      this.stretch.set(at + 1, block);
    }
    return block;
  }

  private after(index: number, block: Block): Block {
    const link = this.link(index);
    const bits = this.sizes.forward[index + 1] as number;
    if (link.is === "join") return gathered(block, link.to, link.after, bits);
    const next = spread(block, link.from, bits);
    if (link.weights) multiply(next, link.weights);
    return next;
  }

  /** Assignments that lead on from each cell before an event, from those that lead on after it. */
  before(link: Link, index: number, after: Block): Block {
    const bits = this.sizes.backward[index] as number;
    if (link.is === "join") return spread(after, link.to, bits);
    if (!link.weights) return gathered(after, link.from, link.before, bits);
    const weighted = spread(
      after,
      Int32Array.from({ length: after.cells }, (_, cell) => cell),
      bits,
    );
    multiply(weighted, link.weights);
    return gathered(weighted, link.from, link.before, bits);
  }
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
