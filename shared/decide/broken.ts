/** shared/decide/broken.ts - where nothing holds: how many assignments broke last at which rule of which stage.
 *  May import: siblings in shared/decide. Keeps rule N6 (shared/decide/RULES.md). An assignment breaks last at the stage that
 *  leaves none of its completions; what it reads after that is counted all the same. */
import type { Table } from "./automaton.ts";
import { type Block, emptyBlock, numberAt } from "./blocks.ts";
import { type Course, Frontiers } from "./frontiers.ts";
import type { Puzzle } from "./puzzle.ts";

export interface Broken {
  stage: string;
  rule: string;
  assignments: bigint;
}

/** A stage and rule may come several times. The automaton must not be merged: it no longer says what broke. */
export function brokenOf(course: Course): Broken[] {
  const { layers, automaton } = course;
  const frontiers = new Frontiers(course);
  const anyway = new Frontiers({ ...course, automaton: free(course) });
  let on: Block = emptyBlock(1, 1);
  on.limbs[0]?.fill(1);
  const sums = new Map<number, bigint>();
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index];
    if (layer?.is === "stage") {
      const leading = frontiers.at(index);
      const { groups, next } = automaton.tables[layer.stage] as Table;
      for (let cell = 0; cell < leading.cells; cell += 1) {
        const combination = cell % layer.before;
        const node = (cell - combination) / layer.before;
        const goal = next[node * groups + (layer.group[combination] as number)] as number;
        if (goal >= 0) continue;
        const many = numberAt(leading, cell);
        const whole = many > 0n ? many * numberAt(on, combination) : 0n;
        if (whole > 0n) sums.set(-1 - goal, (sums.get(-1 - goal) ?? 0n) + whole);
      }
    }
    on = anyway.before(anyway.link(index), index, on);
  }
  return [...sums].flatMap(([index, assignments]) => {
    const { stage, rules } = automaton.breaks[index] ?? { stage: "", rules: [] };
    return rules.map((rule) => ({ stage, rule, assignments }));
  });
}

/** Each stage and rule once, in the order of the stages, then by rule. */
export function sortedBroken({ stages }: Puzzle, some: readonly Broken[]): Broken[] {
  const byPlace = new Map<string, Broken>();
  for (const one of some) {
    const key = JSON.stringify([one.stage, one.rule]);
    byPlace.set(key, { ...one, assignments: one.assignments + (byPlace.get(key)?.assignments ?? 0n) });
  }
  const order = new Map(stages.map(({ id }, index) => [id, index]));
  return [...byPlace.values()].sort(
    (a, b) => (order.get(a.stage) ?? 0) - (order.get(b.stage) ?? 0) || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
  );
}

/** One node throughout that breaks nothing: what leads on from it are all assignments. */
function free({ puzzle, layers }: Course): Course["automaton"] {
  const tables = puzzle.touches.map((_, stage): Table => {
    const layer = layers.find((one) => one.is === "stage" && one.stage === stage);
    const groups = layer?.is === "stage" ? layer.groups.length : 0;
    return { groups, next: new Int32Array(groups) };
  });
  return {
    tables,
    surely: Array.from({ length: tables.length + 1 }, () => [true]),
    breaks: [],
    any: true,
    nodes: 1,
    cells: 0,
  };
}
