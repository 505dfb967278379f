/** tests/ride-rules/pull-up.test.ts - a fast gait from a halt or to one, in a few metres. */
import { describe, expect, test } from "vitest";
import { findingsOf } from "../../shared/ride/rules/index.ts";
import { roomFor } from "../../shared/ride/rules/pull-up.ts";
import { type Made, type MadePiece, madeRide, on } from "./made-ride.ts";

const stand: MadePiece = { go: "stand", seconds: 2, gait: "halt", speed: 0 };
const gallop = (metres: number, more: Partial<MadePiece> = {}): MadePiece =>
  ({ ...on(metres), gait: "gallop", speed: 12.5, ...more }) as MadePiece;
const walk = on(10, { gait: "walk", speed: 1.73 });

function told(steps: Made["steps"], more: Partial<Made> = {}): string[] {
  const { ridden, context } = madeRide({ steps, ...more });
  return findingsOf(ridden, context).flatMap(({ rule, verdict, severity, sentence }) =>
    rule === "room-to-pull-up" ? [`${verdict}, ${severity}: ${sentence}`] : [],
  );
}

test("[V36] the room is that of an even change of 4 m/s each second: the full gallop of 12.5 m/s takes 20 m", () => {
  // By hand: 12.5 / 4 s at half of 12.5 m/s.
  expect(roomFor(12.5)).toBeCloseTo((12.5 / 4) * 6.25, 9);
  expect(roomFor(0)).toBe(0);
});

describe("[V36] a gallop of 12.5 m/s", () => {
  test.each<[string, MadePiece[], boolean]>([
    ["20 m, to a halt", [gallop(20), stand], false],
    ["15 m, to a halt", [gallop(15), stand], true],
    ["15 m, from a halt", [stand, gallop(15)], true],
    ["20 m, from a halt", [stand, gallop(20)], false],
    ["20 m, from a halt and to one", [stand, gallop(20), stand], true],
    ["two lines of 20 m, from a halt and to one", [stand, gallop(20), gallop(20), stand], false],
    ["15 m, from a walk to a walk", [walk, gallop(15), walk], false],
    ["15 m, and a walk before the halt", [gallop(15), walk, stand], false],
    ["15 m that are ours", [gallop(15, { joins: true }), stand], false],
    ["15 m at a gait that is ours", [gallop(15, { gaitSupplied: true }), stand], false],
    ["15 m without a halt", [gallop(15)], false],
  ])("%s", (_, goes, isTold) => {
    expect(told([{ goes }]).length).toBe(isTold ? 1 : 0);
  });

  test("from a halt that ends the step before it", () => {
    expect(told([{ goes: [stand] }, { goes: [gallop(15)] }])).toHaveLength(1);
    expect(told([{ goes: [gallop(5)] }, { goes: [gallop(5)] }, { goes: [gallop(5)] }])).toEqual([]);
  });

  test("is a question, once a step, whatever severity is set", () => {
    const steps = [{ goes: [stand, gallop(5), stand, gallop(5), stand] }];
    const set = { rules: [{ code: "room-to-pull-up", severity: "bars" as const }] };
    const [found, another] = told(steps, set);
    expect(another).toBeUndefined();
    expect(found).toMatch(/^cannot tell, notes: Step 1/);
    expect(found).toContain(
      "the horse comes from the halt to the gallop, 12.5 m/s, and to the halt again, within 5 m, for which about 40 m would be wanted",
    );
  });

  test("on foot nobody gallops", () => {
    expect(told([{ goes: [gallop(5), stand] }], { way: "on foot" })).toEqual([]);
  });
});

test("[V36] a canter and a trot stop within their own length, a walk at once", () => {
  for (const [gait, speed, metres] of [
    ["canter", 3.91, 2],
    ["trot", 3.61, 1.7],
    ["walk", 1.73, 0.4],
  ] as const)
    expect(told([{ goes: [on(metres, { gait, speed }), stand] }]), gait).toEqual([]);
});
