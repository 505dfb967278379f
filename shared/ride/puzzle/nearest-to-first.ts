/** shared/ride/puzzle/nearest-to-first.ts - the readings to show of cruxes nobody settled: the first of each as long as that can be
 *  ridden, else the nearest to it.
 *  May import: shared/decide, siblings. Keeps rule P15 (shared/ride/puzzle/RULES.md). */
import type { Pick } from "../../decide/puzzle.ts";
import { answerDecide } from "./answer.ts";
import type { WeighedExercise } from "./weighed.ts";

export interface NearestAsk {
  /** Readings that are taken whatever follows: adopted, or chosen. */
  taken: readonly Pick[];
  /** Cruxes nobody settled, in the order in which the first reading is given up last. */
  open: readonly string[];
}

/** Where a reading that can be ridden is shown in the place of the first. */
export interface Instead extends Pick {
  first: string;
}

/** What is shown otherwise than by the first reading; empty where the first readings can be ridden together. Null where nothing
 *  can be ridden under what is taken, or where that cannot be counted: then there is nothing better than the first. */
export function nearestToFirst(weighed: WeighedExercise, { taken, open }: NearestAsk): Instead[] | null {
  const counted = (under: readonly Pick[]) => answerDecide(weighed, { picks: under, asAdopted: false, without: [] });
  const picks = [...taken];
  let now = counted(picks);
  if (!now.exact || now.holding === "0") return null;
  const instead: Instead[] = [];
  for (const crux of open) {
    const readings = weighed.cruxes.find(({ id }) => id === crux)?.readings ?? [];
    const left = readings.filter(({ status }) => status !== "ruled out").map(({ id }) => id);
    const dead = new Set(now.shares.flatMap((share) => (share.verdict === "dead" ? [share.reading] : [])));
    const reading = left.find((id) => !dead.has(id));
    const [first] = left;
    if (reading === undefined || first === undefined) continue;
    if (reading !== first) instead.push({ crux, reading, first });
    picks.push({ crux, reading });
    now = counted(picks);
    // A reading that is not counted changes nothing; one that is and was alive leaves something.
    if (!now.exact) return null;
  }
  return instead;
}
