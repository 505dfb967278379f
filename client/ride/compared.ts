/** client/ride/compared.ts - where the reading that is ridden beside differs from the one that is taken. */
import { computed } from "@preact/signals";
import { compareRides, type RidesCompared } from "../../shared/ride/compare-rides.ts";
import { beside, ridden } from "./riding.ts";

/** Null while nothing is ridden beside. */
export const compared = computed<RidesCompared | null>(() =>
  ridden.value && beside.value ? compareRides(ridden.value, beside.value) : null,
);

/** The ride whose line is drawn in soft ink; null where both ride the same line, which is drawn once. */
export const besideLine = computed(() => (compared.value?.sameLine === false ? beside.value : null));

/** Stages of the first ride in which anything differs, in its order. */
export const stagesThatDiffer = computed<number[]>(() => {
  const [ride, told] = [ridden.value, compared.value];
  if (ride === null || told === null) return [];
  return [...ride.stages.keys()].filter(
    (index) =>
      told.lines.first.includes(index) ||
      told.lanes.some(({ first }) => first?.from === ride.stages[index]?.from && first?.to === ride.stages[index]?.to),
  );
});
