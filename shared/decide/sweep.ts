/** shared/decide/sweep.ts - once forward and once backward over all stages, and everything asked is counted.
 *  May import: siblings in shared/decide. When a crux leaves play, the assignments leading to each cell times those leading
 *  on from it are those that take its reading there: each share is counted at that one event. */
import { type Block, emptyBlock, numberAt } from "./blocks.ts";
import type { Course } from "./course.ts";
import { sumsOfProducts } from "./dot.ts";
import { Frontiers } from "./frontiers.ts";
import { type Later, laterBefore } from "./later.ts";
import type { Column, Layer } from "./layers.ts";
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
  const { layers, puzzle } = course;
  const frontiers = new Frontiers(course);
  const { last } = frontiers;
  const trails = new Trails(last.cells, witnesses);
  const shares: Swept["shares"] = [];
  const flags = flagsAtTheEnd(course);
  let on = atTheEnd(course, frontiers, flags);
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index] as Layer;
    const { leading, link } = frontiers.at(index);
    if (link.is === "leave") {
      const radix = puzzle.radix[link.layer.crux] as number;
      const holding = sumsOfProducts(leading, on.holding, link, radix);
      const surelyHolding = on.surely ? sumsOfProducts(leading, on.surely, link, radix) : holding;
      shares[link.layer.crux] = { holding, surelyHolding };
      meet(together, link, on.later);
    }
    trails.back(link);
    on = {
      holding: frontiers.before(index, link, on.holding),
      surely: on.surely && frontiers.before(index, link, on.surely),
      later: laterBefore(on.later, link, (value) => (layer.is === "enter" ? together.bit(layer.crux, value) : 0)),
    };
  }
  const total = (counted: (surely: boolean) => boolean): bigint =>
    flags.reduce((sum, flag, cell) => (counted(flag) ? sum + numberAt(last, cell) : sum), 0n);
  return { holding: total(() => true), surelyHolding: total((flag) => flag), shares, trails: trails.all };
}

/** Of each cell of the last frontier: whether it surely holds. There is one combination, so a cell is a node. */
function flagsAtTheEnd({ automaton, cells }: Course): boolean[] {
  return (automaton.surely.at(-1) ?? []).filter((_, node) => cells.at(-1)?.[node]?.[0] === 1);
}

function atTheEnd({ layers, automaton }: Course, { sizes }: Frontiers, flags: readonly boolean[]): On {
  const bits = sizes.backward[layers.length] as number;
  const holding = emptyBlock(flags.length, bits);
  holding.limbs[0]?.fill(1);
  if (automaton.surely.every((nodes) => nodes.every((flag) => flag))) return { holding, surely: null, later: [] };
  const surely = emptyBlock(flags.length, bits);
  surely.limbs[0]?.set(flags.map(Number));
  return { holding, surely, later: [] };
}

/** Notes what the readings of a crux that leaves occur with: what is in play beside it, and what is still to come. What
 *  left before has noted it already. */
function meet(together: Together, { layer, to, value, seen }: Link & { is: "leave" }, later: Later): void {
  const { crux, columns } = layer;
  for (const [index, word] of later.entries()) {
    const words = new Uint32Array(highest(value) + 1);
    for (let cell = 0; cell < to.length; cell += 1) {
      const own = value[cell] as number;
      words[own] = (words[own] as number) | (word[to[cell] as number] as number);
    }
    for (const [own, bits] of words.entries()) together.addWord(together.bit(crux, own), index, bits);
  }
  const own = columns.get(crux) as Column;
  const values = highest(own) + 1;
  for (const [other, column] of columns) {
    if (other === crux) continue;
    const beside = new Uint8Array(values * (highest(column) + 1));
    for (let at = 0; at < seen.length; at += 1) {
      const combination = seen[at] as number;
      beside[(column[combination] as number) * values + (own[combination] as number)] = 1;
    }
    for (let pair = 0; pair < beside.length; pair += 1) {
      const first = pair % values;
      if (beside[pair] === 1) together.add(together.bit(crux, first), together.bit(other, (pair - first) / values));
    }
  }
}

/** The highest value in a column; 0 when it is empty. */
function highest(column: Column): number {
  let most = 0;
  for (let row = 0; row < column.length; row += 1) most = Math.max(most, column[row] as number);
  return most;
}
