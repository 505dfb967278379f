/** client/ride/riding.ts - the open exercise as it is ridden under the present wishes, worked out once for each change
 *  of rows or wishes, never for a frame. */
import { computed, type ReadonlySignal } from "@preact/signals";
import type { Citation, Drill } from "../../schema/drill.ts";
import type { Kit } from "../../schema/teaching.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { exerciseRows } from "../../shared/drill/exercise-rows.ts";
import { type HorseGait, horseGaits } from "../../shared/ground/gaits.ts";
import { lengthOf } from "../../shared/ground/path.ts";
import { MOST_RIDERS } from "../../shared/ground/riders.ts";
import { timeAtLength } from "../../shared/ground/timed-path.ts";
import { chooseReadings } from "../../shared/ride/choose-readings.ts";
import { kitGaits } from "../../shared/ride/kit-gaits.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import type { Rein, RideOptions } from "../../shared/ride/ride-context.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { rideRoles } from "../../shared/ride/ride-roles.ts";
import { ridingRoles, rolesOf } from "../../shared/ride/roles.ts";
import { openExerciseId } from "../state/exercise.ts";
import { one, ranked, rowsNow } from "../state/rows.ts";
import { cruxes } from "./cruxes.ts";
import { preferred } from "./shown-readings.ts";
import {
  besideReading,
  choice,
  chosenKit,
  firstRole,
  type RiderWish,
  rein,
  riderWishes,
  thisHorse,
  way,
} from "./wish.ts";

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
/** The roles the exercise names, in its order. */
export const roles = computed(() => rolesOf(drill.value?.elements ?? []));

/** Those of them that ride somewhere. */
const riding = computed(() => ridingRoles(drill.value?.elements ?? []));

/** The part of the first rider: the one that was chosen, else the first that rides; null for all of it. */
export const ownRole = computed<string | null>(() => {
  const chosen = firstRole.value;
  if (chosen !== undefined && (chosen === null || roles.value.includes(chosen))) return chosen;
  return riding.value[0] ?? null;
});

/** Riders besides the first: those that were wished for, else one for each other part that is ridden. */
export const wishes = computed<readonly RiderWish[]>(() => {
  if (riderWishes.value !== null) return riderWishes.value;
  const others = ownRole.value === null ? [] : riding.value.filter((role) => role !== ownRole.value);
  return others
    .slice(0, MOST_RIDERS - 1)
    .map((role, index) => ({ id: -1 - index, role, mirrored: false, by: "seconds later", amount: 0 }));
});

/** The kits of the work of which a speed of the horse is known, in the order of the work. */
export const measuredKits = computed<readonly Kit[]>(() =>
  ranked("kits").filter((kit) => kit.work === here.value?.work && kitGaits(kit).length > 0),
);

/** The kit whose horse is ridden; null where none is chosen, or it is of another work. */
export const kitNow = computed<Kit | null>(() => measuredKits.value.find(({ id }) => id === chosenKit.value) ?? null);

/** What its horse does; empty where no kit is chosen. */
export const kitHorse = computed<readonly HorseGait[]>(() => (kitNow.value === null ? [] : kitGaits(kitNow.value)));

const options = computed<RideOptions>(() => ({
  choice: pairs.value,
  way: way.value,
  rein: rein.value,
  gaitSpeeds: horseGaits(thisHorse.value),
  kit: kitNow.value?.id ?? null,
  preferred: preferred.value,
}));

/** The reading that is ridden of each crux: chosen here, decided, else shown for want of either. */
export const readNow = computed<ReadonlyMap<string, string>>(() => {
  const known = new Map(cruxes.value.flatMap(({ crux, taken }) => (taken ? [[crux, taken.reading] as const] : [])));
  if (here.value) {
    const rows = exerciseRows(rowsNow.value, here.value.id);
    for (const [crux, reading] of chooseReadings(rows, pairs.value, way.value, null, preferred.value).choice)
      known.set(crux, reading);
  }
  return known;
});

function rideWith(changed: Partial<RideOptions>): Ridden | null {
  if (!here.value) return null;
  return rideExercise(rowsNow.value, here.value.id, { ...options.value, role: ownRole.value, ...changed });
}

/** The first rider's part alone, as long as nobody is waited for. */
const alone = computed<Ridden | null>(() => rideWith({}));

/** The part of every rider, the first rider's first; each waits for the others where the words have him wait. */
export const parts = computed<{ ride: Ridden; starts: number; role: string | null }[]>(() => {
  const first = alone.value;
  if (first === null || !here.value) return [];
  const others = wishes.value;
  const own = { ride: first, starts: 0, role: ownRole.value };
  if (others.length === 0) return [own];
  if (roles.value.length === 0)
    return [
      own,
      ...others.map((wish) => ({
        ride: (wish.mirrored && mirroredRide.value) || first,
        starts: startsOf(first, wish),
        role: null,
      })),
    ];
  const asked = [
    { role: own.role, starts: 0, options: options.value },
    ...others.map((wish) => ({
      role: wish.role,
      starts: startsOf(first, wish),
      options: wish.mirrored ? { ...options.value, rein: OPPOSITE[rein.value] } : options.value,
    })),
  ];
  return rideRoles(rowsNow.value, here.value.id, asked).flatMap((ride, index) => {
    const part = asked[index];
    return part === undefined ? [] : [{ ride, starts: part.starts, role: part.role }];
  });
});

/** Seconds of the common clock at which another rider begins. */
function startsOf({ timed }: Ridden, { by, amount }: RiderWish): number {
  if (!Number.isFinite(amount)) return 0;
  if (by === "seconds later") return amount;
  return by === "metres behind" ? timeAtLength(timed, Math.min(amount, lengthOf(timed.path))) : 0;
}

export const ridden = computed<Ridden | null>(() => parts.value[0]?.ride ?? null);

/** Seconds until the last rider has ended. */
export const lasts = computed(() =>
  Math.max(0, ...parts.value.map(({ ride, starts }) => starts + ride.timed.duration)),
);

/** The same with one crux read otherwise; null when nothing is shown beside. */
export const beside = computed<Ridden | null>(() => {
  const other = besideReading.value;
  if (other === null || one("readings", other.reading)?.crux !== other.crux) return null;
  // What is ridden already is nothing beside itself.
  if (readNow.value.get(other.crux) === other.reading) return null;
  return rideWith({ choice: [...pairs.value.filter(({ crux }) => crux !== other.crux), other] });
});

const OPPOSITE: Record<Rein, Rein> = {
  "as it is": "mirror the world",
  "mirror the world": "as it is",
  "on the other rein": "mirror the world",
};
/** The ride of another rider who rides it mirrored; worked out only where one does. */
const mirroredRide: ReadonlySignal<Ridden | null> = computed(() => rideWith({ rein: OPPOSITE[rein.value] }));

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
