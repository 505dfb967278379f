/** tests/hands/figure.test.ts - the control state as a drawing's data and as a sentence. */
import { describe, expect, test } from "vitest";
import { applyActs } from "../../shared/hands/apply.ts";
import { handsFigure } from "../../shared/hands/figure.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { startState } from "../../shared/hands/state.ts";
import { actOf, CONTEXT, rider, SABRE, SCABBARD, SPEAR } from "./riders.ts";

const figureAfter = (...acts: KnownAct[]) => handsFigure(applyActs(rider(), acts, CONTEXT), "After step 3");

describe("the figure", () => {
  const table: [expected: string, acts: KnownAct[]][] = [
    ["After step 3: reins in the left hand, spear in the right, point forward and low.", []],
    [
      "After step 3: reins in the right hand, spear in the left, point forward left and low.",
      [
        actOf("change reins"),
        actOf("pass", { object: "spear", zone: "balance" }),
        actOf("carry", { object: "spear", bearing: { is: "clock", hour: 10 } }),
      ],
    ],
    [
      "After step 3: reins on the neck, spear in both hands, point forward left at middle height.",
      [actOf("lay reins", { on: "neck" }), actOf("hold", { object: "spear", hold: "two-handed", hand: "right" })],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, point low, where it looks is not known.",
      [actOf("spin", { object: "spear" })],
    ],
    [
      "After step 3: reins in the left hand, spear in no hand.",
      [actOf("carry", { bearing: { is: "toward", what: "the wall" } }), actOf("release", { object: "spear" })],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, point toward the wall and high.",
      [actOf("carry", { bearing: { is: "toward", what: "the wall" }, level: "high" })],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, point forward, on the ground.",
      [actOf("lower", { level: "ground" })],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, point forward, at middle height or high.",
      [actOf("raise", {})],
    ],
    [
      "After step 3: reins in the left hand, spear in the right, point to the left and low.",
      [
        actOf("thrust", { to: { to: "left", viewpoint: "rider" } }),
        actOf("parry", { to: { to: "left", viewpoint: "rider" } }),
      ],
    ],
    [
      "After step 3: reins on the neck, spear in the right hand, point forward and low.",
      [actOf("lay reins", { on: "neck" })],
    ],
    [
      "After step 3: reins in the left hand, spear planted.",
      [actOf("plant", {}), actOf("release", { object: "spear", hand: "right" })],
    ],
  ];
  test.each(table)("%s", (expected, acts) => {
    expect(figureAfter(...acts).sentence).toBe(expected);
  });

  const two: [expected: string, acts: KnownAct[]][] = [
    [
      "After step 3: reins in the left hand; spear planted; sabre in the right, where the point looks and how high is not known.",
      [
        actOf("plant", { object: "spear" }),
        actOf("release", { object: "spear", hand: "right" }),
        actOf("release", { object: "sabre", hand: "both" }),
        actOf("take", { object: "sabre", hand: "right" }),
      ],
    ],
    [
      "After step 3: reins in the left hand; spear under the right thigh, point forward and low; sabre in the right, point left and high.",
      [
        actOf("carry", { object: "spear", contact: { with: "thigh", side: "right", degree: "bears" } }),
        actOf("release", { object: "spear", hand: "right" }),
        actOf("release", { object: "sabre", hand: "both" }),
        actOf("take", { object: "sabre", hand: "right" }),
        actOf("carry", { object: "sabre", bearing: { is: "clock", hour: 9 }, level: "high" }),
      ],
    ],
    [
      "After step 3: reins in the left hand; spear in the right, point forward and low; sabre in its sheath.",
      [actOf("sheathe", { object: "sabre" }), actOf("release", { object: "sabre", hand: "both" })],
    ],
    ["After step 3: reins in the left hand, spear in the right, point forward and low.", []],
  ];
  test.each(two)("with two weapons and a scabbard: %s", (expected, acts) => {
    const state = applyActs(rider([SPEAR, SABRE, SCABBARD]), acts, CONTEXT);
    expect(handsFigure(state, "After step 3").sentence).toBe(expected);
  });

  test("draws each weapon: in the hand, under the thigh; what is planted and let go has no line", () => {
    const [, under] = two;
    const state = applyActs(rider([SPEAR, SABRE, SCABBARD]), under?.[1] ?? [], CONTEXT);
    const { things, shaft } = handsFigure(state);
    expect(things.map(({ name, open, carried, levels }) => [name, open, carried, levels])).toEqual([
      ["spear", false, true, ["low"]],
      ["sabre", false, true, ["high"]],
    ]);
    // Where along it the hand holds the sabre is not said: it is drawn by the hilt, and told apart.
    expect(things[1]?.line).toMatchObject({ point: { x: -0.448, y: 0.15 }, looselyHeld: true });
    // Two metres long, borne at its balance beside the right thigh.
    expect(things[0]?.line).toMatchObject({ butt: { x: 0.26, y: -0.95 }, point: { x: 0.26, y: 1.05 } });
    expect(shaft).toBeNull();
    const away = applyActs(
      rider(),
      [actOf("plant", {}), actOf("release", { object: "spear", hand: "right" })],
      CONTEXT,
    );
    expect(handsFigure(away).things).toMatchObject([{ line: null, open: false, carried: false }]);
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
      "Now: where the reins are is not known, which hand has the spear is not known, where the point looks and how high is not known.",
    );
    expect(handsFigure(startState([], "on foot")).sentence).toBe("Now: on foot.");
    const keeps = actOf("keep", { object: "reins", hand: "left" });
    const onFoot = handsFigure(applyActs(startState([], "on foot"), [keeps], CONTEXT));
    expect([onFoot.sentence, onFoot.left.reins]).toEqual(["Now: on foot.", "no"]);
  });
});
