/** client/ride/riders.ts - other riders on the same ground: how each is set off against the first, what each does now, and
 *  how near any two of them come. Kept in this window only. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { allDistances, type Nearest } from "../../shared/ground/distances.ts";
import { lengthOf, movePath } from "../../shared/ground/path.ts";
import { placeInWords } from "../../shared/ground/place-in-words.ts";
import { type CarriedPoint, MOST_RIDERS, type Rider, USUAL_BODY } from "../../shared/ground/riders.ts";
import { type TimedPath, timeAtLength } from "../../shared/ground/timed-path.ts";
import { type HandsFigure, handsFigure } from "../../shared/hands/figure.ts";
import type { Finding, Ridden } from "../../shared/ride/ridden.ts";
import { findingsBetween } from "../../shared/ride/rules/between-riders.ts";
import { openExerciseId } from "../state/exercise.ts";
import { all, one } from "../state/rows.ts";
import { nearestShown } from "./gone-to.ts";
import { stateIn } from "./moment.ts";
import { goTo, seconds } from "./playing.ts";
import { mirroredRide, ridden } from "./riding.ts";
import { stageAtTime } from "./stage-at-time.ts";

/** How a rider is set off against the first: so many seconds later, metres behind on the same line, or metres to the
 *  right or toward the head of the ground. */
export const OFFSETS = ["seconds later", "metres behind", "metres to the right", "metres toward the head"] as const;
export interface RiderWish {
  id: number;
  mirrored: boolean;
  by: (typeof OFFSETS)[number];
  amount: number;
}
export const riderWishes = signal<readonly RiderWish[]>([]);
export const MOST_OTHERS = MOST_RIDERS - 1;
let counted = 0;

export function addRider(): void {
  counted += 1;
  const last = riderWishes.value.at(-1);
  const wish = {
    mirrored: false,
    by: last?.by ?? "metres behind",
    amount: (last?.amount ?? 0) + 5,
    id: counted,
  } as const;
  riderWishes.value = [...riderWishes.value, wish];
}
export function changeRider(id: number, change: Partial<RiderWish>): void {
  riderWishes.value = riderWishes.value.map((wish) => (wish.id === id ? { ...wish, ...change } : wish));
}
export function removeRider(id: number): void {
  riderWishes.value = riderWishes.value.filter((wish) => wish.id !== id);
}

export interface OtherRider {
  id: number;
  letter: string;
  /** Where this rider rides it: moved where it is set off in place. */
  ride: Ridden;
  /** Seconds of the common clock at which this rider begins. */
  starts: number;
  figure: ReadonlySignal<HandsFigure | null>;
}

export const otherRiders = computed<OtherRider[]>(() =>
  riderWishes.value.flatMap((wish, index) => {
    const ride = wish.mirrored ? mirroredRide.value : ridden.value;
    if (ride === null) return [];
    const amount = Number.isFinite(wish.amount) ? wish.amount : 0;
    const starts = startOf(ride, wish.by, amount);
    const moved = { ...ride, timed: movedBy(ride.timed, wish.by, amount) };
    return [{ id: wish.id, letter: letterOf(index + 1), ride: moved, starts, figure: figureOf(ride, starts) }];
  }),
);

export const letterOf = (index: number) => String.fromCharCode(65 + index);

function startOf(ride: Ridden, by: RiderWish["by"], amount: number): number {
  if (by === "seconds later") return amount;
  return by === "metres behind" ? timeAtLength(ride.timed, Math.min(amount, lengthOf(ride.timed.path))) : 0;
}

function movedBy(timed: TimedPath, by: RiderWish["by"], amount: number): TimedPath {
  const [x, y] = [by === "metres to the right" ? amount : 0, by === "metres toward the head" ? amount : 0];
  return x === 0 && y === 0 ? timed : { ...timed, path: movePath(timed.path, { turn: 0, x, y }) };
}

function figureOf(ride: Ridden, starts: number): ReadonlySignal<HandsFigure | null> {
  const state = computed(() => {
    const own = seconds.value - starts;
    const now = ride.stages[stageAtTime(ride.stages, own)];
    return now ? stateIn(now, own) : null;
  });
  return computed(() => state.value && handsFigure(state.value));
}

/** Where the point of the shaft is from the rider, as far as that is known: held from each instant to the next. */
function pointsOf(ride: Ridden): CarriedPoint[] {
  const moments: { seconds: number; ahead: number; left: number }[] = [];
  let name = "point";
  for (const stage of ride.stages) {
    for (const [at, state] of [
      [stage.from, stage.before] as const,
      ...stage.instants.map(({ seconds: time, after }) => [time, after] as const),
    ]) {
      const { shaft } = handsFigure(state);
      if (shaft === null) continue;
      name = state.objects.find(({ object }) => object.id === shaft.object)?.object.name ?? name;
      const moment = { seconds: at, ahead: shaft.point.y, left: 0 - shaft.point.x };
      const before = moments.at(-1);
      if (before !== undefined && before.seconds >= at) moments.pop();
      else if (before !== undefined && at - before.seconds > 0.02) moments.push({ ...before, seconds: at - 0.01 });
      moments.push(moment);
    }
  }
  return moments.length === 0 ? [] : [{ name, moments }];
}

/** Two riders at their nearest. `point`: whose shaft comes near the other, by its name; null for two bodies. */
export interface Near {
  a: string;
  b: string;
  point: string | null;
  nearest: Nearest;
  /** The station or part of the ground it is nearest to, in words. */
  place: string;
}

const ridersNow = computed<{ rider: Rider; ridden: Ridden }[]>(() => {
  const [first, others] = [ridden.value, otherRiders.value];
  if (first === null || others.length === 0) return [];
  const own = { letter: letterOf(0), starts: 0, ride: first };
  return [own, ...others].map(({ letter, starts, ride }) => ({
    rider: {
      name: letter,
      timed: ride.timed,
      starts,
      counts: "while riding",
      body: USUAL_BODY,
      points: pointsOf(ride),
    },
    ridden: ride,
  }));
});

/** What the rules say of all riders together. */
export const findingsTogether = computed<Finding[]>(() =>
  findingsBetween(
    ridersNow.value,
    all("rules").filter(({ work }) => work === one("exercises", openExerciseId.value)?.work),
  ),
);

/** All pairs, the nearest first. Empty while there is one rider. */
export const nearPairs = computed<Near[]>(() => {
  const [first, riders] = [ridden.value, ridersNow.value.map(({ rider }) => rider)];
  if (first === null || riders.length === 0) return [];
  return allDistances(riders)
    .flatMap(({ a, b, point, nearest }) =>
      nearest === null
        ? []
        : [
            {
              a: a.name,
              b: b.name,
              point: point?.name ?? null,
              nearest,
              place: placeInWords(first.ground, nearest.onA),
            },
          ],
    )
    .sort((x, y) => x.nearest.metres - y.nearest.metres);
});

export function goToNearest({ nearest }: Near): void {
  goTo(nearest.seconds);
  nearestShown.value = nearest;
}

/** Goes to a finding between riders, and draws how near they are. */
export function goToTogether(finding: Finding): void {
  const near = nearPairs.value.find(({ nearest }) => Math.abs(nearest.seconds - finding.from) < 1e-3);
  if (near) goToNearest(near);
  else goTo(finding.from);
}
