/** shared/decide/automaton.ts - the sets of states the stages can be in, and how readings lead from one to the next.
 *  May import: siblings in shared/decide. A *node* stands between two stages: a set of states that completions without a
 *  barring hit may have reached, and whether every completion so far was without. What the stage then makes of a node
 *  under readings is one node or none, so every assignment has one way through. Only what is reached is run. */
import type { IndexedPuzzle } from "./indexed.ts";
import type { Layer, StageLayer } from "./layers.ts";
import type { Outcome, Runs } from "./runs.ts";

/** Where a table holds less than 0: nobody comes here, or all completions break; then -1 - n names `breaks[n]`. */
export const UNREACHED = -0x80000000;

export interface Table {
  groups: number;
  /** By node before and group of readings, node after node: the node after. */
  next: Int32Array;
}

export interface Automaton {
  /** By stage. */
  tables: readonly Table[];
  /** Before each stage and after the last, by node: whether all completions are without a barring hit. */
  surely: readonly (readonly boolean[])[];
  breaks: readonly { stage: string; rules: readonly string[] }[];
  /** Whether any assignment gets through to the end. */
  any: boolean;
  /** The most nodes, and the most cells (nodes times combinations), at once. */
  nodes: number;
  cells: number;
}

/** Which members are kept: rules that bar, and stated values that are taken as not said. */
export interface Enforced {
  bars: (stage: number, rule: string) => boolean;
  without: (stage: number) => readonly string[];
}

const ALL: Enforced = { bars: () => true, without: () => [] };

/** The nodes after one stage and what leads there. */
interface Grown {
  nodes: { states: readonly number[]; surely: boolean }[];
  numbers: Map<string, number>;
}

/** Null when more than `most` cells come together. */
export function automatonOf(
  puzzle: IndexedPuzzle,
  layers: readonly Layer[],
  runs: Runs,
  most: number,
  enforced: Enforced = ALL,
): Automaton | null {
  const start = [...new Set(puzzle.puzzle.start)].map((state) => runs.numberOf(state)).sort((a, b) => a - b);
  let nodes: Grown["nodes"] = start.length > 0 ? [{ states: start, surely: true }] : [];
  let reached = new Uint8Array(nodes.length).fill(1);
  const tables: Table[] = [];
  const surely = [nodes.map((node) => node.surely)];
  const breaks = new Breaks();
  let [peak, cells] = [nodes.length, 1];
  for (const layer of layers) {
    if (layer.is === "stage") {
      const grown: Grown = { nodes: [], numbers: new Map() };
      const step = stepOf(puzzle, layer, runs, enforced);
      const next = tableOf(layer, nodes, reached, (node, values) => {
        const { states, key, broken, rules } = step(node.states, values);
        if (states.length === 0) return -1 - breaks.numberOf(puzzle.puzzle.stages[layer.stage]?.id ?? "", rules);
        return numberIn(grown, states, key, node.surely && !broken);
      });
      tables.push({ groups: layer.groups.length, next });
      reached = through(layer, next, reached, nodes.length, grown.nodes.length);
      nodes = grown.nodes;
      surely.push(nodes.map((node) => node.surely));
      peak = Math.max(peak, nodes.length);
    } else {
      reached = carried(layer, reached, nodes.length);
    }
    cells = Math.max(cells, reached.length);
    if (cells > most) return null;
  }
  return { tables, surely, breaks: breaks.all, any: reached.includes(1), nodes: peak, cells };
}

class Breaks {
  readonly all: { stage: string; rules: readonly string[] }[] = [];
  private readonly numbers = new Map<string, number>();

  numberOf(stage: string, rules: readonly string[]): number {
    const key = JSON.stringify([stage, ...rules]);
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.numbers.set(key, this.all.length);
    this.all.push({ stage, rules });
    return this.all.length - 1;
  }
}

function numberIn({ nodes, numbers }: Grown, states: readonly number[], key: string, surely: boolean): number {
  const full = surely ? `${key}!` : key;
  const known = numbers.get(full);
  if (known !== undefined) return known;
  numbers.set(full, nodes.length);
  nodes.push({ states, surely });
  return nodes.length - 1;
}

interface Step {
  states: readonly number[];
  /** Names the set of states. */
  key: string;
  /** Some completion broke a barring rule here. */
  broken: boolean;
  /** Those rules, sorted. */
  rules: readonly string[];
}

/** What the stage makes of a set of states. Of a single state it is remembered by outcome. */
function stepOf(
  { puzzle }: IndexedPuzzle,
  { stage }: StageLayer,
  runs: Runs,
  enforced: Enforced,
): (states: readonly number[], values: ArrayLike<number>) => Step {
  const without = enforced.without(stage);
  const single = new Map<Outcome, Step>();
  const together = (outcomes: readonly Outcome[]): Step => {
    const clean = new Set<number>();
    const rules = new Set<string>();
    for (const { ways } of outcomes) {
      for (const { state, hits } of ways) {
        const barring = hits.filter(({ bars, rule }) => bars && enforced.bars(stage, rule));
        for (const { rule } of barring) rules.add(rule);
        if (barring.length === 0) clean.add(state);
      }
    }
    const states = [...clean].sort((a, b) => a - b);
    return { states, key: states.join(" "), broken: rules.size > 0, rules: [...rules].sort() };
  };
  if (!puzzle.stages[stage]) throw new RangeError(`There is no stage ${stage}.`);
  return (states, values) => {
    const [only] = states;
    if (only === undefined || states.length > 1) {
      return together(states.map((state) => runs.outcome(stage, state, values, without)));
    }
    const outcome = runs.outcome(stage, only, values, without);
    const known = single.get(outcome) ?? together([outcome]);
    single.set(outcome, known);
    return known;
  };
}

function tableOf(
  { before, group, groups }: StageLayer,
  nodes: Grown["nodes"],
  reached: Uint8Array,
  goOn: (node: Grown["nodes"][number], values: Uint16Array) => number,
): Int32Array {
  const next = new Int32Array(nodes.length * groups.length).fill(UNREACHED);
  for (const [index, node] of nodes.entries()) {
    const [row, cells] = [index * groups.length, index * before];
    for (let combination = 0; combination < before; combination += 1) {
      if (reached[cells + combination] !== 1) continue;
      const own = group[combination] as number;
      if (next[row + own] === UNREACHED) next[row + own] = goOn(node, groups[own] as Uint16Array);
    }
  }
  return next;
}

function through(
  { before, group, groups }: StageLayer,
  next: Int32Array,
  reached: Uint8Array,
  from: number,
  to: number,
): Uint8Array<ArrayBuffer> {
  const after = new Uint8Array(to * before);
  for (let node = 0; node < from; node += 1) {
    const [row, cells] = [node * groups.length, node * before];
    for (let combination = 0; combination < before; combination += 1) {
      if (reached[cells + combination] !== 1) continue;
      const goal = next[row + (group[combination] as number)] as number;
      if (goal >= 0) after[goal * before + combination] = 1;
    }
  }
  return after;
}

function carried(layer: Exclude<Layer, StageLayer>, reached: Uint8Array, nodes: number): Uint8Array<ArrayBuffer> {
  const carriedOn = new Uint8Array(nodes * layer.after);
  for (let node = 0; node < nodes; node += 1) {
    const [from, to] = [node * layer.before, node * layer.after];
    if (layer.is === "enter") {
      for (let cell = 0; cell < layer.after; cell += 1) {
        carriedOn[to + cell] = reached[from + (layer.parent[cell] as number)] as number;
      }
    } else {
      for (let cell = 0; cell < layer.before; cell += 1) {
        if (reached[from + cell] === 1) carriedOn[to + (layer.into[cell] as number)] = 1;
      }
    }
  }
  return carriedOn;
}
