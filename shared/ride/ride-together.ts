/** shared/ride/ride-together.ts - several riders on one ground: the same ride or others, later, elsewhere or mirrored; and
 *  how near they come to one another.
 *  May import: shared/ground, shared/hands, siblings in shared/ride. Keeps rule R31 (shared/ride/RULES.md). Metres, seconds. */
import { allDistances, type PairNearest, type SearchOptions } from "../ground/distances.ts";
import { movePath } from "../ground/path.ts";
import {
  type Body,
  type PointMoment,
  type Rider,
  type RidersResult,
  ridersTogether,
  USUAL_BODY,
} from "../ground/riders.ts";
import { shaftOf } from "../hands/figure.ts";
import type { ControlState } from "../hands/state.ts";
import { mirrorRidden } from "./mirror-ridden.ts";
import type { Ridden } from "./ridden.ts";

export interface RiderAsk {
  ridden: Ridden;
  /** When it begins on the common clock; negative allowed. */
  offsetSeconds: number;
  /** Metres its whole path is moved by; not checked against the wall. */
  placeOffset?: { x: number; y: number };
  mirrored?: boolean;
  /** Default: "rider 1", "rider 2" in the order given. */
  name?: string;
  body?: Body;
  /** Default: while riding, so that whoever begins later is not there yet. */
  counts?: Rider["counts"];
}

export type Together =
  | {
      ok: true;
      riders: readonly Rider[];
      /** The rides as they are ridden here, mirrored where asked; paths not moved. */
      rides: readonly Ridden[];
      from: number;
      to: number;
      /** Every two bodies, then every shaft's point and every other body; each at its nearest, with moment and place. */
      distances: PairNearest[];
    }
  | Exclude<RidersResult, { ok: true }>;

/** At most eight; more, or none, is refused with a sentence. */
export function rideTogether(asked: readonly RiderAsk[], search?: SearchOptions): Together {
  // Several riders of one ride share what is worked out of it.
  const mirrors = new Map<Ridden, Ridden>();
  const points = new Map<Ridden, PointMoment[]>();
  const rides = asked.map(({ ridden, mirrored }) =>
    mirrored === true ? kept(mirrors, ridden, () => mirrorRidden(ridden)) : ridden,
  );
  const riderAt = (ask: RiderAsk, index: number): Rider => {
    const ridden = rides[index] as Ridden;
    return riderOf(
      ask,
      ridden,
      index,
      kept(points, ridden, () => pointMoments(ridden)),
    );
  };
  const together = ridersTogether(asked.map(riderAt));
  if (!together.ok) return together;
  const { riders, from, to } = together;
  return { ok: true, riders, rides, from, to, distances: allDistances(riders, search) };
}

function kept<T>(made: Map<Ridden, T>, ridden: Ridden, make: () => T): T {
  const held = made.get(ridden) ?? make();
  made.set(ridden, held);
  return held;
}

function riderOf(ask: RiderAsk, ridden: Ridden, index: number, moments: readonly PointMoment[]): Rider {
  const { x, y } = ask.placeOffset ?? { x: 0, y: 0 };
  const moved = x === 0 && y === 0 ? ridden.timed.path : movePath(ridden.timed.path, { turn: 0, x, y });
  return {
    name: ask.name ?? `rider ${index + 1}`,
    timed: { ...ridden.timed, path: moved },
    starts: ask.offsetSeconds,
    counts: ask.counts ?? "while riding",
    body: ask.body ?? USUAL_BODY,
    points: moments.length === 0 ? [] : [{ name: "the point", moments }],
  };
}

/** Seconds in which a point goes to its next place. A guess: a hand does not jump. */
const MOVES_IN = 0.5;

/** Where the point is from the rider, in the rider's own time. While that is not known it counts as within his own body,
 *  so that it brings him no nearer to anybody. None when it is never known. */
function pointMoments({ stages }: Ridden): PointMoment[] {
  const moments: PointMoment[] = [];
  let known = false;
  let before: ControlState | null = null;
  const add = (seconds: number, state: ControlState): void => {
    if (state === before) return;
    before = state;
    const point = shaftOf(state)?.point ?? null;
    if (point !== null) known = true;
    const place = { ahead: point?.y ?? 0, left: point === null ? 0 : 0 - point.x };
    const last = moments.at(-1);
    if (last && last.ahead === place.ahead && last.left === place.left) return;
    const from = last === undefined ? seconds : Math.max(last.seconds, seconds - MOVES_IN);
    if (last && from > last.seconds) moments.push({ ...last, seconds: from });
    const at = moments.at(-1);
    if (at && at.seconds >= seconds) moments.pop();
    moments.push({ seconds, ...place });
  };
  for (const stage of stages) {
    add(stage.from, stage.before);
    for (const { seconds, after } of stage.instants) add(seconds, after);
  }
  return known ? moments : [];
}
