/** shared/decide/links.ts - how the cells on one side of an event lead to those on the other.
 *  May import: siblings in shared/decide. Only the cells of the course are numbered here, from 0 in their order. */
import type { Table } from "./automaton.ts";
import { addRow, bitsOf, type CellList, type CellSet, cellsOf, emptyRow, hasBit } from "./cells.ts";
import type { Course } from "./course.ts";
import type { Column, Layer, LeaveLayer, StageLayer } from "./layers.ts";

export type Link =
  /** Each cell before a stage leads to one cell after, or to none (-1); null: every cell to itself. */
  | { is: "stage"; before: number; after: number; to: Int32Array | null }
  /** The same where a crux leaves; with the value it has in each cell before, and the combinations that occur. */
  | {
      is: "leave";
      before: number;
      after: number;
      to: Int32Array;
      layer: LeaveLayer;
      value: Uint16Array;
      seen: Int32Array;
    }
  /** Each cell after comes from one cell before, gives the crux this value, and is weighted; null: with 1. */
  | { is: "enter"; before: number; after: number; from: Int32Array; value: Uint16Array; weights: bigint[] | null };

/** Makes links; its one table is used again from event to event. */
export class Linker {
  private places = new Int32Array(0);
  private lastList: { frontier: number; list: CellList } | null = null;

  constructor(private readonly course: Course) {}

  link(index: number): Link {
    const { layers, automaton, cells } = this.course;
    const layer = layers[index] as Layer;
    const next = cells[index + 1] as CellSet;
    const [before, after] = [this.listOf(index), this.listOf(index + 1)];
    const sizes = { before: before.combinations.length, after: after.combinations.length };
    if (layer.is === "stage") {
      const places = this.placesOf(after, layer.after);
      const to = throughStage(layer, automaton.tables[layer.stage] as Table, before, next, places);
      return {
        is: "stage",
        ...sizes,
        to: sizes.before === sizes.after && to.every((goal, at) => goal === at) ? null : to,
      };
    }
    if (layer.is === "enter") {
      const { ends, value } = carriedOver(
        after,
        layer.parent,
        layer.value,
        this.placesOf(before, layer.before),
        layer.before,
      );
      const { weights } = layer;
      const own = weights && Array.from(after.combinations, (combination) => weights[combination] as bigint);
      return { is: "enter", ...sizes, from: ends, value, weights: own };
    }
    const column = layer.columns.get(layer.crux) as Column;
    const { ends, value } = carriedOver(before, layer.into, column, this.placesOf(after, layer.after), layer.after);
    const anywhere = emptyRow(layer.before);
    for (const row of cells[index] as CellSet) addRow(anywhere, row);
    return { is: "leave", ...sizes, to: ends, layer, value, seen: bitsOf(anywhere) };
  }

  /** The cells of a frontier; those of the last one asked for are kept, since the next event begins there. */
  private listOf(frontier: number): CellList {
    if (this.lastList?.frontier !== frontier) {
      this.lastList = { frontier, list: cellsOf(this.course.cells[frontier] as CellSet) };
    }
    return this.lastList.list;
  }

  /** By cell: its place in the list. Only cells in the list may be looked up. */
  private placesOf({ combinations, starts }: CellList, width: number): Int32Array {
    const needed = (starts.length - 1) * width;
    if (this.places.length < needed) this.places = new Int32Array(needed * 2);
    for (let node = 0; node + 1 < starts.length; node += 1) {
      const base = node * width;
      for (let at = starts[node] as number; at < (starts[node + 1] as number); at += 1) {
        this.places[base + (combinations[at] as number)] = at;
      }
    }
    return this.places;
  }
}

/** What each cell becomes where only combinations change, and its value. */
function carriedOver(
  { combinations, starts }: CellList,
  map: Int32Array,
  column: Column,
  places: Int32Array,
  width: number,
): { ends: Int32Array; value: Uint16Array } {
  const ends = new Int32Array(combinations.length);
  const value = new Uint16Array(combinations.length);
  for (let node = 0; node + 1 < starts.length; node += 1) {
    const base = node * width;
    for (let at = starts[node] as number; at < (starts[node + 1] as number); at += 1) {
      const combination = combinations[at] as number;
      ends[at] = places[base + (map[combination] as number)] as number;
      value[at] = column[combination] as number;
    }
  }
  return { ends, value };
}

function throughStage(
  { before, group }: StageLayer,
  { groups, next }: Table,
  { combinations, starts }: CellList,
  after: CellSet,
  places: Int32Array,
): Int32Array {
  const to = new Int32Array(combinations.length);
  for (let node = 0; node + 1 < starts.length; node += 1) {
    for (let at = starts[node] as number; at < (starts[node + 1] as number); at += 1) {
      const combination = combinations[at] as number;
      const goal = next[node * groups + (group[combination] as number)] as number;
      const there = goal >= 0 && hasBit(after[goal] as Uint32Array, combination);
      to[at] = there ? (places[goal * before + combination] as number) : -1;
    }
  }
  return to;
}
