/** shared/decide/narrowed.ts - a puzzle under conditions: only some readings, or without some rules.
 *  May import: siblings in shared/decide. The puzzle given is left as it is. */
import type { Pick, Puzzle, ReadIn, Stage } from "./puzzle.ts";

/** Only these readings of those cruxes: the others leave the count as ruled out ones do. Several picks of one crux leave
 *  all of them; a reading that is ruled out stays so. A crux that does not arise is not touched by it.
 *  Throws RangeError for a crux or reading that is not in the puzzle. */
export function narrowed(puzzle: Puzzle, picks: readonly Pick[]): Puzzle {
  const kept = new Map<string, Set<string>>();
  for (const { crux, reading } of picks) {
    const known = puzzle.cruxes.find(({ id }) => id === crux);
    if (!known?.readings.includes(reading)) {
      throw new RangeError(`The pick ${reading} of the crux ${crux} is not in the puzzle.`);
    }
    kept.set(crux, (kept.get(crux) ?? new Set()).add(reading));
  }
  const cruxes = puzzle.cruxes.map((crux) => {
    const some = kept.get(crux.id);
    if (!some) return crux;
    return { ...crux, ruledOut: crux.readings.filter((id) => !some.has(id) || crux.ruledOut.includes(id)) };
  });
  return { ...puzzle, cruxes };
}

/** Each crux named may take no other readings than these; one named twice only those that are in both. A crux that does not
 *  arise is not touched by it. Throws RangeError for a crux that is not in the puzzle. */
export function allowingOnly(puzzle: Puzzle, allows: readonly ReadIn[]): Puzzle {
  const unknown = allows.find(({ crux }) => !puzzle.cruxes.some(({ id }) => id === crux));
  if (unknown) throw new RangeError(`The crux ${unknown.crux} is not in the puzzle.`);
  const cruxes = puzzle.cruxes.map((crux) => {
    const own = allows.filter((one) => one.crux === crux.id);
    const goes = (reading: string) =>
      crux.ruledOut.includes(reading) || !own.every(({ readings }) => readings.includes(reading));
    return own.length === 0 ? crux : { ...crux, ruledOut: crux.readings.filter(goes) };
  });
  return { ...puzzle, cruxes };
}

/** Hits of these rules at these stages no longer bar; they are still told, as warnings are. A rule or stage that never
 *  occurs changes nothing. */
export function withoutRules(puzzle: Puzzle, dropped: readonly { stage: string; rule: string }[]): Puzzle {
  const stages = puzzle.stages.map((stage): Stage => {
    const rules = new Set(dropped.filter((one) => one.stage === stage.id).map(({ rule }) => rule));
    if (rules.size === 0) return stage;
    const run: Stage["run"] = (state, readingOf, without) =>
      stage.run(state, readingOf, without).map((successor) => ({
        ...successor,
        hits: successor.hits.map((hit) => (rules.has(hit.rule) ? { ...hit, bars: false } : hit)),
      }));
    return { ...stage, run };
  });
  return { ...puzzle, stages };
}
