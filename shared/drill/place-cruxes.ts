/** shared/drill/place-cruxes.ts - where cruxes that hold no slot and guard nothing are printed.
 *  May import: schema types, siblings in shared/drill. A crux that has just been opened at some words has nothing but the
 *  words: it stands with the first element that speaks of them, and at the end of the drill where none does. */
import type { Citation, DrillCrux } from "../../schema/drill.ts";
import type { CompiledElement } from "./compile-element.ts";
import { cruxNote } from "./crux-notes.ts";
import type { Compiling } from "./resolve-slot.ts";

export interface PlacedCruxes {
  elements: CompiledElement[];
  cruxes: DrillCrux[];
}

export function placeCruxes(whole: Compiling, elements: readonly CompiledElement[]): PlacedCruxes {
  const { rows } = whole;
  const standing = new Set(elements.flatMap(({ drill }) => drill.cruxes.map(({ crux }) => crux)));
  const added = new Map<string, DrillCrux[]>();
  const left: DrillCrux[] = [];
  const touched = new Set(whole.bearing.cruxes());
  for (const crux of rows.all("cruxes")) {
    const ours = crux.exercise === rows.exercise.id || touched.has(crux.id);
    const note = ours && !standing.has(crux.id) ? cruxNote(whole, crux.id) : null;
    if (!note) continue;
    const home = elements.find(({ drill }) => overlap(wordsOf(drill), note.citations));
    if (home) added.set(home.drill.id, [...(added.get(home.drill.id) ?? []), note]);
    else left.push(note);
  }
  return {
    elements: elements.map((element) => ({
      ...element,
      drill: { ...element.drill, cruxes: inOrder([...element.drill.cruxes, ...(added.get(element.drill.id) ?? [])]) },
    })),
    cruxes: inOrder(left),
  };
}

/** By the place of their words, then by title and id; cruxes without words come last. */
function inOrder(cruxes: DrillCrux[]): DrillCrux[] {
  const key = ({ citations: [first], title, crux }: DrillCrux): [string, number, string] => [
    first ? `0 ${first.reference}` : "1",
    first?.from ?? 0,
    `${title} ${crux}`,
  ];
  return cruxes.sort((first, second) => {
    const [a, b] = [key(first), key(second)];
    return compare(a[0], b[0]) || a[1] - b[1] || compare(a[2], b[2]);
  });
}

function compare(first: string, second: string): number {
  return first === second ? 0 : first < second ? -1 : 1;
}

function wordsOf(element: CompiledElement["drill"]): Citation[] {
  const actions = element.actions.filter(({ inherited }) => !inherited);
  return [
    ...element.citations,
    ...actions.flatMap((action) => [...action.citations, ...action.values.flatMap(({ citations }) => citations)]),
  ];
}

function overlap(some: readonly Citation[], others: readonly Citation[]): boolean {
  return some.some((a) =>
    others.some((b) => a.reference === b.reference && a.layer === b.layer && a.from <= b.to && b.from <= a.to),
  );
}
