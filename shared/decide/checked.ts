/** shared/decide/checked.ts - a puzzle is looked over once before it is counted.
 *  May import: siblings in shared/decide. */
import { parentsFirst } from "./assignments.ts";
import type { Puzzle, ReadIn } from "./puzzle.ts";

/** Throws RangeError when a crux or reading is there twice, cruxes arise in a circle, or a condition, a tie or a stage names
 *  a crux or reading that is not there. Such a puzzle is a mistake of whoever made it, not a result. */
export function checkPuzzle({ cruxes, requires, excludes, stages }: Puzzle): void {
  const readings = new Map(cruxes.map((crux) => [crux.id, new Set(crux.readings)]));
  const once = (kind: string, ids: readonly string[]): void => {
    const seen = new Set<string>();
    for (const id of ids) {
      if (seen.has(id)) throw new RangeError(`The ${kind} ${id} is there twice.`);
      seen.add(id);
    }
  };
  const known = (who: string, { crux, readings: some }: ReadIn): void => {
    const own = readings.get(crux);
    if (!own) throw new RangeError(`${who} names the crux ${crux}, which is not in the puzzle.`);
    const missing = some.find((reading) => !own.has(reading));
    if (missing !== undefined)
      throw new RangeError(`${who} names ${missing}, which is no reading of the crux ${crux}.`);
  };
  once(
    "crux",
    cruxes.map(({ id }) => id),
  );
  parentsFirst(cruxes);
  for (const crux of cruxes) {
    once(`reading of ${crux.id},`, crux.readings);
    for (const condition of crux.arisesWhen) known(`A condition of the crux ${crux.id}`, condition);
    known(`What is ruled out at ${crux.id}`, { crux: crux.id, readings: crux.ruledOut });
  }
  for (const tie of [...requires, ...excludes]) {
    known("A tie", { crux: tie.crux, readings: [tie.reading] });
    known(`A tie of the crux ${tie.crux}`, tie.of);
  }
  for (const stage of stages) {
    for (const crux of stage.touches) known(`The stage ${stage.id}`, { crux, readings: [] });
  }
}
