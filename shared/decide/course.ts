/** shared/decide/course.ts - all that a sweep goes over, and which cells matter in it.
 *  May import: siblings in shared/decide. The *frontier* i is all cells before event i, from 0; the last comes after all
 *  events. A cell is *live* when some assignment that holds comes through it: only those are counted in. */
import type { Automaton, Table } from "./automaton.ts";
import { addCommon, bitsOf, type CellSet, emptyRow, hasBit, setBit } from "./cells.ts";
import type { IndexedPuzzle } from "./indexed.ts";
import type { Layer, StageLayer } from "./layers.ts";

export interface Course {
  puzzle: IndexedPuzzle;
  values: readonly (readonly number[])[];
  layers: readonly Layer[];
  automaton: Automaton;
  /** By frontier: the cells that are counted in. */
  cells: readonly CellSet[];
}

/** Of the cells that are reached, those that lead on to the end. */
export function liveCells(layers: readonly Layer[], { tables, reached }: Automaton): CellSet[] {
  let live = reached[layers.length] as CellSet;
  const sets = [live];
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index] as Layer;
    const before = reached[index] as CellSet;
    live =
      layer.is === "stage"
        ? liveBeforeStage(layer, tables[layer.stage] as Table, before, live)
        : before.map((row, node) => liveRow(layer, row, live[node] as Uint32Array));
    sets.push(live);
  }
  return sets.reverse();
}

function liveBeforeStage(
  { before, group, masks }: StageLayer,
  { groups, next }: Table,
  reached: CellSet,
  after: CellSet,
): CellSet {
  return reached.map((row, node) => {
    const live = emptyRow(before);
    if (masks) {
      for (const [choice, mask] of masks.entries()) {
        const goal = next[node * groups + choice] as number;
        if (goal >= 0) addCommon(live, mask, after[goal] as Uint32Array);
      }
      for (let word = 0; word < live.length; word += 1) live[word] = (live[word] as number) & (row[word] as number);
      return live;
    }
    const combinations = bitsOf(row);
    for (let at = 0; at < combinations.length; at += 1) {
      const combination = combinations[at] as number;
      const goal = next[node * groups + (group[combination] as number)] as number;
      if (goal >= 0 && hasBit(after[goal] as Uint32Array, combination)) setBit(live, combination);
    }
    return live;
  });
}

function liveRow(layer: Exclude<Layer, StageLayer>, reached: Uint32Array, after: Uint32Array): Uint32Array {
  const live = emptyRow(layer.before);
  if (layer.is === "enter") {
    for (const cell of bitsOf(after)) setBit(live, layer.parent[cell] as number);
  } else {
    for (const cell of bitsOf(reached)) {
      if (hasBit(after, layer.into[cell] as number)) setBit(live, cell);
    }
  }
  return live;
}
