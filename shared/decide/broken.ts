/** shared/decide/broken.ts - where nothing holds: how many assignments broke last at which rule of which stage.
 *  May import: siblings in shared/decide. Keeps rule N6 (shared/decide/RULES.md). An assignment breaks last at the stage that
 *  leaves none of its completions; what it reads after that is counted all the same. */
import type { Table } from "./automaton.ts";
import { type Block, emptyBlock, numberAt } from "./blocks.ts";
import { type CellSet, cellsOf, emptyRow, setBit } from "./cells.ts";
import type { Course } from "./course.ts";
import { Frontiers } from "./frontiers.ts";
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
  const anyway = new Frontiers(withoutStates(course));
  let on: Block = emptyBlock(1, 1);
  on.limbs[0]?.fill(1);
  const sums = new Map<number, bigint>();
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index];
    if (layer?.is === "stage") {
      const { leading } = frontiers.at(index);
      const { groups, next } = automaton.tables[layer.stage] as Table;
      const { combinations, starts } = cellsOf(course.cells[index] as CellSet);
      let node = 0;
      for (const [cell, combination] of combinations.entries()) {
        while (cell >= (starts[node + 1] as number)) node += 1;
        const goal = next[node * groups + (layer.group[combination] as number)] as number;
        const many = goal < 0 ? numberAt(leading, cell) * numberAt(on, combination) : 0n;
        if (many > 0n) sums.set(-1 - goal, (sums.get(-1 - goal) ?? 0n) + many);
      }
    }
    on = anyway.before(index, anyway.at(index).link, on);
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
function withoutStates(course: Course): Course {
  const tables = course.layers.flatMap((layer): Table[] => {
    const groups = layer.is === "stage" ? layer.groups.length : 0;
    return layer.is === "stage" ? [{ groups, next: new Int32Array(groups) }] : [];
  });
  const all = (combinations: number): CellSet => {
    const row = emptyRow(combinations);
    for (let combination = 0; combination < combinations; combination += 1) setBit(row, combination);
    return [row];
  };
  const cells = [all(1), ...course.layers.map(({ after }) => all(after))];
  const surely = Array.from({ length: tables.length + 1 }, () => [true]);
  return { ...course, cells, automaton: { tables, surely, breaks: [], reached: cells, nodes: 1 } };
}
