/** The supplied line between two poses. Rules G27-G29. The oracle is a second, wholly separate computation: the closed
 *  formulas for the lengths alone (A. M. Shkel and V. Lumelsky, "Classification of the Dubins set", Robotics and
 *  Autonomous Systems 34, 2001), in which no circle, tangent or place appears. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  allJoins,
  beside,
  distance,
  type JoinWord,
  mirrorPose,
  type Pose,
  pathOf,
  poseAt,
  poseOn,
  radiansOf,
  shortestJoin,
  TOLERANCE,
  turnBetween,
  waysToPlace,
} from "../../shared/ground/index.ts";
import { anyPose } from "./any-ground.ts";

const FULL = 2 * Math.PI;
/** Into [0, 2 pi), a hair under a full turn counting as none, as rounding makes it. */
/** Into one turn; what is a full one but for rounding is none, or a bend of nothing would go all the way round. */
const mod = (angle: number): number => {
  const rest = angle - FULL * Math.floor(angle / FULL);
  return FULL - rest < 1e-6 ? 0 : rest;
};

/** Lengths by formula, for a radius; no entry where the formula has no root. */
function formulas(from: Pose, to: Pose, radius: number): Partial<Record<JoinWord, number>> {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const theta = Math.atan2(dy, dx);
  const d = Math.hypot(dx, dy) / radius;
  const a = mod(radiansOf(from.heading) - theta);
  const b = mod(radiansOf(to.heading) - theta);
  const [sa, sb, ca, cb, cab] = [Math.sin(a), Math.sin(b), Math.cos(a), Math.cos(b), Math.cos(a - b)];
  const found: Partial<Record<JoinWord, number>> = {};
  const put = (word: JoinWord, ...parts: number[]): void => {
    found[word] = parts.reduce((sum, part) => sum + part, 0) * radius;
  };
  const lsl = 2 + d * d - 2 * cab + 2 * d * (sa - sb);
  if (lsl >= 0) {
    const t = Math.atan2(cb - ca, d + sa - sb);
    put("LSL", mod(t - a), Math.sqrt(lsl), mod(b - t));
  }
  const rsr = 2 + d * d - 2 * cab + 2 * d * (sb - sa);
  if (rsr >= 0) {
    const t = Math.atan2(ca - cb, d - sa + sb);
    put("RSR", mod(a - t), Math.sqrt(rsr), mod(t - b));
  }
  const lsr = -2 + d * d + 2 * cab + 2 * d * (sa + sb);
  if (lsr >= 0) {
    const p = Math.sqrt(lsr);
    const t = Math.atan2(-ca - cb, d + sa + sb) - Math.atan2(-2, p);
    put("LSR", mod(t - a), p, mod(t - b));
  }
  const rsl = -2 + d * d + 2 * cab - 2 * d * (sa + sb);
  if (rsl >= 0) {
    const p = Math.sqrt(rsl);
    const t = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, p);
    put("RSL", mod(a - t), p, mod(b - t));
  }
  const rlr = (6 - d * d + 2 * cab + 2 * d * (sa - sb)) / 8;
  if (Math.abs(rlr) <= 1) {
    const p = mod(FULL - Math.acos(rlr));
    const t = mod(a - Math.atan2(ca - cb, d - sa + sb) + p / 2);
    put("RLR", t, p, mod(a - b - t + p));
  }
  const lrl = (6 - d * d + 2 * cab + 2 * d * (sb - sa)) / 8;
  if (Math.abs(lrl) <= 1) {
    const p = mod(FULL - Math.acos(lrl));
    const t = mod(-a - Math.atan2(ca - cb, d + sa - sb) + p / 2);
    put("LRL", t, p, mod(b - a - t + p));
  }
  return found;
}

const anyRadius = fc.integer({ min: 500, max: 12_000 }).map((mm) => mm / 1_000);

describe("the six ways", () => {
  it.each([
    ["straight ahead", poseAt(0, 0, 0), poseAt(12, 0, 0), 12],
    ["half a circle", poseAt(0, 0, 0), poseAt(0, 6, 18_000), 3 * Math.PI],
    ["a quarter right", poseAt(0, 0, 9_000), poseAt(3, 3, 0), 1.5 * Math.PI],
    ["the same pose", poseAt(1, 2, 300), poseAt(1, 2, 300), 0],
  ])("[G27] %s", (_, from, to, metres) => {
    expect(shortestJoin(from, to, 3)?.length).toBeCloseTo(metres, 9);
  });

  test("[G27] about on the spot takes three bends: 7/3 of half a circle", () => {
    const turn = shortestJoin(poseAt(0, 0, 0), poseAt(0, 0, 18_000), 3);
    expect(turn?.pieces.every((piece) => piece.is === "arc")).toBe(true);
    expect(turn?.length).toBeCloseTo((7 / 3) * Math.PI * 3, 6);
  });

  test("[G28] every way begins and ends exactly, without a break, bending by the radius alone", () => {
    fc.assert(
      fc.property(anyPose, anyPose, anyRadius, (from, to, radius) => {
        for (const way of allJoins(from, to, radius)) {
          if (way.pieces.length === 0) continue;
          const path = pathOf(way.pieces, { distance: 1e-5, heading: 0.02 });
          expect(distance(path.start, from)).toBeLessThan(1e-5);
          expect(distance(path.end, to)).toBeLessThan(1e-5);
          expect(Math.abs(turnBetween(path.start.heading, from.heading))).toBeLessThan(0.02);
          expect(Math.abs(turnBetween(path.end.heading, to.heading))).toBeLessThan(0.02);
          for (const piece of way.pieces) if (piece.is === "arc") expect(piece.radius).toBe(radius);
        }
      }),
    );
  });

  test("[G27] the shortest is the shortest of the closed formulas, never less than the straight distance", () => {
    fc.assert(
      fc.property(anyPose, anyPose, anyRadius, (from, to, radius) => {
        const shortest = shortestJoin(from, to, radius)!;
        const oracle = Math.min(...Object.values(formulas(from, to, radius)));
        expect(Math.abs(shortest.length - oracle)).toBeLessThan(1e-4);
        expect(shortest.length).toBeGreaterThanOrEqual(distance(from, to) - 1e-9);
      }),
      { numRuns: 2_000 },
    );
  });

  test("[G27] near poses, where three bends matter, agree with the formulas too", () => {
    const near = fc
      .tuple(fc.integer({ min: -9_000, max: 9_000 }), fc.integer({ min: -9_000, max: 9_000 }), fc.nat(35_999))
      .map(([x, y, heading]) => poseAt(x / 1_000, y / 1_000, heading));
    let bends = 0;
    fc.assert(
      fc.property(near, near, (from, to) => {
        const shortest = shortestJoin(from, to, 5)!;
        if (shortest.word === "LRL" || shortest.word === "RLR") bends += 1;
        const longer = shortest.length - Math.min(...Object.values(formulas(from, to, 5)));
        expect(longer).toBeLessThan(1e-4);
        // Two bends that miss the pose by less than poses may differ: the formulas go once round for it.
        if (longer <= -1e-4) expect(shortest.pieces.length).toBe(2);
      }),
      { numRuns: 2_000 },
    );
    expect(bends).toBeGreaterThan(10);
  });

  test("[G5] the mirror has the mirrored ways, equally long", () => {
    fc.assert(
      fc.property(anyPose, anyPose, anyRadius, (from, to, radius) => {
        const way = shortestJoin(from, to, radius)!;
        expect(shortestJoin(mirrorPose(from), mirrorPose(to), radius)!.length).toBeCloseTo(way.length, 9);
      }),
    );
  });

  test("[G29] the shortest that is accepted; null when none is; no radius, no way", () => {
    const [from, to] = [poseAt(0, 0, 0), poseAt(10, 2, 0)];
    expect(shortestJoin(from, to, 3, (way) => way.word === "RSR")?.word).toBe("RSR");
    expect(shortestJoin(from, to, 3, () => false)).toBeNull();
    expect(() => shortestJoin(from, to, 0)).toThrow("A least radius is above 0 m, not 0.");
  });
});

describe("ways to a place", () => {
  test("[G28] each ends at the place, the shorter first, never shorter than straight there", () => {
    fc.assert(
      fc.property(anyPose, anyPose, anyRadius, (from, to, radius) => {
        fc.pre(distance(from, to) > 0.001);
        const ways = waysToPlace(from, to, radius, 1);
        expect(ways.length).toBeGreaterThan(0);
        const lengths = ways.map((pieces) => pieces.reduce((sum, piece) => sum + piece.length, 0));
        expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
        for (const pieces of ways) {
          const path = pathOf(pieces, TOLERANCE);
          expect(distance(path.end, to)).toBeLessThan(1e-6);
          expect(distance(path.start, from)).toBeLessThan(1e-6);
        }
        expect(lengths[0]).toBeGreaterThanOrEqual(distance(from, to) - 1e-9);
      }),
    );
  });

  test("[G28] straight on when it lies ahead; round the other side when it lies inside the turn; none to itself", () => {
    const from = poseAt(0, 0, 0);
    expect(waysToPlace(from, beside(from, 7), 3, 5).map((pieces) => pieces.length)).toEqual([1]);
    const inside = waysToPlace(from, { x: 0.5, y: 2 }, 3, 5);
    expect(inside).toHaveLength(1);
    expect(poseOn(inside[0]![0]!, 0.5).y).toBeLessThan(0);
    expect(waysToPlace(from, { x: 0, y: 0 }, 3, 5)).toEqual([]);
  });
});
