/** shared/decide/runs.ts - what each stage does, asked once and remembered.
 *  May import: siblings in shared/decide. A stage may touch many cruxes and still look at few: what it asked for is kept as
 *  a tree of questions, so that it runs once for each set of answers that makes a difference to it. */
import type { IndexedPuzzle } from "./indexed.ts";
import type { Hit, Stage } from "./puzzle.ts";

/** What a stage made of one state: each way on, states by number. */
export interface Outcome {
  ways: readonly { state: number; hits: readonly Hit[] }[];
}

/** An outcome, or the crux (by its place among those touched) that is asked for next. */
type Tree = { outcome: Outcome } | { asks: number; answers: (Tree | undefined)[] };

export class Runs {
  private readonly numbers = new Map<string, number>();
  private readonly names: string[] = [];
  /** By stage, and by stage and what is not said. */
  private readonly plain: Map<number, Tree>[] = [];
  private readonly others = new Map<string, Map<number, Tree>>();
  /** How often a stage was run. */
  ran = 0;

  constructor(private readonly puzzle: IndexedPuzzle) {}

  numberOf(state: string): number {
    const known = this.numbers.get(state);
    if (known !== undefined) return known;
    this.numbers.set(state, this.names.length);
    this.names.push(state);
    return this.names.length - 1;
  }

  /** `values` are of the cruxes touched, in their order. `without` holds stated values that are taken as not said.
   *  Throws RangeError when the stage asks for a crux it does not touch, or gives no way on. */
  outcome(stage: number, state: number, values: ArrayLike<number>, without: readonly string[] = []): Outcome {
    const trees = this.treesOf(stage, without);
    let tree = trees.get(state);
    while (tree && !("outcome" in tree)) tree = tree.answers[values[tree.asks] as number];
    if (tree) return tree.outcome;
    const { outcome, asked } = this.run(stage, state, values, without);
    trees.set(state, grown(trees.get(state), outcome, asked, values));
    return outcome;
  }

  private treesOf(stage: number, without: readonly string[]): Map<number, Tree> {
    if (without.length === 0) {
      this.plain[stage] ??= new Map();
      return this.plain[stage];
    }
    const key = JSON.stringify([stage, ...without]);
    const trees = this.others.get(key) ?? new Map<number, Tree>();
    this.others.set(key, trees);
    return trees;
  }

  private run(
    stage: number,
    state: number,
    values: ArrayLike<number>,
    without: readonly string[],
  ): { outcome: Outcome; asked: number[] } {
    const asked = new Set<number>();
    const { cruxes, stages } = this.puzzle.puzzle;
    const { id, run } = stages[stage] as Stage;
    const touched = this.puzzle.touches[stage] as readonly number[];
    const name = this.names[state] as string;
    this.ran += 1;
    const readingOf = (crux: string): string | null => {
      const index = this.puzzle.indexOf.get(crux);
      const place = index === undefined ? -1 : touched.indexOf(index);
      if (index === undefined || place < 0) {
        throw new RangeError(`The stage ${id} asked for the crux ${crux}, which is not among those it touches.`);
      }
      asked.add(place);
      return cruxes[index]?.readings[values[place] as number] ?? null;
    };
    const ways = without.length === 0 ? run(name, readingOf) : run(name, readingOf, new Set(without));
    if (ways.length === 0) throw new RangeError(`The stage ${id} gives no way on from the state ${name}.`);
    return {
      outcome: { ways: ways.map((way) => ({ state: this.numberOf(way.state), hits: way.hits })) },
      asked: [...asked],
    };
  }
}

/** The tree with one outcome more. Throws RangeError where the stage did not ask as it did before. */
function grown(tree: Tree | undefined, outcome: Outcome, asked: readonly number[], values: ArrayLike<number>): Tree {
  const [next, ...rest] = asked;
  if (next === undefined) {
    if (tree) throw new RangeError("A stage that ran twice asked for less the second time: it is no function.");
    return { outcome };
  }
  if (tree && (!("asks" in tree) || tree.asks !== next)) {
    throw new RangeError("A stage that ran twice asked in another order the second time: it is no function.");
  }
  const branch = tree ?? { asks: next, answers: [] };
  const value = values[next] as number;
  branch.answers[value] = grown(branch.answers[value], outcome, rest, values);
  return branch;
}
