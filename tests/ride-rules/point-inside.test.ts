/** tests/ride-rules/point-inside.test.ts - the point of a weapon beside the wall and before it. */
import { describe, expect, test } from "vitest";
import { poseAt } from "../../shared/ground/plane.ts";
import { known, oneOf, UNKNOWN } from "../../shared/hands/known.ts";
import type { ControlState } from "../../shared/hands/state.ts";
import { findingsOf, verdictsOf } from "../../shared/ride/rules/index.ts";
import { act, type Made, madeRide, on, riderWith } from "./made-ride.ts";

type Spear = Partial<ControlState["objects"][number]>;
const clock = (hour: number) => ({ is: "clock", hour }) as const;
const pointAt = (hour: number, level: "low" | "middle" | "high" | "ground" = "low"): Spear => ({
  bearing: known(clock(hour)),
  level: known(level),
});

const heldAnywhere: Spear = { ...pointAt(3), grip: { left: known(null), right: oneOf(["butt", "rear", "balance"]) } };

/** Up the right long side, so far from the wall: of the spear of 2 m, held at its balance, 1.1 m lie before the hand. */
function along(metres: number, spear: Spear, more: Partial<Made> = {}): Made {
  const begins = poseAt(30 - metres, 0, 9_000);
  return { steps: [{ goes: [on(20)] }], start: riderWith({}, spear), begins, trackOffset: 1.8, ...more };
}

function told(made: Made): { verdict: string | undefined; sentences: string[] } {
  const { ridden, context } = madeRide(made);
  const [verdict] = verdictsOf(ridden, context).flatMap((one) => (one.rule === "point-inside" ? [one.verdict] : []));
  const sentences = findingsOf(ridden, context).flatMap((one) => (one.rule === "point-inside" ? [one.sentence] : []));
  return { verdict, sentences };
}

describe("[V35] along the wall on the right", () => {
  test.each<[string, number, Spear, string]>([
    ["point to the right, 0.9 m from the wall", 0.9, pointAt(3), "broken"],
    ["the same in the middle", 0.9, pointAt(3, "middle"), "broken"],
    ["forward on the right, where it reaches 0.95 m aside", 0.8, pointAt(2), "broken"],
    ["behind on the right", 0.8, pointAt(4), "broken"],
    ["on the track", 1.8, pointAt(3), "kept"],
    ["less past it than is worth a word", 1.05, pointAt(3), "kept"],
    ["ahead", 0.9, pointAt(12), "kept"],
    ["inward", 0.9, pointAt(9), "kept"],
    ["raised", 0.9, pointAt(3, "high"), "kept"],
    ["on the ground", 0.9, pointAt(3, "ground"), "kept"],
    ["planted", 0.9, { ...pointAt(3), frame: known("planted") }, "kept"],
    ["in no hand", 0.9, { ...pointAt(3), grip: { left: known(null), right: known(null) } }, "kept"],
    ["perhaps raised", 0.9, { ...pointAt(3), level: oneOf(["low", "high"]) }, "cannot tell"],
    ["low or in the middle", 0.9, { ...pointAt(3), level: oneOf(["low", "middle"]) }, "broken"],
    ["height not known", 0.9, { ...pointAt(3), level: UNKNOWN }, "cannot tell"],
    ["where it looks not known", 0.9, { ...pointAt(3), bearing: UNKNOWN }, "cannot tell"],
    ["where it is held not known, and held at the butt it reaches", 1.5, heldAnywhere, "cannot tell"],
    ["wherever it is held it does not reach", 2, heldAnywhere, "kept"],
    ["nothing is known of it, but the wall is far", 10, { bearing: UNKNOWN, level: UNKNOWN }, "kept"],
  ])("%s", (_, metres, spear, verdict) => {
    expect(told(along(metres, spear)).verdict).toBe(verdict);
  });

  test("is told once a step, where it first comes past, as a note", () => {
    const made = along(0.9, pointAt(3), { steps: [{ goes: [on(5), on(5), on(5)] }, { goes: [on(5)] }] });
    const { ridden, context } = madeRide(made);
    const found = findingsOf(ridden, context).filter(({ rule }) => rule === "point-inside");
    expect(found.map(({ stage, severity, from }) => [stage, severity, from])).toEqual([
      [0, "notes", 0],
      [1, "notes", ridden.stages[1]?.from],
    ]);
    expect(found[0]?.sentence).toContain("the point of the spear is not high and comes 0.2 m past the wall");
  });

  test("brought there by the step itself it is a question; raised by it, none", () => {
    const brings = [{ acts: [act("carry", { bearing: clock(3) })], goes: [on(20)] }];
    const asked = told(along(0.9, pointAt(9), { steps: brings }));
    expect(asked.verdict).toBe("cannot tell");
    expect(asked.sentences.join()).toContain("the words do not say whether beside the wall or away from it");
    const raises = [{ acts: [act("raise", {})], goes: [on(20)] }];
    expect(told(along(0.9, pointAt(3), { steps: raises })).sentences).toEqual([]);
  });

  test("an unknown length may be that of a long lance, and is never more than a question", () => {
    const state = riderWith({}, pointAt(3));
    const start = {
      ...state,
      objects: state.objects.map((one) => ({ ...one, object: { ...one.object, lengthMetres: null } })),
    };
    expect(told(along(3.5, {}, { start })).verdict).toBe("cannot tell");
    expect(told(along(4.5, {}, { start })).verdict).toBe("kept");
  });

  test("out of a gate it may look, and where the track runs along the wall it is not asked", () => {
    const gate = {
      id: "gate",
      name: "the gate",
      outline: { is: "point" as const, at: { x: 30, y: 1 } },
      partner: null,
    };
    const steps = [{ goes: [on(2)] }];
    expect(told(along(0.9, pointAt(3), { steps, stations: [gate] })).verdict).toBe("kept");
    expect(told(along(0.9, pointAt(3), { trackOffset: 0 })).verdict).toBeUndefined();
  });
});

describe("[V35] straight toward the wall", () => {
  test.each<[number, Spear, string]>([
    [58, pointAt(12), "kept"],
    [59.3, pointAt(12), "broken"],
    [59.3, pointAt(1), "broken"],
    [59.3, pointAt(3), "kept"],
    [59.3, pointAt(6), "kept"],
  ])("ending %d m on", (metres, spear, verdict) => {
    const made = { steps: [{ goes: [on(metres)] }], start: riderWith({}, spear), trackOffset: 1.8 };
    expect(told(made).verdict).toBe(verdict);
  });

  test("it is told of the moment it comes there, not of the whole line", () => {
    const { ridden, context } = madeRide({
      steps: [{ goes: [on(59.5)] }],
      start: riderWith({}, pointAt(12)),
      trackOffset: 1.8,
    });
    const [finding] = findingsOf(ridden, context).filter(({ rule }) => rule === "point-inside");
    expect((finding?.from ?? 0) / ridden.timed.duration).toBeGreaterThan(0.98);
  });
});
