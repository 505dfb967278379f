/** shared/ground/riders.ts - up to eight riders on one ground: where each is at a moment, with body and shaft points.
 *  May import: siblings in shared/ground. Keeps rules G61-G63 (shared/ground/RULES.md). Metres, seconds. */
import { beside, type Point, type Pose } from "./plane.ts";
import { poseAtTime, type TimedPath } from "./timed-path.ts";

/** A horse from above: a line from `behind` to `ahead` of the rider's place, `halfWidth` thick to either side. */
export type Body = { readonly ahead: number; readonly behind: number; readonly halfWidth: number };

/** A horse is about 8 ft long by measure (US Cavalry Drill Regulations 1916); where the rider sits on it, and its
 *  width with the rider's knees, are guesses. */
export const USUAL_BODY: Body = Object.freeze({ ahead: 1.3, behind: 1.14, halfWidth: 0.4 });

/** Where a shaft's point is from the rider: metres ahead and to the left, at a moment of the rider's own time. */
export type PointMoment = { readonly seconds: number; readonly ahead: number; readonly left: number };
/** A shaft's point through the ride: at least one moment, rising in time; straight lines between, still outside. */
export type CarriedPoint = { readonly name: string; readonly moments: readonly PointMoment[] };

/** A rider. `starts` is when its path begins, in seconds of the common clock, negative allowed. `counts`: whether others
 *  can come near it only while it rides (it comes in and goes out), or always (it stands at its start and its end). */
export type Rider = {
  readonly name: string;
  readonly timed: TimedPath;
  readonly starts: number;
  readonly counts: "while riding" | "always";
  readonly body: Body;
  readonly points: readonly CarriedPoint[];
};

export const MOST_RIDERS = 8;

export type RidersResult =
  | { ok: true; riders: readonly Rider[]; from: number; to: number }
  | { ok: false; code: "too-many-riders" | "no-rider" | "same-name" | "not-a-body" | "not-a-point"; sentence: string };

/** The riders together, and the time from the first start to the last end. */
export function ridersTogether(riders: readonly Rider[]): RidersResult {
  if (riders.length === 0)
    return { ok: false, code: "no-rider", sentence: "At least one rider was expected, but there is none. Add one." };
  if (riders.length > MOST_RIDERS)
    return {
      ok: false,
      code: "too-many-riders",
      sentence: `At most ${MOST_RIDERS} riders were expected on one ground, but there are ${riders.length}. Let some wait outside.`,
    };
  for (const [index, rider] of riders.entries()) {
    const wrong = wrongWith(rider);
    if (wrong !== null) return wrong;
    if (riders.findIndex((other) => other.name === rider.name) !== index)
      return {
        ok: false,
        code: "same-name",
        sentence: `Each rider was expected to have a name of its own, but two are called “${rider.name}”. Rename one.`,
      };
  }
  return {
    ok: true,
    riders,
    from: Math.min(...riders.map((rider) => rider.starts)),
    to: Math.max(...riders.map((rider) => rider.starts + rider.timed.duration)),
  };
}

function wrongWith(rider: Rider): RidersResult | null {
  const { ahead, behind, halfWidth } = rider.body;
  if (![ahead, behind, halfWidth].every((size) => size >= 0 && Number.isFinite(size)) || !Number.isFinite(rider.starts))
    return {
      ok: false,
      code: "not-a-body",
      sentence: `A body of 0 m or more each way and a start in seconds were expected for ${rider.name}, but they are ${ahead}, ${behind} and ${halfWidth} m, and ${rider.starts} s. Give the horse its length and width.`,
    };
  for (const point of rider.points) {
    const finite = point.moments.every((at) =>
      [at.seconds, at.ahead, at.left].every((value) => Number.isFinite(value)),
    );
    const rising = point.moments.every(
      (at, index) => index === 0 || at.seconds > (point.moments[index - 1] as PointMoment).seconds,
    );
    if (point.moments.length === 0 || !finite || !rising)
      return {
        ok: false,
        code: "not-a-point",
        sentence: `Moments rising in time, in seconds and metres, were expected for ${point.name} of ${rider.name}, but ${point.moments.length === 0 ? "there are none" : "they are not"}. Say where the point is, at least once.`,
      };
  }
  return null;
}

/** Where a rider is at a moment of the common clock. */
export function poseOfRider(rider: Rider, seconds: number): Pose {
  return poseAtTime(rider.timed, seconds - rider.starts);
}

/** The two ends of the line through a horse. */
export function bodyEnds(pose: Pose, body: Body): [Point, Point] {
  return [beside(pose, body.ahead), beside(pose, -body.behind)];
}

/** Where a carried point is, from the rider, at a moment of the rider's own time. */
export function carriedAt(point: CarriedPoint, seconds: number): { ahead: number; left: number } {
  const moments = point.moments;
  let after = 0;
  for (let end = moments.length; after < end; ) {
    const middle = (after + end) >> 1;
    if ((moments[middle] as PointMoment).seconds < seconds) after = middle + 1;
    else end = middle;
  }
  const next = moments[after] ?? (moments[moments.length - 1] as PointMoment);
  if (after === 0 || after === moments.length) return next;
  const last = moments[after - 1] as PointMoment;
  const part = (seconds - last.seconds) / (next.seconds - last.seconds);
  return { ahead: last.ahead + (next.ahead - last.ahead) * part, left: last.left + (next.left - last.left) * part };
}
