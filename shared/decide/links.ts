/** shared/decide/links.ts - how the cells on one side of an event lead to those on the other.
 *  May import: siblings in shared/decide. A *cell* is a node with a combination of readings in play; cells are numbered node
 *  after node. The *frontier* i is all cells before event i, from 0; the last one is after all events. */
import { type Automaton, type Table, UNREACHED } from "./automaton.ts";
import type { Layer, StageLayer } from "./layers.ts";

export type Link =
  /** Each cell before leads to one cell after, or to none (-1); null: every cell to itself. */
  | { is: "join"; before: number; after: number; to: Int32Array | null }
  /** Each cell after comes from one cell before. */
  | { is: "split"; before: number; after: number; from: Int32Array; weights: readonly bigint[] | null };

/** `boundary` is how many stages lie before the event. */
export function linkOf(layer: Layer, { tables, surely }: Automaton, boundary: number): Link {
  const nodes = surely[boundary]?.length ?? 0;
  if (layer.is === "stage") {
    return stageLink(layer, tables[layer.stage] as Table, nodes, surely[boundary + 1]?.length ?? 0);
  }
  const [before, after] = [nodes * layer.before, nodes * layer.after];
  if (layer.is === "enter") {
    return { is: "split", before, after, from: repeated(layer.parent, nodes, layer.before), weights: layer.weights };
  }
  return { is: "join", before, after, to: repeated(layer.into, nodes, layer.after) };
}

function repeated(pattern: Int32Array, times: number, offset: number): Int32Array {
  const all = new Int32Array(pattern.length * times);
  for (let time = 0; time < times; time += 1) {
    const [base, shift] = [time * pattern.length, time * offset];
    for (let index = 0; index < pattern.length; index += 1) all[base + index] = (pattern[index] as number) + shift;
  }
  return all;
}

function stageLink({ before, group }: StageLayer, { groups, next }: Table, nodes: number, goals: number): Link {
  const [cells, cellsAfter] = [nodes * before, goals * before];
  // Where nobody comes it may lead anywhere, so to itself.
  const stays = nodes === goals && next.every((goal, at) => goal === Math.floor(at / groups) || goal === UNREACHED);
  if (stays) return { is: "join", before: cells, after: cellsAfter, to: null };
  const to = new Int32Array(cells);
  for (let node = 0; node < nodes; node += 1) {
    const [row, base] = [node * groups, node * before];
    for (let combination = 0; combination < before; combination += 1) {
      const goal = next[row + (group[combination] as number)] as number;
      to[base + combination] = goal < 0 ? -1 : goal * before + combination;
    }
  }
  return { is: "join", before: cells, after: cellsAfter, to };
}
