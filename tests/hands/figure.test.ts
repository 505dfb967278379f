/** tests/hands/figure.test.ts - the control state as a drawing's data and as a sentence. */
import { describe, expect, test } from "vitest";
import { applyActs } from "../../shared/hands/apply.ts";
import { handsFigure } from "../../shared/hands/figure.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { startState } from "../../shared/hands/state.ts";
import { actOf, CONTEXT, rider, SPEAR } from "./riders.ts";

const figureAfter = (...acts: KnownAct[]) => handsFigure(applyActs(rider(), acts, CONTEXT), "After step 3");

describe("the figure", () => {
  const table: [expected: string, acts: KnownAct[]][] = [
    ["After step 3: reins in the left hand, spear in the right, point forward.", []],
    [
      "After step 3: reins in the right hand, spear in the left, point forward left.",
      [
        actOf("change reins"),
        actOf("pass", { object: "spear", zone: "balance" }),
        actOf("carry", { object: "spear", bearing: { is: "clock", hour: 10 } }),
      ],
    ],
    [
      "After step 3: reins on the neck, spear in both hands, point forward left.",
      [actOf("lay reins", { on: "neck" }), actOf("hold", { object: "spear", hold: "two-handed", hand: "right" })],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, where the point looks is not known.",
      [actOf("spin", { object: "spear" })],
    ],
    [
      "After step 3: reins in the left hand, spear in no hand, point toward the wall.",
      [actOf("carry", { bearing: { is: "toward", what: "the wall" } }), actOf("release", { object: "spear" })],
    ],
  ];
  test.each(table)("%s", (expected, acts) => {
    expect(figureAfter(...acts).sentence).toBe(expected);
  });

  test("draws the shaft through the hand, in metres, x to the right and y ahead", () => {
    const { shaft, right, left, pointHour } = figureAfter(actOf("carry", { bearing: { is: "clock", hour: 3 } }));
    expect(pointHour).toBe(3);
    expect([left.reins, right.reins, left.grips, right.grips]).toEqual(["yes", "no", "no", "yes"]);
    // Two metres long, held at 0.45 of its length, pointing right: 0.9 m to the butt, 1.1 m to the point.
    expect(shaft).toMatchObject({ butt: { x: -0.52, y: 0.15 }, point: { x: 1.48, y: 0.15 }, planted: "no" });
    expect(right.at).toEqual({ x: 0.38, y: 0.15 });
  });

  test("says what is not known, and draws no shaft it would have to guess", () => {
    const figure = handsFigure(startState([SPEAR], "mounted"));
    expect(figure.shaft).toBeNull();
    expect(figure.unknown).toEqual({ reins: true, shaft: true, point: true, level: true, gait: true });
    expect([figure.left.unknown, figure.right.unknown]).toEqual([true, true]);
    expect(figure.sentence).toBe(
      "Now: where the reins are is not known, which hand has the spear is not known, where the point looks is not known.",
    );
    expect(handsFigure(startState([], "on foot")).sentence).toBe("Now: on foot.");
  });
});
