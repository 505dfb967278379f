/** client/ride/riding.ts - the open exercise as it is ridden under the present wishes, worked out once for each change
 *  of rows or wishes, never for a frame. */
import { computed, type ReadonlySignal } from "@preact/signals";
import type { Citation, Drill, DrillCrux } from "../../schema/drill.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import type { Rein, RideOptions } from "../../shared/ride/ride-context.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { openExerciseId } from "../state/exercise.ts";
import { one, rowsNow } from "../state/rows.ts";
import { besideReading, choice, rein, way } from "./wish.ts";

const here = computed(() => one("exercises", openExerciseId.value));

/** Chosen readings that are still there: one may have been taken away since in another window. */
const pairs = computed(() =>
  Object.entries(choice.value)
    .filter(([crux, reading]) => one("readings", reading)?.crux === crux)
    .map(([crux, reading]) => ({ crux, reading })),
);

/** The drill as it is read now: its cruxes, its words, its title. */
export const drill = computed<Drill | null>(() =>
  here.value ? compileDrill(rowsNow.value, here.value.id, { choice: pairs.value, way: way.value }) : null,
);
/** The drill as it was decided, for what choosing nothing means. */
export const decidedDrill = computed<Drill | null>(() =>
  here.value ? compileDrill(rowsNow.value, here.value.id, { way: way.value }) : null,
);

const options = computed<RideOptions>(() => ({ choice: pairs.value, way: way.value, rein: rein.value }));

function rideWith(changed: Partial<RideOptions>): Ridden | null {
  return here.value ? rideExercise(rowsNow.value, here.value.id, { ...options.value, ...changed }) : null;
}

export const ridden = computed<Ridden | null>(() => rideWith({}));

/** The same with one crux read otherwise; null when nothing is shown beside. */
export const beside = computed<Ridden | null>(() => {
  const other = besideReading.value;
  if (other === null || one("readings", other.reading)?.crux !== other.crux) return null;
  return rideWith({ choice: [...pairs.value.filter(({ crux }) => crux !== other.crux), other] });
});

const OPPOSITE: Record<Rein, Rein> = {
  "as it is": "mirror the world",
  "mirror the world": "as it is",
  "on the other rein": "mirror the world",
};
/** The ride of another rider who rides it mirrored; worked out only where one does. */
export const mirroredRide: ReadonlySignal<Ridden | null> = computed(() => rideWith({ rein: OPPOSITE[rein.value] }));

/** Cruxes that bear on the exercise, each once, in the order they stand in it. */
export const cruxes = computed<DrillCrux[]>(() => {
  const found = new Map<string, DrillCrux>();
  const decided = decidedDrill.value;
  for (const crux of decided ? [...decided.elements.flatMap((element) => element.cruxes), ...decided.cruxes] : []) {
    if (!found.has(crux.crux)) found.set(crux.crux, crux);
  }
  return [...found.values()];
});

/** The words of elements and actions, by id. */
export const citationsOf = computed(() => {
  const elements = new Map<string, Citation[]>();
  const actions = new Map<string, Citation[]>();
  for (const element of drill.value?.elements ?? []) {
    elements.set(element.id, element.citations);
    for (const action of element.actions) {
      const ofValues = action.values.flatMap((value) => value.citations);
      actions.set(action.id, action.citations.length > 0 ? action.citations : ofValues);
    }
  }
  return { element: (id: string) => elements.get(id), action: (id: string) => actions.get(id) };
});
