/** Several riders: where each is, and how near they come, against a dense brute force. Rules G61-G69. */
import { Point as FlatPoint, Segment as FlatSegment } from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  allDistances,
  arcFrom,
  bodyEnds,
  type CarriedPoint,
  carriedAt,
  distance,
  firstWithin,
  leastDistance,
  type Mover,
  mirrorPath,
  nearestPlaces,
  type Pose,
  pathOf,
  poseAt,
  poseOfRider,
  type Rider,
  ridersTogether,
  type Span,
  sampledPose,
  sampleRiders,
  straight,
  stretchesOf,
  TOLERANCE,
  timeAtOneSpeed,
  turnBetween,
  USUAL_BODY,
} from "../../shared/ground/index.ts";
import { anyPath } from "./any-ground.ts";

function rider(name: string, path: Rider["timed"]["path"], speed: number, rest: Partial<Rider> = {}): Rider {
  return {
    name,
    timed: timeAtOneSpeed(path, speed),
    starts: 0,
    counts: "always",
    body: USUAL_BODY,
    points: [],
    ...rest,
  };
}
const line = (fromX: number, fromY: number, toX: number, toY: number): Rider["timed"]["path"] =>
  pathOf([straight({ x: fromX, y: fromY }, { x: toX, y: toY })], TOLERANCE);
const body = (of: Rider): Mover => ({ rider: of, point: null });
const still = (name: string, at: Pose, rest: Partial<Rider> = {}): Rider =>
  rider(name, pathOf([straight(at, { x: at.x + 1e-3, y: at.y })], TOLERANCE), 1, rest);
const thin = { ahead: 0, behind: 0, halfWidth: 0 };

describe("nearest places", () => {
  const coordinate = fc.integer({ min: -5_000, max: 5_000 }).map((mm) => mm / 1_000);
  const place = fc.record({ x: coordinate, y: coordinate });
  test("of two lines agree with an independent library's", () => {
    fc.assert(
      fc.property(place, place, place, place, (a, b, c, d) => {
        fc.pre(distance(a, b) > 0.01 && distance(c, d) > 0.01);
        const flat = (from: typeof a, to: typeof a): FlatSegment =>
          new FlatSegment(new FlatPoint(from.x, from.y), new FlatPoint(to.x, to.y));
        const found = nearestPlaces([a, b], [c, d]);
        expect(found.metres).toBeCloseTo(flat(a, b).distanceTo(flat(c, d))[0], 6);
        expect(distance(found.onA, found.onB)).toBeCloseTo(found.metres, 9);
        expect(nearestPlaces([c, d], [a, b]).metres).toBeCloseTo(found.metres, 9);
        expect(nearestPlaces([a], [c, d]).metres).toBeCloseTo(new FlatPoint(a.x, a.y).distanceTo(flat(c, d))[0], 6);
      }),
      { numRuns: 500 },
    );
  });
});

describe("riders", () => {
  test("[G61] one starts late, and stands before and after", () => {
    const one = rider("first", line(0, 0, 10, 0), 2, { starts: 3 });
    expect([0, 3, 5, 8, 20].map((seconds) => poseOfRider(one, seconds).x)).toEqual([0, 0, 4, 10, 10]);
  });

  test("[G61] samples: the first and last moment among them", () => {
    const one = rider("first", line(0, 0, 10, 0), 2);
    const samples = sampleRiders([one], 0, 5, 60);
    expect(samples.count).toBe(301);
    expect(sampledPose(samples, 0, 0)).toEqual(poseAt(0, 0, 0));
    expect(sampledPose(samples, 0, 300)).toEqual(poseAt(10, 0, 0));
    expect(() => sampleRiders([one], 0, 5, 0)).toThrow("There are no samples 0 times a second");
    expect(() => sampledPose(samples, 0, 301)).toThrow("There is no sample 301 of rider 0.");
    expect(() => sampledPose(samples, 1, 0)).toThrow("There is no sample 0 of rider 1.");
  });

  test("[G61] samples are the poses of those moments, on any path", () => {
    fc.assert(
      fc.property(
        anyPath,
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: -30, max: 30 }),
        (path, speed, starts) => {
          const one = rider("one", path, speed / 10, { starts: starts / 10 });
          const samples = sampleRiders([one], -4, one.timed.duration + 4, 7);
          for (let index = 0; index < samples.count; index += 1) {
            const [found, there] = [sampledPose(samples, 0, index), poseOfRider(one, -4 + index / 7)];
            expect(distance(found, there)).toBeLessThan(1e-6);
            expect(Math.abs(turnBetween(found.heading, there.heading))).toBeLessThan(1e-4);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it.each([
    ["none", [], "no-rider", "At least one rider was expected, but there is none. Add one."],
    [
      "nine",
      Array.from({ length: 9 }, (_, index) => rider(`r${index}`, line(0, 0, 1, 0), 1)),
      "too-many-riders",
      "At most 8 riders were expected on one ground, but there are 9.",
    ],
    [
      "two of one name",
      [rider("same", line(0, 0, 1, 0), 1), rider("same", line(0, 0, 1, 0), 1)],
      "same-name",
      "two are called “same”. Rename one.",
    ],
    [
      "a body of NaN",
      [rider("odd", line(0, 0, 1, 0), 1, { body: { ...USUAL_BODY, ahead: Number.NaN } })],
      "not-a-body",
      "but they are NaN, 1.14 and 0.4 m, and 0 s.",
    ],
    [
      "a point that is nowhere",
      [rider("odd", line(0, 0, 1, 0), 1, { points: [{ name: "the point", moments: [] }] })],
      "not-a-point",
      "were expected for the point of odd, but there are none.",
    ],
  ] as [string, Rider[], string, string][])("[G62] %s is refused", (_, riders, code, words) => {
    expect(ridersTogether(riders)).toMatchObject({ ok: false, code, sentence: expect.stringContaining(words) });
  });

  test("[G62] together: from the first start to the last end", () => {
    const riders = [rider("a", line(0, 0, 10, 0), 2, { starts: -1 }), rider("b", line(0, 5, 10, 5), 1)];
    expect(ridersTogether(riders)).toMatchObject({ ok: true, from: -1, to: 10 });
  });

  test("[G63] a carried point goes straight between its moments and rests outside them", () => {
    const point: CarriedPoint = {
      name: "point",
      moments: [
        { seconds: 1, ahead: 2, left: 0 },
        { seconds: 3, ahead: 0, left: 2 },
      ],
    };
    expect(carriedAt(point, 0)).toMatchObject({ ahead: 2, left: 0 });
    expect(carriedAt(point, 2)).toEqual({ ahead: 1, left: 1 });
    expect(carriedAt(point, 9)).toMatchObject({ ahead: 0, left: 2 });
  });
});

/** How near two bodies are at one moment. */
function nearestOfBodies(a: Rider, b: Rider, seconds: number): number {
  const [one, other] = [bodyEnds(poseOfRider(a, seconds), a.body), bodyEnds(poseOfRider(b, seconds), b.body)];
  return nearestPlaces(one, other).metres - a.body.halfWidth - b.body.halfWidth;
}

describe("least distances worked by hand", () => {
  test("[G65] two who pass left to left, 3 m between their lines", () => {
    const a = rider("a", line(-20, 0, 20, 0), 4);
    const b = rider("b", line(20, 3, -20, 3), 4);
    const nearest = leastDistance(body(a), body(b))!;
    expect(nearest.metres).toBeCloseTo(3 - 2 * USUAL_BODY.halfWidth, 9);
  });

  test("[G65] two points that cross each other's way half a second apart: v t sin 45", () => {
    const a = rider("a", line(-20, 0, 20, 0), 4, { body: thin });
    const b = rider("b", line(0, -20, 0, 20), 4, { body: thin, starts: 0.5 });
    const nearest = leastDistance(body(a), body(b), { within: 1e-4 })!;
    expect(nearest.metres).toBeCloseTo((4 * 0.5) / Math.SQRT2, 3);
    expect(nearest.seconds).toBeCloseTo(5.25, 1);
  });

  test("[G66] a near miss between two samples of a sixtieth is not lost", () => {
    // 25 m/s toward each other: between samples they close by 0.83 m.
    const a = rider("a", line(-30, 0, 30.3, 0), 25, { body: thin });
    const b = rider("b", line(30.3, 0.02, -30, 0.02), 25, { body: thin, starts: 1 / 240 });
    const sampled = Math.min(
      ...Array.from({ length: 160 }, (_, index) => distance(poseOfRider(a, index / 60), poseOfRider(b, index / 60))),
    );
    const nearest = leastDistance(body(a), body(b))!;
    expect(sampled).toBeGreaterThan(0.05);
    expect(nearest.metres).toBeLessThanOrEqual(0.02 + 0.01);
  });

  test("[G67] touching is 0, at the first moment they do", () => {
    const a = rider("a", line(-20, 0, 20, 0), 4);
    const b = still("b", poseAt(0, 0, 0));
    const nearest = leastDistance(body(a), body(b))!;
    expect(nearest.metres).toBe(0);
    // Front of a to back of b, both rounded by half a width: 20 - 1.3 - 1.14 - 0.8 m at 4 m/s.
    expect(nearest.seconds).toBeCloseTo((20 - 1.3 - 1.14 - 0.8) / 4, 2);
    expect(firstWithin(body(a), body(b), 1)!.seconds).toBeCloseTo((20 - 1.3 - 1.14 - 0.8 - 1) / 4, 2);
    expect(firstWithin(body(rider("c", line(-20, 9, 20, 9), 4)), body(b), 1)).toBeNull();
  });

  test("[G68] a shaft's point turned past a standing horse", () => {
    const point: CarriedPoint = {
      name: "the point",
      moments: [
        { seconds: 0, ahead: 0, left: 3 },
        { seconds: 2, ahead: 3, left: 0 },
      ],
    };
    const a = still("a", poseAt(0, 0, 0), { points: [point] });
    const b = still("b", poseAt(4, 4, 0), { body: { ahead: 0.5, behind: 0.5, halfWidth: 0 } });
    const nearest = allDistances([a, b], { within: 1e-4 }).find((pair) => pair.point === point)!.nearest!;
    // The point goes along x + y = 3; the horse's near end is (3.5, 4), so the foot is at (1.25, 1.75).
    expect(nearest.metres).toBeCloseTo(4.5 / Math.SQRT2, 3);
    expect(nearest.onA.x).toBeCloseTo(1.25, 1);
  });

  test("[G69] what is farther than one cares is only said to be so", () => {
    const a = rider("a", line(-20, 0, 20, 0), 4);
    const b = rider("b", line(20, 30, -20, 30), 4);
    expect(leastDistance(body(a), body(b), { within: 0.01, care: 5 })).toBeNull();
    expect(leastDistance(body(a), body(b), { within: 0.01, care: 50 })?.metres).toBeCloseTo(29.2, 1);
    expect(() => leastDistance(body(a), body(b), { within: 0 })).toThrow("within some metres above 0, not 0");
  });

  test("[G62] riders who come in and go out are near nobody while they are out", () => {
    const along = (counts: Rider["counts"], starts: number): Rider =>
      rider(`from ${starts}`, line(0, 0, 20, 0), 4, { counts, starts });
    expect(leastDistance(body(along("while riding", 0)), body(along("while riding", 9)))).toBeNull();
    expect(leastDistance(body(along("always", 0)), body(along("always", 9)))?.metres).toBe(0);
    // Together for the last 2 s of the one: 12 m apart, less a body and two half widths.
    expect(leastDistance(body(along("while riding", 0)), body(along("while riding", 3)))?.metres).toBeCloseTo(
      12 - 1.3 - 1.14 - 0.8,
      9,
    );
  });

  test("[G65] eight in file round a circle keep their gaps, and every pair is there once", () => {
    const circle = pathOf(
      [arcFrom(poseAt(10, 0, 9_000), 10, 36_000), arcFrom(poseAt(10, 0, 9_000), 10, 36_000)],
      TOLERANCE,
    );
    const point: CarriedPoint = { name: "point", moments: [{ seconds: 0, ahead: 2.5, left: -0.5 }] };
    const lap = (20 * Math.PI) / 3.61;
    const riders = Array.from({ length: 8 }, (_, index) =>
      rider(`r${index}`, circle, 3.61, { starts: -(index * lap) / 8, points: [point], counts: "while riding" }),
    );
    const pairs = allDistances(riders);
    expect(pairs).toHaveLength(28 + 56);
    const gap = nearestOfBodies(riders[0]!, riders[1]!, 0.3);
    expect(pairs[0]?.nearest?.metres).toBeCloseTo(gap, 6);
    expect(pairs[0]?.nearest?.metres).toBeGreaterThan(4);
  });
});

describe("against a dense brute force", () => {
  const span = (mover: Mover, seconds: number): Span => {
    const pose = poseOfRider(mover.rider, seconds);
    if (mover.point === null) return bodyEnds(pose, mover.rider.body);
    const { ahead, left } = carriedAt(mover.point, seconds - mover.rider.starts);
    const way = { x: Math.cos((pose.heading * Math.PI) / 18_000), y: Math.sin((pose.heading * Math.PI) / 18_000) };
    return [{ x: pose.x + ahead * way.x - left * way.y, y: pose.y + ahead * way.y + left * way.x }];
  };
  const thickness = (mover: Mover): number => (mover.point === null ? mover.rider.body.halfWidth : 0);
  const brute = (a: Mover, b: Mover, from: number, to: number, count: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let index = 0; index <= count; index += 1) {
      const seconds = from + ((to - from) * index) / count;
      least = Math.min(least, nearestPlaces(span(a, seconds), span(b, seconds)).metres);
    }
    return Math.max(0, least - thickness(a) - thickness(b));
  };
  const carried: CarriedPoint = {
    name: "point",
    moments: [
      { seconds: 0, ahead: 2.4, left: 0.3 },
      { seconds: 4, ahead: 1, left: -2 },
      { seconds: 9, ahead: -1.5, left: -1 },
    ],
  };
  const anyRider = (name: string): fc.Arbitrary<Rider> =>
    fc
      .tuple(anyPath, fc.integer({ min: 10, max: 80 }), fc.integer({ min: -50, max: 50 }))
      .map(([path, speed, starts]) => rider(name, path, speed / 10, { starts: starts / 10, points: [carried] }));

  test("[G65, G66, G68] never more than the densest samples, never less than allowed", () => {
    fc.assert(
      fc.property(anyRider("a"), anyRider("b"), fc.boolean(), (a, b, byPoint) => {
        const [first, second]: [Mover, Mover] = [{ rider: a, point: byPoint ? carried : null }, body(b)];
        const found = leastDistance(first, second, { within: 0.005 })!;
        const from = Math.min(a.starts, b.starts);
        const to = Math.max(a.starts + a.timed.duration, b.starts + b.timed.duration);
        const sampled = brute(first, second, from, to, 8_000);
        expect(found.metres).toBeLessThanOrEqual(sampled + 0.005 + 1e-9);
        // The moment is a true one.
        const there = nearestPlaces(span(first, found.seconds), span(second, found.seconds)).metres;
        const outside = Math.max(0, there - thickness(first) - thickness(second));
        expect(outside).toBeCloseTo(found.metres, 6);
      }),
      { numRuns: 60 },
    );
  });

  test("[G67] the first moment within a limit: none before it is, and it is", () => {
    fc.assert(
      fc.property(anyRider("a"), anyRider("b"), fc.integer({ min: 1, max: 8 }), (a, b, limit) => {
        const from = Math.min(a.starts, b.starts);
        const to = Math.max(a.starts + a.timed.duration, b.starts + b.timed.duration);
        const found = firstWithin(body(a), body(b), limit, { within: 0.005 });
        const before = brute(body(a), body(b), from, found === null ? to : Math.max(from, found.seconds - 2e-3), 3_000);
        if (found !== null) expect(found.metres).toBeLessThanOrEqual(limit);
        if (found === null || found.seconds - 2e-3 > from) expect(before).toBeGreaterThanOrEqual(limit - 0.005);
      }),
      { numRuns: 40 },
    );
  });

  test("[G64] stretches follow one another, hold the mover in their box, and it keeps their bounds", () => {
    fc.assert(
      fc.property(anyRider("a"), fc.boolean(), (a, byPoint) => {
        const mover: Mover = { rider: a, point: byPoint ? carried : null };
        const stretches = stretchesOf(mover);
        for (const [index, stretch] of stretches.entries()) {
          if (index > 0) expect(stretch.from).toBe(stretches[index - 1]!.to);
          const [from, to] = [
            Math.max(stretch.from, a.starts - 1),
            Math.min(stretch.to, a.starts + a.timed.duration + 1),
          ];
          const h = (to - from) / 40;
          for (let step = 0; step < 39 && h > 1e-4; step += 1) {
            const [one, two, three] = [0, 1, 2].map((more) => stretch.at(from + (step + more) * h)) as [
              Span,
              Span,
              Span,
            ];
            for (const [end, place] of one.entries()) {
              expect(distance(place, span(mover, from + step * h)[end]!)).toBeLessThan(1e-5);
              expect(place.x).toBeGreaterThan(stretch.box.left - 1e-6);
              expect(place.x).toBeLessThan(stretch.box.right + 1e-6);
              expect(place.y).toBeGreaterThan(stretch.box.foot - 1e-6);
              expect(place.y).toBeLessThan(stretch.box.head + 1e-6);
              const [b, c] = [two[end]!, three[end]!];
              expect(distance(place, b)).toBeLessThan(stretch.speed * h + 1e-6);
              const middle = { x: (place.x + c.x) / 2, y: (place.y + c.y) / 2 };
              expect(distance(middle, b)).toBeLessThan((stretch.bend * (2 * h) ** 2) / 8 + 1e-6);
            }
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test("[G5] the mirrored riders come as near", () => {
    fc.assert(
      fc.property(anyRider("a"), anyRider("b"), (a, b) => {
        const mirrored = (of: Rider): Rider => ({ ...of, timed: { ...of.timed, path: mirrorPath(of.timed.path) } });
        expect(leastDistance(body(mirrored(a)), body(mirrored(b)))!.metres).toBeCloseTo(
          leastDistance(body(a), body(b))!.metres,
          9,
        );
      }),
      { numRuns: 60 },
    );
  });
});
