/** server/publish/crux-signs.ts - the cruxes of a paper's drills, each with the sign it has on it and where it bears.
 *  May import: schema types. */
import type { Drill, DrillCrux, DrillElement } from "../../schema/drill.ts";

export interface SignedCrux {
  /** "a", "b" ... "z", "aa", in the order they first bear on something. */
  sign: string;
  /** The crux as it bears on each element, in their order; `element` is null for one that stands at none. */
  at: { element: DrillElement | null; crux: DrillCrux; drill: Drill }[];
}

export interface CruxSigns {
  list: readonly SignedCrux[];
  /** The sign of a crux; null when it is not on this page. */
  signOf: (crux: string) => string | null;
  /** The title of a reading of any crux of the drill; null when it is not there. */
  readingTitle: (reading: string) => string | null;
}

/** One sign a crux, over all the drills: a crux that spans the work has the same one in each. */
export function signCruxes(...drills: Drill[]): CruxSigns {
  const byCrux = new Map<string, SignedCrux>();
  const titles = new Map<string, string>();
  const take = (drill: Drill, element: DrillElement | null, crux: DrillCrux): void => {
    const known = byCrux.get(crux.crux);
    if (known) known.at.push({ element, crux, drill });
    else byCrux.set(crux.crux, { sign: signAt(byCrux.size), at: [{ element, crux, drill }] });
    if (crux.taken) titles.set(crux.taken.reading, crux.taken.title);
    for (const other of crux.others) titles.set(other.reading, other.title);
  };
  for (const drill of drills) {
    for (const element of drill.elements) for (const crux of element.cruxes) take(drill, element, crux);
    for (const crux of drill.cruxes) take(drill, null, crux);
  }
  return {
    list: [...byCrux.values()],
    signOf: (crux) => byCrux.get(crux)?.sign ?? null,
    readingTitle: (reading) => titles.get(reading) ?? null,
  };
}

/** 0 is "a", 25 "z", 26 "aa". */
function signAt(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : signAt(Math.floor(index / 26) - 1) + last;
}
