/** client/ride/riders.ts - other riders on the same ground: how each is set off against the first, what each does now, and
 *  how near any two of them come. Kept in this window only. */
import { batch, computed, type ReadonlySignal, signal } from "@preact/signals";
import { allDistances, type Nearest } from "../../shared/ground/distances.ts";
import { movePath } from "../../shared/ground/path.ts";
import { placeInWords } from "../../shared/ground/place-in-words.ts";
import { type CarriedPoint, MOST_RIDERS, USUAL_BODY } from "../../shared/ground/riders.ts";
import type { TimedPath } from "../../shared/ground/timed-path.ts";
import { type HandsFigure, handsFigure } from "../../shared/hands/figure.ts";
import type { Finding, Ridden } from "../../shared/ride/ridden.ts";
import { findingsBetween, gapsAsked, type RiderOfRide } from "../../shared/ride/rules/index.ts";
import { openExerciseId } from "../state/exercise.ts";
import { all, one } from "../state/rows.ts";
import { nearestShown } from "./gone-to.ts";
import { stateIn } from "./moment.ts";
import { goTo, seconds } from "./playing.ts";
import { drill, lasts, ownRole, parts, ridden, roles, wishes } from "./riding.ts";
import { stageAtTime } from "./stage-at-time.ts";
import { type RiderWish, riderWishes } from "./wish.ts";

export const MOST_OTHERS = MOST_RIDERS - 1;
let counted = 0;

/** Adds a rider of the part that nobody has yet, else of the last one's, set off so that he keeps clear of the others. */
export function addRider(): void {
  counted += 1;
  const last = wishes.value.at(-1);
  const taken = [ownRole.value, ...wishes.value.map((other) => other.role)];
  const role = roles.value.find((part) => !taken.includes(part)) ?? null;
  const others = wishes.value;
  const wish = { role: role ?? last?.role ?? ownRole.value, mirrored: false, id: counted };
  // Another part is ridden beside the first; the same one after it.
  const offsets = role === null ? offsetsAfter(last) : [ZERO, ...offsetsAfter(undefined)];
  // Nobody sees what is only tried.
  batch(() => {
    let best = { offset: ZERO, clear: false, least: -1 };
    for (const offset of offsets) {
      riderWishes.value = [...others, { ...wish, ...offset }];
      const tried = { offset, ...clearance(letterOf(others.length + 1)) };
      if (tried.clear || tried.least > best.least) best = tried;
      if (tried.clear) break;
    }
    riderWishes.value = [...others, { ...wish, ...best.offset }];
    placed.value = { id: wish.id, clear: best.clear };
  });
}

type Offset = Pick<RiderWish, "by" | "amount">;
const ZERO: Offset = { by: "seconds later", amount: 0 };
/** Metres behind and seconds later that are tried, the nearest first; the last is when all have ended. */
const BEHIND = [5, 10, 15, 20, 30, 40];
const LATER = [5, 10, 15, 20, 30, 45, 60];

/** Behind the last one, or after him where he is set off in time. */
function offsetsAfter(last: RiderWish | undefined): Offset[] {
  const begins = last?.by === "metres behind" || last?.by === "seconds later" ? last.amount : 0;
  const behind = BEHIND.map((more): Offset => ({ by: "metres behind", amount: begins + more }));
  const later = LATER.map((more): Offset => ({ by: "seconds later", amount: begins + more }));
  const end: Offset = { by: "seconds later", amount: Math.ceil(lasts.value) };
  if (last?.by === "seconds later") return [...later, end];
  return [...behind, ...(last === undefined ? later : []), end];
}

/** Whether nobody touches this rider or comes nearer than is to lie between horses, and how near the nearest body comes, in metres. */
function clearance(letter: string): { clear: boolean; least: number } {
  const own = findingsTogether.value.filter(({ id }) => id.split("/").includes(letter));
  const bodies = nearPairs.value.filter(({ a, b, point }) => point === null && (a === letter || b === letter));
  return {
    clear: own.every(({ rule }) => rule !== "bodies-clear" && rule !== "bodies-apart"),
    least: Math.min(CARED_FOR, ...bodies.map(({ nearest }) => nearest.metres)),
  };
}

/** The rider that was set off last by the program, and whether he keeps clear; null once somebody set him off otherwise. */
export const placed = signal<{ id: number; clear: boolean } | null>(null);

export function changeRider(id: number, change: Partial<RiderWish>): void {
  if (placed.value?.id === id) placed.value = null;
  riderWishes.value = wishes.value.map((wish) => (wish.id === id ? { ...wish, ...change } : wish));
}
export function removeRider(id: number): void {
  riderWishes.value = wishes.value.filter((wish) => wish.id !== id);
}

export interface OtherRider {
  id: number;
  letter: string;
  role: string | null;
  /** Where this rider rides it: moved where it is set off in place. */
  ride: Ridden;
  /** Seconds of the common clock at which this rider begins. */
  starts: number;
  figure: ReadonlySignal<HandsFigure | null>;
}

export const otherRiders = computed<OtherRider[]>(() =>
  parts.value.slice(1).flatMap(({ ride, starts, role }, index) => {
    const wish = wishes.value[index];
    if (wish === undefined) return [];
    const moved = { ...ride, timed: movedBy(ride.timed, wish) };
    return [{ id: wish.id, letter: letterOf(index + 1), role, ride: moved, starts, figure: figureOf(ride, starts) }];
  }),
);

export const letterOf = (index: number) => String.fromCharCode(65 + index);

function movedBy(timed: TimedPath, { by, amount }: RiderWish): TimedPath {
  if (!Number.isFinite(amount)) return timed;
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

const ridersNow = computed<RiderOfRide[]>(() => {
  const [first, others] = [ridden.value, otherRiders.value];
  if (first === null || others.length === 0) return [];
  const own = { letter: letterOf(0), starts: 0, ride: first, role: ownRole.value };
  return [own, ...others].map(({ letter, starts, ride, role }) => ({
    role,
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
export const findingsTogether = computed<Finding[]>(() => {
  const now = drill.value;
  if (now === null || ridersNow.value.length === 0) return [];
  return findingsBetween(
    ridersNow.value,
    all("rules").filter(({ work }) => work === one("exercises", openExerciseId.value)?.work),
    gapsAsked(
      all("elements").filter(({ exercise }) => exercise === openExerciseId.value),
      now,
    ),
  );
});

/** Metres beyond which nobody asks how near two riders come. */
export const CARED_FOR = 10;

/** All pairs that come within that, the nearest first. Empty while there is one rider. */
export const nearPairs = computed<Near[]>(() => {
  const [first, riders] = [ridden.value, ridersNow.value.map(({ rider }) => rider)];
  if (first === null || riders.length === 0) return [];
  return allDistances(riders, { within: 0.01, care: CARED_FOR })
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
