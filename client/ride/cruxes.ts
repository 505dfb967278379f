/** client/ride/cruxes.ts - the cruxes that bear on the open exercise, and what was decided of them. */
import { computed } from "@preact/signals";
import type { Drill, DrillCrux } from "../../schema/drill.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { openExerciseId } from "../state/exercise.ts";
import { one, rowsNow } from "../state/rows.ts";
import { way } from "./wish.ts";

/** The drill as it was decided, for what choosing nothing means. */
export const decidedDrill = computed<Drill | null>(() => {
  const here = one("exercises", openExerciseId.value);
  return here ? compileDrill(rowsNow.value, here.id, { way: way.value }) : null;
});

/** Cruxes that bear on the exercise, each once, in the order they stand in it. */
export const cruxes = computed<DrillCrux[]>(() => {
  const found = new Map<string, DrillCrux>();
  const decided = decidedDrill.value;
  for (const crux of decided ? [...decided.elements.flatMap((element) => element.cruxes), ...decided.cruxes] : []) {
    if (!found.has(crux.crux)) found.set(crux.crux, crux);
  }
  return [...found.values()];
});

/** The first printed step a crux bears on; null where it stands at none. */
export function stepOf(crux: string): number | null {
  const at = decidedDrill.value?.elements.find(
    ({ number, cruxes: own }) => number !== null && own.some((known) => known.crux === crux),
  );
  return at?.number ?? null;
}

/** Readings of a crux in their order, with what is to be said of each in a list. */
export function readingsOf(crux: DrillCrux): { reading: string; words: string }[] {
  const taken = crux.taken ? [{ reading: crux.taken.reading, words: crux.taken.title }] : [];
  return [
    ...taken,
    ...crux.others.map(({ reading, title, status }) => ({
      reading,
      words: status === "ruled out" ? `${title} (ruled out)` : title,
    })),
  ];
}
