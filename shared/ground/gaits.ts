/** shared/ground/gaits.ts - how fast, how long and how often: published gaits as data, and strides counted by them.
 *  May import: schema types. Keeps rules G52-G55 (shared/ground/RULES.md).
 *  Metres, seconds; stride rates per minute. Every row keeps speed = stride x rate / 60 within 2 %. */
import type { ValueOf } from "../../schema/values.ts";

export type Gait = ValueOf<"gait">;
export type Pace = ValueOf<"pace">;

/** How far a row may be trusted: read in a copy of its source, from memory, or worked out on rows read. */
export type Standing = "read in the source" | "from memory" | "worked out";

/** One published row. `strideLength` and `stridesPerMinute` are null where only a speed is given. */
export type GaitRow = {
  readonly gait: Exclude<Gait, "halt">;
  /** As the source calls it. */
  readonly called: string;
  readonly speed: number;
  readonly strideLength: number | null;
  readonly stridesPerMinute: number | null;
  readonly source: string;
  readonly standing: Standing;
};

const WALK = "Clayton 1995, Equine Veterinary Journal 27:26-30";
const TROT = "Clayton 1994, Equine Veterinary Journal 26:230-234";
const CANTER = "Clayton 1994, Equine Veterinary Journal Suppl. 17:16-19";
const CAVALRY = "US Cavalry, later 19th century: 4, 8, 12 and 16 miles an hour";

const row = (
  gait: GaitRow["gait"],
  called: string,
  speed: number,
  stride: [length: number, perMinute: number] | null,
  source: string,
  standing: Standing,
): GaitRow => ({
  gait,
  called,
  speed,
  strideLength: stride === null ? null : stride[0],
  stridesPerMinute: stride === null ? null : stride[1],
  source,
  standing,
});

/** A mile an hour in metres a second, exactly. */
export const MILE_AN_HOUR = 1609.344 / 3600;

export const GAIT_ROWS: readonly GaitRow[] = Object.freeze([
  row("walk", "collected walk", 1.37, [1.57, 52], WALK, "from memory"),
  row("walk", "medium walk", 1.73, [1.87, 55], WALK, "from memory"),
  row("walk", "extended walk", 1.82, [1.93, 56], WALK, "from memory"),
  row("trot", "collected trot", 3.2, [2.5, 77], TROT, "from memory"),
  row("trot", "working trot", 3.61, [2.73, 79], TROT, "from memory"),
  row("trot", "medium trot", 4.47, [3.26, 82], TROT, "from memory"),
  row("trot", "extended trot", 4.93, [3.55, 83], TROT, "from memory"),
  row("canter", "collected canter", 3.27, [2.0, 99], CANTER, "from memory"),
  row("canter", "working canter", 3.91, [2.35, 99], CANTER, "from memory"),
  row("canter", "medium canter", 4.9, [2.94, 101], CANTER, "from memory"),
  row("canter", "extended canter", 5.97, [3.47, 105], CANTER, "from memory"),
  row("canter", "extended canter of 19 Olympic horses", 7.03, [4.15, 101.4], "Deuel and Park", "read in the source"),
  row("canter", "one-stride flying change", 3.36, [2.08, 97.2], "Deuel and Park", "read in the source"),
  row("trot", "racing trot", 12.0, [5.45, 132], "Drevemo et al. 1980", "read in the source"),
  row(
    "gallop",
    "tent pegging, individual lance",
    12.5,
    null,
    "US tent pegging rules: 750 m a minute",
    "read in the source",
  ),
  row("walk", "walk of the US Cavalry", 4 * MILE_AN_HOUR, null, CAVALRY, "worked out"),
  row("trot", "trot of the US Cavalry", 8 * MILE_AN_HOUR, null, CAVALRY, "worked out"),
  row("gallop", "manoeuvring gallop of the US Cavalry", 12 * MILE_AN_HOUR, null, CAVALRY, "worked out"),
  row("gallop", "extended gallop of the US Cavalry", 16 * MILE_AN_HOUR, null, CAVALRY, "worked out"),
]);

/** Which row stands for a pace; the rest of a gait's paces go by its first. Easy and increased are ours to map. */
const PACES: Readonly<Record<GaitRow["gait"], readonly (readonly [Pace | null, string])[]>> = Object.freeze({
  walk: [
    [null, "medium walk"],
    ["collected", "collected walk"],
    ["easy", "medium walk"],
    ["increased", "extended walk"],
    ["extended", "extended walk"],
    ["full speed", "extended walk"],
  ],
  trot: [
    [null, "working trot"],
    ["collected", "collected trot"],
    ["easy", "working trot"],
    ["medium", "medium trot"],
    ["increased", "medium trot"],
    ["extended", "extended trot"],
    ["full speed", "extended trot"],
  ],
  canter: [
    [null, "working canter"],
    ["collected", "collected canter"],
    ["easy", "working canter"],
    ["medium", "medium canter"],
    ["increased", "medium canter"],
    ["extended", "extended canter"],
    ["full speed", "extended canter of 19 Olympic horses"],
  ],
  gallop: [
    [null, "manoeuvring gallop of the US Cavalry"],
    ["increased", "extended gallop of the US Cavalry"],
    ["extended", "extended gallop of the US Cavalry"],
    ["full speed", "tent pegging, individual lance"],
  ],
});

/** What one horse was measured to do; the pace null for the gait as it usually goes. Metres a second, metres. */
export type HorseGait = {
  readonly gait: GaitRow["gait"];
  readonly pace: Pace | null;
  readonly speed: number;
  readonly strideLength: number | null;
  /** In words; absent where it was measured itself. */
  readonly basis?: string;
};

const EVERY_PACE = [
  null,
  "collected",
  "working",
  "medium",
  "extended",
  "easy",
  "increased",
  "full speed",
] as const satisfies readonly (Pace | null)[];
const IN_PROPORTION = "in proportion to what was measured on this horse";

/** What a horse does at every pace, from one speed for each gait that was measured, as it usually goes (m/s): the other
 *  paces of a gait in proportion, as they stand in the table. Its strides are not known. Gaits without a speed above 0
 *  are left out. */
export function horseGaits(measured: Readonly<Partial<Record<GaitRow["gait"], number>>>): HorseGait[] {
  return (Object.keys(PACES) as GaitRow["gait"][]).flatMap((gait) => {
    const usual = measured[gait];
    if (usual === undefined || !(usual > 0 && Number.isFinite(usual))) return [];
    const published = speedOf(gait, null).speed;
    return EVERY_PACE.map((pace): HorseGait => {
      const share = speedOf(gait, pace).speed / published;
      return { gait, pace, speed: usual * share, strideLength: null, ...(share === 1 ? {} : { basis: IN_PROPORTION }) };
    });
  });
}

/** A speed with its basis in words. `assumed` when the pace was not said, or no row is published for it. */
export type SpeedFound = {
  readonly speed: number;
  readonly strideLength: number | null;
  readonly basis: string;
  readonly assumed: boolean;
};

/** The speed of a gait and pace: the horse's own where it was measured, else the published row; 0 at the halt. */
export function speedOf(gait: Gait, pace: Pace | null, horse: readonly HorseGait[] = []): SpeedFound {
  if (gait === "halt") return { speed: 0, strideLength: null, basis: "the horse stands", assumed: false };
  const own = horse.find((measured) => measured.gait === gait && measured.pace === pace);
  if (own !== undefined) {
    const { speed, strideLength, basis = "measured on this horse" } = own;
    return { speed, strideLength, basis, assumed: false };
  }
  const named = PACES[gait].find(([of]) => of === pace);
  const called = (named ?? PACES[gait][0])?.[1];
  const found = GAIT_ROWS.find((candidate) => candidate.called === called);
  if (found === undefined) throw new Error(`No row is called ${called}, which ${gait} stands on.`);
  const basis = `${found.called}: ${found.source}${found.standing === "from memory" ? " (from memory)" : ""}`;
  return { speed: found.speed, strideLength: found.strideLength, basis, assumed: pace === null || named === undefined };
}

/** How far a row is from speed = stride length x strides a minute / 60, as a share of the speed; null without strides. */
export function lawError(found: GaitRow): number | null {
  if (found.strideLength === null || found.stridesPerMinute === null) return null;
  return Math.abs((found.strideLength * found.stridesPerMinute) / 60 - found.speed) / found.speed;
}

/** Seconds for so many metres at a speed. Throws RangeError unless the speed is above 0 and the way 0 or more. */
export function secondsFor(metres: number, speed: number): number {
  if (!(speed > 0 && metres >= 0)) throw new RangeError(`There is no time for ${metres} m at ${speed} m/s.`);
  return metres / speed;
}

/** Strides in so many metres, not rounded. Throws RangeError unless the stride is above 0 and the way 0 or more. */
export function stridesIn(metres: number, strideLength: number): number {
  if (!(strideLength > 0 && metres >= 0))
    throw new RangeError(`There are no strides of ${strideLength} m in ${metres} m.`);
  return metres / strideLength;
}
