/** Gaits, strides, lean and laps against published values. Rules G52-G60. */
import { describe, expect, it, test } from "vitest";
import {
  arcFrom,
  cutPath,
  GAIT_ROWS,
  type Gait,
  halt,
  horseGaits,
  lawError,
  leanDegrees,
  type Pace,
  pathOf,
  poseAt,
  poseAtTime,
  poseOn,
  secondsFor,
  secondsPerLap,
  speedOf,
  straight,
  stridesIn,
  TOLERANCE,
  timeAtLength,
  timeAtOneSpeed,
  timePath,
  turnOnSpot,
} from "../../shared/ground/index.ts";

const origin = poseAt(0, 0, 0);

describe("gaits", () => {
  it.each(GAIT_ROWS.map((row) => [row.called, row] as const))(
    "[G52] %s: speed is stride times rate, within 2 %%, and the row has a source",
    (_, row) => {
      expect(lawError(row) ?? 0).toBeLessThan(0.02);
      expect(row.source.length).toBeGreaterThan(5);
      expect(["read in the source", "from memory", "worked out"]).toContain(row.standing);
    },
  );

  test("[G52] the law can be broken", () => {
    const bent = { ...GAIT_ROWS[0]!, speed: 1.5 };
    expect(lawError(bent)).toBeGreaterThan(0.02);
  });

  // US Cavalry, later 19th century: 4, 8, 12, 16 miles an hour; in yards a minute.
  it.each([
    ["walk of the US Cavalry", 117.33, 1.788],
    ["trot of the US Cavalry", 234.67, 3.576],
    ["manoeuvring gallop of the US Cavalry", 352.0, 5.364],
    ["extended gallop of the US Cavalry", 469.33, 7.153],
  ])("[G53] %s", (called, yardsAMinute, speed) => {
    const row = GAIT_ROWS.find((one) => one.called === called)!;
    expect(row.speed).toBeCloseTo(speed, 3);
    expect((row.speed * 60) / 0.9144).toBeCloseTo(yardsAMinute, 2);
  });

  test("[G53] a mile in 16, 8 and 6 minutes (Cooke 1862)", () => {
    const minutes = [1.676, 3.353, 4.47].map((speed) => secondsFor(1609.344, speed) / 60);
    for (const [index, expected] of [16, 8, 6].entries()) expect(minutes[index]).toBeCloseTo(expected, 2);
  });

  test("[G53] tent pegging, 750 m a minute: 80 m in 6.4 s (US tent pegging rules)", () => {
    expect(secondsFor(80, speedOf("gallop", "full speed").speed)).toBeCloseTo(6.4, 9);
  });

  it.each([
    ["halt", null, 0, false],
    ["walk", null, 1.73, true],
    ["walk", "collected", 1.37, false],
    ["walk", "working", 1.73, true],
    ["trot", null, 3.61, true],
    ["trot", "extended", 4.93, false],
    ["canter", null, 3.91, true],
    ["canter", "medium", 4.9, false],
    ["gallop", "increased", 7.15264, false],
    ["gallop", "collected", 5.36448, true],
  ] as [Gait, Pace | null, number, boolean][])("[G54] %s, pace %s: %d m/s", (gait, pace, speed, assumed) => {
    const found = speedOf(gait, pace);
    expect(found.speed).toBeCloseTo(speed, 9);
    expect(found.assumed).toBe(assumed);
  });

  test("[G54] what is from memory says so; a horse's own measure comes first", () => {
    expect(speedOf("canter", null).basis).toContain("(from memory)");
    const own = [{ gait: "canter" as const, pace: null, speed: 4.2, strideLength: 2.6 }];
    expect(speedOf("canter", null, own)).toEqual({
      speed: 4.2,
      strideLength: 2.6,
      basis: "measured on this horse",
      assumed: false,
    });
    expect(speedOf("canter", "collected", own).speed).toBe(3.27);
  });

  test("[G54] from one measure of a gait all its paces, in proportion to the table", () => {
    const own = horseGaits({ canter: 4.301, trot: 0 });
    expect(speedOf("canter", null, own)).toMatchObject({ speed: 4.301, basis: "measured on this horse" });
    expect(speedOf("canter", "working", own)).toMatchObject({ speed: 4.301, basis: "measured on this horse" });
    const collected = speedOf("canter", "collected", own);
    expect(collected.speed).toBeCloseTo(3.27 * 1.1, 9);
    expect(collected.basis).toBe("in proportion to what was measured on this horse");
    expect(speedOf("trot", null, own).speed).toBe(3.61);
    expect(horseGaits({ walk: Number.NaN, gallop: -1 })).toEqual([]);
  });

  test("[G55] strides in a length; a volte of 10 m at working canter has 13", () => {
    expect(stridesIn(10 * Math.PI, 2.35)).toBeCloseTo(13.37, 2);
    expect(stridesIn(0, 2)).toBe(0);
    expect(() => stridesIn(10, 0)).toThrow("There are no strides of 0 m in 10 m.");
    expect(() => secondsFor(10, 0)).toThrow("There is no time for 10 m at 0 m/s.");
  });

  test("[G55] the volte of 12 steps of one yard (De Bussigny, Equitation) is 12 yards round and 3.5 m across", () => {
    const round = arcFrom(origin, (12 * 0.9144) / (2 * Math.PI), 36_000);
    expect(stridesIn(round.length, 0.9144)).toBeCloseTo(12, 9);
    expect(2 * round.radius).toBeCloseTo(3.5, 1);
  });
});

describe("lean and laps", () => {
  // tan(lean) = v^2 / (g r), g = 9.81; degrees, then seconds for the circle, by diameter 6, 8, 10, 15, 20 m.
  const table: [speed: number, cells: [lean: number, seconds: number][]][] = [
    [
      1.73,
      [
        [5.8, 10.9],
        [4.4, 14.5],
        [3.5, 18.2],
        [2.3, 27.2],
        [1.7, 36.3],
      ],
    ],
    [
      3.61,
      [
        [23.9, 5.2],
        [18.4, 7.0],
        [14.9, 8.7],
        [10.0, 13.1],
        [7.6, 17.4],
      ],
    ],
    [
      3.91,
      [
        [27.5, 4.8],
        [21.3, 6.4],
        [17.3, 8.0],
        [11.7, 12.1],
        [8.9, 16.1],
      ],
    ],
    [
      4.9,
      [
        [39.2, 3.8],
        [31.5, 5.1],
        [26.1, 6.4],
        [18.1, 9.6],
        [13.8, 12.8],
      ],
    ],
  ];
  const rows = table.flatMap(([speed, cells]) =>
    cells.map(([lean, seconds], index) => [speed, [6, 8, 10, 15, 20][index]!, lean, seconds] as const),
  );
  it.each(rows)("[G56, G57] at %d m/s on a circle of %d m", (speed, diameter, lean, seconds) => {
    expect(leanDegrees(speed, diameter / 2)).toBeCloseTo(lean, 1);
    expect(Math.abs(secondsPerLap(speed, diameter) - seconds)).toBeLessThanOrEqual(0.0501);
  });

  test("[G56, G57] no circle, no lean and no lap", () => {
    expect(leanDegrees(0, 5)).toBe(0);
    expect(() => leanDegrees(4, 0)).toThrow("There is no lean at 4 m/s on a radius of 0 m.");
    expect(() => secondsPerLap(0, 10)).toThrow("There is no lap at 0 m/s, 10 m across.");
  });
});

describe("timed paths", () => {
  const line = straight(origin, { x: 10, y: 0 });
  const stand = halt(poseOn(line, 1), 2);
  const turn = turnOnSpot(poseOn(line, 1), 9_000);
  const on = straight({ x: 10, y: 0 }, { x: 10, y: 10 });
  const path = pathOf([line, stand, turn, on], TOLERANCE);
  const timed = timePath(path, [5, 0, 0, 2], 45);

  it.each([
    [-1, poseAt(0, 0, 0)],
    [0, poseAt(0, 0, 0)],
    [1, poseAt(5, 0, 0)],
    [3, poseAt(10, 0, 0)],
    [5, poseAt(10, 0, 4_500)],
    [8.5, poseAt(10, 5, 9_000)],
    [11, poseAt(10, 10, 9_000)],
    [99, poseAt(10, 10, 9_000)],
  ])("[G58] after %d s", (seconds, pose) => {
    expect(timed.duration).toBe(11);
    expect(poseAtTime(timed, seconds)).toEqual(pose);
  });

  test("[G59] the time of a place, and the place of that time", () => {
    expect(timeAtLength(timed, 5)).toBe(1);
    expect(timeAtLength(timed, 10)).toBe(2);
    expect(timeAtLength(timed, 15)).toBe(8.5);
    expect(timeAtLength(timed, 20)).toBe(11);
  });

  test("[G60] a speed for each piece, above 0 where the horse moves", () => {
    expect(() => timePath(path, [5])).toThrow("A path of 4 pieces has as many speeds, not 1.");
    expect(() => timePath(path, [0, 0, 0, 1])).toThrow("A straight needs a speed above 0, not 0.");
    expect(() => timePath(path, [1, 0, 0, Number.NaN])).toThrow("not NaN");
    expect(() => timePath(path, [1, 0, 0, 1], 0)).toThrow("A turn needs a speed above 0, not 0.");
  });

  test("[G59] a cut keeps the time", () => {
    const [first, rest] = cutPath(path, 4);
    expect(timeAtOneSpeed(first, 2).duration + timeAtOneSpeed(rest, 2).duration).toBeCloseTo(
      timeAtOneSpeed(path, 2).duration,
      12,
    );
  });
});
