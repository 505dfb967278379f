/** client/ride/shown-readings.ts - which reading is shown of a crux nobody settled: the first, unless nothing that can be ridden takes
 *  it; then the nearest to it. Counted off the main thread while the Ride room is open; until it is known, the first. */
import { computed, effect, signal } from "@preact/signals";
import type { Way } from "../../schema/guard.ts";
import type { Instead, NearestAsk } from "../../shared/ride/puzzle/nearest-to-first.ts";
import { askCount, drop } from "../decide/count-desk.ts";
import { openExerciseId } from "../state/exercise.ts";
import { one, rowsNow } from "../state/rows.ts";
import { cruxes } from "./cruxes.ts";
import { choice, way } from "./wish.ts";

/** Readings shown in the place of the first, and for which exercise and way that was counted. */
const found = signal<{ exercise: string; way: Way; instead: readonly Instead[] | null }>({
  exercise: "",
  way: "mounted",
  instead: [],
});

const here = computed(() => {
  const { exercise, way: counted, instead } = found.value;
  return exercise === openExerciseId.value && counted === way.value ? { instead } : null;
});

/** By crux. */
export const instead = computed<ReadonlyMap<string, Instead>>(
  () =>
    new Map(
      (here.value?.instead ?? [])
        .filter(({ crux, reading }) => one("readings", reading)?.crux === crux)
        .map((shown) => [shown.crux, shown]),
    ),
);

/** For the ride: the reading to show, by crux. */
export const preferred = computed<ReadonlyMap<string, string>>(
  () => new Map([...instead.value].map(([crux, { reading }]) => [crux, reading])),
);

/** Whether nothing can be ridden under what is adopted and chosen, so that the first readings are shown for want of better. */
export const nothingHolds = computed(() => here.value?.instead === null);

const ask = computed<NearestAsk>(() => {
  const chosen = choice.value;
  const taken = cruxes.value.flatMap(({ crux, taken: settled }) => {
    const reading = chosen[crux] ?? settled?.reading;
    return reading === undefined ? [] : [{ crux, reading }];
  });
  return { taken, open: cruxes.value.map(({ crux }) => crux).filter((id) => taken.every(({ crux }) => crux !== id)) };
});

/** Counts anew whenever something changes, until the function it gives is called. */
export function keepShownReadings(): () => void {
  const end = effect(() => {
    const [exercise, asked, now] = [openExerciseId.value, ask.value, way.value];
    void rowsNow.value;
    if (exercise === null) return;
    if (asked.open.length === 0) {
      found.value = { exercise, way: now, instead: [] };
      return;
    }
    void askCount("nearest", { exercises: [exercise], way: now }, { do: "nearest", ask: asked }).then((told) => {
      if (told.is === "done") found.value = { exercise, way: now, instead: told.value };
    });
  });
  return () => {
    end();
    drop("nearest");
  };
}
