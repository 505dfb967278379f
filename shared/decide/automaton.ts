/** shared/decide/automaton.ts - the sets of states the stages can be in, and how readings lead from one to the next.
 *  May import: siblings in shared/decide. A *node* stands between two stages: a set of states that completions without a
 *  barring hit may have reached, and whether every completion so far was without. What the stage then makes of a node
 *  under readings is one node or none, so every assignment has one way through. Only what is reached is run. */
import { addCommon, bitsOf, type CellSet, emptyRow, hasBit, meets, setBit } from "./cells.ts";
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
  /** Before each event and after the last: the cells that some assignment comes through. */
  reached: readonly CellSet[];
  /** The most nodes at once. */
  nodes: number;
}

/** Whether any assignment gets through to the end. */
export function getsThrough({ reached }: Automaton): boolean {
  return (reached.at(-1) ?? []).some((row) => row.some((word) => word !== 0));
}

/** Which members are kept: rules that bar, and stated values that are taken as not said. */
export interface Enforced {
  bars: (stage: number, rule: string) => boolean;
  without: (stage: number) => readonly string[];
}

const ALL: Enforced = { bars: () => true, without: () => [] };

/** Null when more than `most` cells come together. */
export function automatonOf(
  puzzle: IndexedPuzzle,
  layers: readonly Layer[],
  runs: Runs,
  most: number,
  enforced: Enforced = ALL,
): Automaton | null {
  const start = [...new Set(puzzle.puzzle.start)].map((state) => runs.numberOf(state)).sort((a, b) => a - b);
  let nodes: readonly Node[] = start.length > 0 ? [{ states: start, surely: true }] : [];
  const reached: CellSet[] = [nodes.map(() => Uint32Array.of(1))];
  const tables: Table[] = [];
  const surely = [nodes.map((node) => node.surely)];
  const breaks = new Breaks();
  for (const layer of layers) {
    const before = reached.at(-1) as CellSet;
    if (layer.is === "stage") {
      const step = stepOf(layer.stage, runs, enforced);
      const id = puzzle.puzzle.stages[layer.stage]?.id ?? "";
      const grown = new Grown((rules) => breaks.numberOf(id, rules), step, layer);
      reached.push(grown.from(nodes, before));
      tables.push({ groups: layer.groups.length, next: grown.next });
      nodes = grown.nodes;
      surely.push(nodes.map((node) => node.surely));
    } else {
      reached.push(before.map((row) => carried(layer, row)));
    }
    if (nodes.length * layer.after > most) return null;
  }
  return { tables, surely, breaks: breaks.all, reached, nodes: Math.max(...surely.map(({ length }) => length)) };
}

interface Node {
  states: readonly number[];
  surely: boolean;
}

/** The nodes after one stage, and what leads to them. */
class Grown {
  readonly nodes: Node[] = [];
  next: Int32Array = new Int32Array(0);
  private readonly numbers = new Map<string, number>();
  private readonly reached: Uint32Array<ArrayBuffer>[] = [];

  constructor(
    private readonly breakOf: (rules: readonly string[]) => number,
    private readonly step: (states: readonly number[], values: ArrayLike<number>) => Step,
    private readonly layer: StageLayer,
  ) {}

  from(nodes: readonly Node[], set: CellSet): CellSet {
    const { groups, masks } = this.layer;
    this.next = new Int32Array(nodes.length * groups.length).fill(UNREACHED);
    for (const [index, node] of nodes.entries()) {
      const own = set[index] as Uint32Array;
      const row = index * groups.length;
      if (masks) this.byGroup(node, row, own, masks);
      else this.oneByOne(node, row, own);
    }
    return this.reached;
  }

  private byGroup(node: Node, row: number, own: Uint32Array, masks: readonly Uint32Array[]): void {
    for (const [choice, mask] of masks.entries()) {
      if (!meets(own, mask)) continue;
      const goal = this.goalOf(node, this.layer.groups[choice] as Uint16Array);
      this.next[row + choice] = goal;
      if (goal >= 0) addCommon(this.reached[goal] as Uint32Array, own, mask);
    }
  }

  private oneByOne(node: Node, row: number, own: Uint32Array): void {
    const { group, groups } = this.layer;
    const combinations = bitsOf(own);
    for (let at = 0; at < combinations.length; at += 1) {
      const combination = combinations[at] as number;
      const choice = group[combination] as number;
      let goal = this.next[row + choice] as number;
      if (goal === UNREACHED) {
        goal = this.goalOf(node, groups[choice] as Uint16Array);
        this.next[row + choice] = goal;
      }
      if (goal >= 0) setBit(this.reached[goal] as Uint32Array, combination);
    }
  }

  private goalOf(node: Node, values: Uint16Array): number {
    const { states, key, broken, rules } = this.step(node.states, values);
    if (states.length === 0) return -1 - this.breakOf(rules);
    const surely = node.surely && !broken;
    const full = surely ? `${key}!` : key;
    const known = this.numbers.get(full);
    if (known !== undefined) return known;
    this.numbers.set(full, this.nodes.length);
    this.nodes.push({ states, surely });
    this.reached.push(emptyRow(this.layer.before));
    return this.nodes.length - 1;
  }
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
  stage: number,
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

function carried(layer: Exclude<Layer, StageLayer>, row: Uint32Array): Uint32Array {
  const after = emptyRow(layer.after);
  if (layer.is === "enter") {
    for (let cell = 0; cell < layer.after; cell += 1) {
      if (hasBit(row, layer.parent[cell] as number)) setBit(after, cell);
    }
  } else {
    for (const cell of bitsOf(row)) setBit(after, layer.into[cell] as number);
  }
  return after;
}
