/** shared/decide/sweep.ts - once forward and once backward over all stages, and everything asked is counted.
 *  May import: siblings in shared/decide. When a crux leaves play, the assignments leading to each cell times those leading
 *  on from it are those that take its reading there: each share is counted at that one event. */
import { type Block, emptyBlock, nonZero, numberAt } from "./blocks.ts";
import { type Pairs, sumsOfProducts } from "./dot.ts";
import { type Course, Frontiers } from "./frontiers.ts";
import { type Later, laterBefore, laterBeforeEntering } from "./later.ts";
import type { Layer, LeaveLayer } from "./layers.ts";
import type { Link } from "./links.ts";
import type { Together } from "./together.ts";
import { type Trail, Trails } from "./trails.ts";

export interface Swept {
  holding: bigint;
  surelyHolding: bigint;
  /** By crux and value. */
  shares: { holding: bigint[]; surelyHolding: bigint[] }[];
  /** Assignments that hold, as many as were asked for. */
  trails: Trail[];
}

/** What leads on from each cell of a frontier. */
interface On {
  holding: Block;
  /** Null: as many as hold. */
  surely: Block | null;
  later: Later;
}

/** What occurs together is noted in `together`. */
export function sweep(course: Course, together: Together, witnesses: number): Swept {
  const { layers, automaton, puzzle } = course;
  const frontiers = new Frontiers(course);
  const last = frontiers.at(layers.length);
  const trails = new Trails(last, witnesses);
  const shares: Swept["shares"] = [];
  let on = atTheEnd(course, frontiers);
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index] as Layer;
    const link = frontiers.link(index);
    if (layer.is === "leave" && link.is === "join") {
      const leading = frontiers.at(index);
      const pairs = pairsOf(leading, on.holding, layer, link.to as Int32Array);
      const radix = puzzle.radix[layer.crux] as number;
      const holding = sumsOfProducts(leading, on.holding, pairs, radix);
      const surelyHolding = on.surely ? sumsOfProducts(leading, on.surely, pairs, radix) : holding;
      shares[layer.crux] = { holding, surelyHolding };
      meet(together, layer, pairs, on.later);
    }
    if (trails.any) trails.back(layer, link, frontiers.at(index));
    on = back(on, { layer, link, index, frontiers, together });
  }
  const total = (counted: (surely: boolean) => boolean): bigint =>
    (automaton.surely.at(-1) ?? []).reduce((sum, flag, node) => (counted(flag) ? sum + numberAt(last, node) : sum), 0n);
  return { holding: total(() => true), surelyHolding: total((flag) => flag), shares, trails: trails.all };
}

function atTheEnd({ layers, automaton }: Course, { sizes }: Frontiers): On {
  const flags = automaton.surely.at(-1) ?? [];
  const bits = sizes.backward[layers.length] as number;
  const holding = emptyBlock(flags.length, bits);
  holding.limbs[0]?.fill(1);
  if (automaton.surely.every((nodes) => nodes.every((flag) => flag))) return { holding, surely: null, later: [] };
  const surely = emptyBlock(flags.length, bits);
  surely.limbs[0]?.set(flags.map(Number));
  return { holding, surely, later: [] };
}

interface Event {
  layer: Layer;
  link: Link;
  index: number;
  frontiers: Frontiers;
  together: Together;
}

function back({ holding, surely, later }: On, { layer, link, index, frontiers, together }: Event): On {
  const before = {
    holding: frontiers.before(link, index, holding),
    surely: surely && frontiers.before(link, index, surely),
  };
  if (link.is === "join") return { ...before, later: laterBefore(later, link.to) };
  if (layer.is !== "enter") throw new TypeError("Only a crux that enters splits cells.");
  const bits = layer.value.map((value) => together.bit(layer.crux, value));
  const split = { from: link.from, before: link.before, alive: nonZero(holding), bits };
  return { ...before, later: laterBeforeEntering(later, split) };
}

/** The cells before a crux leaves that are reached and lead on to something that holds. */
function pairsOf(leading: Block, on: Block, { crux, columns }: LeaveLayer, to: Int32Array): Pairs {
  const [reached, alive] = [nonZero(leading), nonZero(on)];
  const column = columns.get(crux) as Uint16Array;
  let found = 0;
  const [first, second] = [new Int32Array(to.length), new Int32Array(to.length)];
  const value = new Uint16Array(to.length);
  for (let cell = 0; cell < to.length; cell += 1) {
    const goal = to[cell] as number;
    if (reached[cell] !== 1 || alive[goal] !== 1) continue;
    first[found] = cell;
    second[found] = goal;
    value[found] = column[cell % column.length] as number;
    found += 1;
  }
  return { first: first.subarray(0, found), second: second.subarray(0, found), value: value.subarray(0, found) };
}

/** Notes what the readings of a crux that leaves occur with: what is in play beside it, and what is still to come. What
 *  left before has noted it already. */
function meet(together: Together, { crux, columns }: LeaveLayer, pairs: Pairs, later: Later): void {
  const combinations = columns.get(crux)?.length as number;
  const seen = new Uint8Array(combinations);
  const words = new Map<number, Uint32Array>();
  for (let pair = 0; pair < pairs.first.length; pair += 1) {
    seen[(pairs.first[pair] as number) % combinations] = 1;
    const value = pairs.value[pair] as number;
    const own = words.get(value) ?? new Uint32Array(later.length);
    words.set(value, own);
    for (let word = 0; word < later.length; word += 1) {
      own[word] = (own[word] as number) | (later[word]?.[pairs.second[pair] as number] as number);
    }
  }
  for (const [value, own] of words) together.addAll(together.bit(crux, value), own);
  const column = columns.get(crux) as Uint16Array;
  for (const [other, values] of columns) {
    if (other === crux) continue;
    for (let combination = 0; combination < combinations; combination += 1) {
      if (seen[combination] !== 1) continue;
      together.add(
        together.bit(crux, column[combination] as number),
        together.bit(other, values[combination] as number),
      );
    }
  }
}
