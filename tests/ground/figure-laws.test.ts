/** Laws of every figure: rigid motion, mirror, scaling, cutting, time reversal, no break anywhere. Rules G5, G10-G14, G35. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cutPath,
  distance,
  type FigureAsk,
  lengthOf,
  type Manege,
  mirrorAsk,
  mirrorGround,
  mirrorPath,
  mirrorPose,
  motionBetween,
  movePath,
  type Path,
  type Pose,
  poseAt,
  poseAtFraction,
  poseOn,
  rectangularGround,
  reversePath,
  rideFigure,
  rideTheOtherWay,
  roundEndedGround,
  roundGround,
  samePose,
  schoolGround20x60,
  settled,
  TOLERANCE,
  timeAtOneSpeed,
  turnBetween,
  USUAL,
} from "../../shared/ground/index.ts";
import { anyPose, anySide, openField, station } from "./any-ground.ts";

const field: Manege = { ground: openField(), usual: USUAL };
const size = fc.integer({ min: 1_000, max: 30_000 }).map((mm) => mm / 1_000);
const times = fc.integer({ min: 1, max: 4 });
const amount = fc.constantFrom("quarter" as const, "half" as const, "three quarters" as const, "full" as const);
const manner = fc.constantFrom("on the haunches" as const, "on the forehand" as const, "halt and turn" as const);

/** Every size said, so that nothing comes from the ground or from the usual values. */
const fullySaid: fc.Arbitrary<FigureAsk> = fc
  .record({ side: anySide, a: size, b: size, times, amount, manner, round: fc.boolean() })
  .chain(({ side, a, b, times: laps, amount: how, manner: by, round }) => {
    const [inner, outer] = [Math.min(a, b), Math.max(a, b) + 1];
    return fc.constantFrom<FigureAsk>(
      { figure: "straight", length: a },
      { figure: "charge", length: a },
      { figure: "circle", side, diameter: a, laps: laps / 2 },
      { figure: "part circle", side, diameter: a, amount: how },
      { figure: "volte", side, diameter: a },
      { figure: "half volte", side, diameter: a, back: 2 * a },
      { figure: "half volte reversed", side, diameter: a, back: 1.5 * a },
      { figure: "figure of eight", side, diameter: a, laps, straight: round ? 0 : b },
      { figure: "oblong", side, diameter: a, straight: b, laps },
      { figure: "serpentine", side, diameter: inner, width: outer, loops: laps },
      { figure: "spiral in", side, inner, outer, laps },
      { figure: "spiral out", side, inner, outer, laps: laps / 2 + 0.5 },
      { figure: "turn", side, amount: how, manner: by },
      { figure: "turn", side, amount: how, manner: "small half circle", diameter: a },
      { figure: "rein back", length: a },
      { figure: "halt", seconds: a },
    );
  });

function ridden(manege: Manege, start: Pose, ask: FigureAsk): Path {
  const result = rideFigure(manege, start, ask);
  if (!result.ok) throw new Error(`${JSON.stringify(ask)}: ${result.sentence}`);
  return result.path;
}
function unbroken(path: Path): void {
  for (let index = 1; index < path.pieces.length; index += 1) {
    const [end, start] = [poseOn(path.pieces[index - 1]!, 1), poseOn(path.pieces[index]!, 0)];
    expect(distance(end, start)).toBeLessThan(1e-5);
    expect(Math.abs(turnBetween(end.heading, start.heading))).toBeLessThan(0.02);
  }
}
const SIZES = ["length", "diameter", "straight", "back", "outer", "inner", "width"] as const;
function scaled(ask: FigureAsk, by: number): FigureAsk {
  const sizes = SIZES.filter((name) => name in ask).map((name) => [
    name,
    (ask as unknown as Record<string, number>)[name]! * by,
  ]);
  return { ...ask, ...Object.fromEntries(sizes) };
}

describe("on open ground, with everything said", () => {
  test("[G35] begins at its start, without a break; nothing is supplied", () => {
    fc.assert(
      fc.property(anyPose, fullySaid, (start, ask) => {
        const path = ridden(field, start, ask);
        expect(samePose(path.start, start, { distance: 1e-6, heading: 0.001 })).toBe(true);
        unbroken(path);
      }),
      { numRuns: 400 },
    );
  });

  test("rigid motion: begun elsewhere it is the same figure moved", () => {
    fc.assert(
      fc.property(anyPose, anyPose, fullySaid, (start, elsewhere, ask) => {
        const path = ridden(field, start, ask);
        const there = ridden(field, elsewhere, ask);
        const moved = movePath(path, motionBetween(start, elsewhere));
        expect(lengthOf(there)).toBeCloseTo(lengthOf(path), 6);
        expect(distance(moved.end, there.end)).toBeLessThan(1e-5);
        const [a, b] = [poseAtFraction(moved, 1, 3), poseAtFraction(there, 1, 3)];
        expect(distance(a, b)).toBeLessThan(1e-5);
      }),
      { numRuns: 400 },
    );
  });

  test("scaling: every size times k is every length times k", () => {
    fc.assert(
      fc.property(anyPose, fullySaid, fc.integer({ min: 2, max: 6 }), (start, ask, k) => {
        const path = ridden(field, start, ask);
        const larger = ridden(field, start, scaled(ask, k));
        expect(lengthOf(larger)).toBeCloseTo(k * lengthOf(path), 5);
        expect(distance(larger.start, larger.end)).toBeCloseTo(k * distance(path.start, path.end), 4);
      }),
      { numRuns: 400 },
    );
  });

  test("time reversal and riding the other way keep length and time; cutting keeps both", () => {
    fc.assert(
      fc.property(anyPose, fullySaid, fc.integer({ min: 1, max: 99 }), (start, ask, part) => {
        const path = ridden(field, start, ask);
        const lasts = timeAtOneSpeed(path, 3.5).duration;
        for (const other of [reversePath(path), rideTheOtherWay(path)]) {
          expect(lengthOf(other)).toBeCloseTo(lengthOf(path), 9);
          expect(timeAtOneSpeed(other, 3.5).duration).toBeCloseTo(lasts, 9);
        }
        if (lengthOf(path) === 0) return;
        const [first, rest] = cutPath(path, (lengthOf(path) * part) / 100);
        expect(lengthOf(first) + lengthOf(rest)).toBeCloseTo(lengthOf(path), 7);
        expect(timeAtOneSpeed(first, 3.5).duration + timeAtOneSpeed(rest, 3.5).duration).toBeCloseTo(lasts, 7);
      }),
      { numRuns: 400 },
    );
  });
});

describe("on grounds with walls and stations, some of it supplied", () => {
  const stations = [station("gate", 6, 4), station("block", -5, -9), station("corner", 9, 17)];
  const made = [
    rectangularGround({ width: 22, length: 44, trackOffset: 1, stations }),
    roundEndedGround({ width: 24, length: 50, trackOffset: 1.5, stations }),
    roundGround({ diameter: 44, trackOffset: 0.5, stations }),
  ];
  const grounds = [schoolGround20x60(1.8), ...made.map((one) => (one.ok ? one.ground : schoolGround20x60(0)))];
  const inside = fc
    .tuple(fc.integer({ min: -8_000, max: 8_000 }), fc.integer({ min: -18_000, max: 18_000 }), fc.nat(35_999))
    // Off the middle line, where neither rein is nearer and the left is taken.
    .filter(([x, y]) => Math.abs(x) > 100 && Math.hypot(x, y) < 19_000)
    .map(([x, y, heading]) => poseAt(x / 1_000, y / 1_000, heading));
  const asks = fc
    .tuple(anySide, fc.constantFrom("gate", "block", "corner", "X", "M"), fc.integer({ min: 2, max: 30 }))
    .chain(([side, toward, metres]) =>
      fc.constantFrom<FigureAsk>(
        { figure: "straight", toward },
        { figure: "straight" },
        { figure: "charge", toward },
        { figure: "along the wall", side },
        { figure: "along the wall", side, length: metres },
        { figure: "change across" },
        { figure: "circle", side, about: toward, diameter: metres / 2 },
        { figure: "circle", side },
        { figure: "volte", side },
        { figure: "half volte", side },
        { figure: "half volte reversed", side },
        { figure: "oblong", side },
        { figure: "serpentine", side, loops: 3 },
        { figure: "spiral in", side },
        { figure: "turn", side, amount: "half" },
        { figure: "rein back" },
      ),
    );

  test("[G5] the mirrored ask on the mirrored ground: the mirrored path, refusal and notes", () => {
    let fits = 0;
    fc.assert(
      fc.property(fc.constantFrom(...grounds), inside, asks, (ground, start, ask) => {
        const manege: Manege = { ground, usual: USUAL };
        const mirrored: Manege = { ground: mirrorGround(ground), usual: USUAL };
        const one = rideFigure(manege, start, ask);
        const other = rideFigure(mirrored, mirrorPose(start), mirrorAsk(ask));
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) {
          expect("code" in other && other.code).toBe("code" in one && one.code);
          return;
        }
        fits += 1;
        expect(lengthOf(other.path)).toBeCloseTo(lengthOf(one.path), 5);
        expect(other.notes.map((note) => note.about)).toEqual(one.notes.map((note) => note.about));
        const back = mirrorPath(other.path);
        expect(samePose(settled(back.end), settled(one.path.end), TOLERANCE)).toBe(true);
      }),
      { numRuns: 500 },
    );
    expect(fits).toBeGreaterThan(100);
  });

  test("[G10, G36] what is ridden is unbroken, begins at its start and stays on the ground", () => {
    fc.assert(
      fc.property(fc.constantFrom(...grounds), inside, asks, (ground, start, ask) => {
        const result = rideFigure({ ground, usual: USUAL }, start, ask);
        if (!result.ok) {
          expect(["does-not-fit", "contradiction", "unknown-station", "cannot-reach", "nothing-to-ride"]).toContain(
            result.code,
          );
          return;
        }
        unbroken(result.path);
        expect(samePose(result.path.start, start, TOLERANCE)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("[G10] figure after figure from settled places joins without a gap", () => {
    fc.assert(
      fc.property(inside, fc.array(asks, { minLength: 2, maxLength: 5 }), (start, row) => {
        const manege: Manege = { ground: grounds[0]!, usual: USUAL };
        let here = start;
        for (const ask of row) {
          const result = rideFigure(manege, here, ask);
          if (!result.ok) continue;
          expect(samePose(result.path.start, here, TOLERANCE)).toBe(true);
          here = settled(result.path.end);
          expect(samePose(here, result.path.end, TOLERANCE)).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });
});
