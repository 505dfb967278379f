/** tests/hands/apply.test.ts - acts on control states: a table, and the laws of shared/hands/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { VERB_NAMES } from "../../schema/act.ts";
import type { Known } from "../../schema/slot.ts";
import { applyAct, applyActs, NO_CONTEXT } from "../../shared/hands/apply.ts";
import { contradictions } from "../../shared/hands/contradictions.ts";
import { handsOn, mainObject, reinHands, sideOfPoint } from "../../shared/hands/derived.ts";
import { isKnown, known, oneOf, possible, UNKNOWN } from "../../shared/hands/known.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { afterUntreated, type ControlState, eitherState, startState } from "../../shared/hands/state.ts";
import { actOf, anyAct, anyReachable, CONTEXT, REINS, rider, SABRE, SCABBARD, SPEAR } from "./riders.ts";

/** What a state says, shortly: "reins left hand; spear -/balance, 12, low; walk". "?" is unknown, "a|b" one of. */
function told(state: ControlState): string {
  const word = (value: { is: string }): string => {
    const values = possible<unknown>(value as Known<unknown>, []);
    const one = (held: unknown): string => {
      if (held === null) return "-";
      if (typeof held !== "object") return String(held);
      if ("hour" in held) return String(held.hour);
      return "what" in held && "is" in held ? `${held.is} ${held.what}` : JSON.stringify(held);
    };
    return values.length === 0 ? "?" : values.map(one).join("|");
  };
  const objects = state.objects.map(
    ({ object, grip, bearing, level, frame }) =>
      `${object.name} ${word(grip.left)}/${word(grip.right)}, ${word(bearing)}, ${word(level)}, ${word(frame)}`,
  );
  const horse = `${word(state.gait)} ${word(state.lead)} on the ${word(state.rein)}`;
  return [`reins ${word(state.reins)} (${word(state.reinZone)})`, ...objects, horse].join("; ");
}

const START = "reins left hand (at its place); spear -/balance, 12, low, carried; walk - on the left";
const ANYWHERE = "butt|rear|balance|fore|head";

describe("[H2] the table of acts on the rider of the examples", () => {
  const table: [name: string, act: KnownAct, expected: string][] = [
    ["canter, its lead not said", actOf("go at", { gait: "canter" }), START.replace("walk -", "canter ?")],
    [
      "canter on the inside lead",
      actOf("go at", { gait: "canter", lead: "inside" }),
      START.replace("walk -", "canter left"),
    ],
    ["faster at the same gait", actOf("go at", { pace: "increased" }), START],
    ["halt", actOf("ride", { figure: "halt" }), START.replace("walk", "halt")],
    [
      "circle right",
      actOf("ride", { figure: "circle", turn: { to: "right", viewpoint: "rider" } }),
      START.replace("on the left", "on the right"),
    ],
    ["circle, its side not said", actOf("ride", { figure: "circle" }), START.replace("on the left", "on the ?")],
    [
      "circle to the outside",
      actOf("ride", { figure: "circle", turn: { to: "outside", viewpoint: "rider" } }),
      START.replace("on the left", "on the right"),
    ],
    ["straight on", actOf("ride", { figure: "straight" }), START],
    ["change across", actOf("ride", { figure: "change across" }), START.replace("on the left", "on the right")],
    [
      "half volte left",
      actOf("ride", { figure: "half volte", turn: { to: "left", viewpoint: "rider" } }),
      START.replace("on the left", "on the right"),
    ],
    [
      "left hand takes the spear before the balance",
      actOf("take", { hand: "left", object: "spear", zone: "fore" }),
      START.replace("-/balance", "fore/balance"),
    ],
    [
      "the other hand takes it too, no zone said",
      actOf("take", { hand: "rein hand", object: "spear" }),
      START.replace("-/balance", `${ANYWHERE}/balance`),
    ],
    [
      "a hand, not said which, takes it at the head",
      actOf("take", { object: "spear", zone: "head" }),
      START.replace("-/balance", "head|-/balance|head"),
    ],
    [
      "the shaft hand lets go",
      actOf("release", { hand: "shaft hand", object: "spear" }),
      START.replace("-/balance", "-/-"),
    ],
    [
      "it is let go, no hand said: the one that holds it",
      actOf("release", { object: "spear" }),
      START.replace("-/balance", "-/-"),
    ],
    ["right hand keeps it", actOf("keep", { hand: "right", object: "spear" }), START],
    [
      "pass it to the left, at the balance",
      actOf("pass", { object: "spear", to: "left", zone: "balance" }),
      START.replace("-/balance", "balance/-"),
    ],
    [
      "pass it: only the right can give",
      actOf("pass", { object: "spear", zone: "rear" }),
      START.replace("-/balance", "rear/-"),
    ],
    [
      "slide to the rear",
      actOf("slide", { hand: "right", object: "spear", zone: "rear" }),
      START.replace("-/balance", "-/rear"),
    ],
    ["change reins", actOf("change reins"), START.replace("left hand", "right hand")],
    ["reins to both hands", actOf("change reins", { to: "both" }), START.replace("left hand", "both hands")],
    [
      "rein hand over the neck",
      actOf("place rein hand", { zone: "over the neck to the right" }),
      START.replace("at its place", "over the neck to the right"),
    ],
    ["rein hand anywhere", actOf("place rein hand", { zone: "any" }), START.replace("at its place", "?")],
    ["reins on the neck", actOf("lay reins", { on: "neck" }), START.replace("left hand (at its place)", "neck (-)")],
    [
      "reins laid, not said where",
      actOf("lay reins"),
      START.replace("left hand (at its place)", "neck|left arm|right arm|saddle (-)"),
    ],
    [
      "reins let go",
      actOf("release", { object: "reins" }),
      START.replace("left hand (at its place)", "neck|left arm|right arm|saddle (-)"),
    ],
    [
      "right hand takes the reins too",
      actOf("take", { hand: "right", object: "reins" }),
      START.replace("left hand", "both hands"),
    ],
    ["rest the left hand", actOf("rest", { hand: "left", on: { with: "thigh", degree: "touches" } }), START],
    [
      "two-handed hold, right hand main",
      actOf("hold", { object: "spear", hold: "two-handed", hand: "right" }),
      START.replace("-/balance, 12, low", "fore/rear, 11, middle"),
    ],
    [
      "couched hold: level and point stay",
      actOf("hold", { object: "spear", hold: "couched", hand: "right" }),
      START.replace("-/balance", "-/rear"),
    ],
    [
      "a hold nobody knows",
      actOf("hold", { object: "spear", hold: "?", hand: "right" }),
      START.replace("-/balance, 12, low, carried", `?/${ANYWHERE}, ?, ?, ?`),
    ],
    [
      "point left, high",
      actOf("carry", { object: "spear", bearing: { is: "clock", hour: 9 }, level: "high" }),
      START.replace("12, low", "9, high"),
    ],
    [
      "point toward the onlookers",
      actOf("carry", { bearing: { is: "toward", what: "the onlookers" } }),
      START.replace("12", "toward the onlookers"),
    ],
    ["turn it once about", actOf("spin", { object: "spear", times: { is: "times", n: 1 } }), START],
    [
      "turn it half about, level",
      actOf("spin", {
        object: "spear",
        spin: { plane: "level", sense: "clockwise", viewpoint: "rider" },
        times: { is: "times", n: 0.5 },
      }),
      START.replace("12", "6"),
    ],
    ["turn it about, not said how often", actOf("spin", { object: "spear" }), START.replace("12", "?")],
    [
      "over the neck to the left",
      actOf("cross the neck", { object: "spear", to: { to: "left", viewpoint: "rider" } }),
      START.replace("12", "7|8|9|10|11"),
    ],
    ["raise it", actOf("raise", { object: "spear" }), START.replace("low", "middle|high")],
    ["lower it", actOf("lower", { object: "spear" }), START.replace("low", "ground")],
    ["plant it", actOf("plant", { object: "spear" }), START.replace("12, low, carried", "?, ground, planted")],
    [
      "thrust to the front",
      actOf("thrust", { object: "spear", bearing: { is: "clock", hour: 1 } }),
      START.replace("12", "1"),
    ],
    ["thrust, not said where", actOf("thrust", { object: "spear" }), START.replace("12", "?")],
    [
      "parry to the inside",
      actOf("parry", { object: "spear", to: { to: "inside", viewpoint: "rider" } }),
      START.replace("12", "7|8|9|10|11"),
    ],
    [
      "the movement that changes over",
      actOf("perform", { movement: "change over" }),
      START.replace("left hand", "right hand").replace("-/balance", `${ANYWHERE}/-`),
    ],
    ["show it", actOf("show", { object: "spear" }), START],
    ["wait", actOf("wait"), START],
    ["other", actOf("other", { words: "salute" }), START],
    ["nothing", actOf("do nothing", { hand: "left" }), START],
    ["sit deep", actOf("sit", { how: "deep" }), START],
    ["look back", actOf("look"), START],
    ["wave", actOf("gesture", { hand: "left" }), START],
    ["hook it to the saddle", actOf("hook", { object: "spear", to: "the saddle" }), START],
    ["unhook it", actOf("unhook", { object: "spear" }), START],
    [
      "pick it up with the right hand",
      actOf("pick up", { object: "spear", hand: "right" }),
      START.replace("-/balance, 12, low", `-/${ANYWHERE}, ?, ?`),
    ],
    [
      "throw off to the right",
      actOf("throw off", { object: "spear", bearing: { is: "clock", hour: 3 } }),
      START.replace("12", "3"),
    ],
  ];

  test("the rider of the examples", () => {
    expect(told(rider())).toBe(START);
  });
  test.each(table)("%s", (_name, act, expected) => {
    expect(told(applyAct(rider(), act, CONTEXT))).toBe(expected);
  });
  test("has a line for every verb, save those of the sheath", () => {
    const lines = new Set(table.map(([, { verb }]) => verb));
    expect(VERB_NAMES.filter((verb) => !lines.has(verb))).toEqual(["draw", "sheathe"]);
  });
});

describe("drawing and sheathing", () => {
  const start = startState([SABRE, SCABBARD], "on foot");
  const contacts = (state: ControlState) => state.objects[0]?.contacts;
  const seized = applyAct(start, actOf("take", { hand: "right", object: "sabre", zone: "hilt" }), CONTEXT);

  test("drawn in part it is still in its sheath", () => {
    const part = applyAct(
      seized,
      actOf("draw", { object: "sabre", hand: "right", distance: { is: "exact", of: 0.15 } }),
      CONTEXT,
    );
    expect(contacts(part)).toEqual(known([{ with: "sheath", degree: "bears" }]));
    expect(contacts(applyAct(part, actOf("draw", { object: "sabre" }), CONTEXT))).toEqual(known([]));
    expect(contacts(applyAct(part, actOf("sheathe", { object: "sabre" }), CONTEXT))).toEqual(contacts(part));
  });
  test("on foot the reins are away, and the sabre stays in its hand", () => {
    expect(seized.reins).toEqual(known("away"));
    expect(seized.objects[0]?.grip.right).toEqual(known("hilt"));
    expect(seized.objects[0]?.grip.left).toEqual(UNKNOWN);
  });
});

describe("[H10] on foot", () => {
  const start = applyAct(startState([SPEAR], "on foot"), actOf("take", { hand: "right", object: "spear" }), CONTEXT);
  const onReins: [what: string, act: KnownAct][] = [
    ["keep", actOf("keep", { hand: "left", object: "reins" })],
    ["take", actOf("take", { hand: "both", object: "reins" })],
    ["let go", actOf("release", { object: "reins" })],
    ["pass", actOf("pass", { object: "reins", to: "left" })],
    ["change", actOf("change reins", { to: "left" })],
    ["lay", actOf("lay reins", { on: "neck" })],
    ["place the hand", actOf("place rein hand", { zone: "raised" })],
  ];
  test.each(onReins)("there are no reins to act on: %s", (_what, act) => {
    expect(applyAct(start, act, CONTEXT)).toBe(start);
  });
  test("after words that are not written out there are none either, nor after a movement nobody knows", () => {
    expect(afterUntreated(start).reins).toEqual(known("away"));
    expect(applyAct(start, actOf("perform", { movement: "unheard of" }), CONTEXT).reins).toEqual(known("away"));
  });
  test("what stands for them is held like reins, and is still there after words that are not written out", () => {
    const rope = startState([SPEAR], "on foot", true);
    expect(applyAct(rope, actOf("change reins", { to: "left" }), CONTEXT).reins).toEqual(known("left hand"));
    expect(afterUntreated(rope).reins).toEqual(UNKNOWN);
  });
  test("the other hand is told by a hand on reins, and the neck is where the spear crosses", () => {
    const acts = [
      actOf("keep", { hand: "left", object: "reins" }),
      actOf("take", { hand: "the other", object: "spear" }),
    ];
    const [spear] = applyActs(startState([SPEAR], "on foot"), acts, CONTEXT).objects;
    expect(spear?.grip.left).toEqual(UNKNOWN);
    expect(possible<string | null>(spear?.grip.right ?? UNKNOWN, [null])).not.toContain(null);
    const cross = actOf("cross the neck", { object: "spear", to: { to: "left", viewpoint: "rider" } });
    expect(applyAct(start, cross, CONTEXT).objects).not.toEqual(start.objects);
  });
});

describe("[H6] roles", () => {
  const grip = (acts: KnownAct[], state = rider()) => applyActs(state, acts, CONTEXT).objects[0]?.grip;
  test("the other: of the hand that acted before, else of the rein hand", () => {
    const take = actOf("take", { hand: "the other", object: "spear", zone: "head" });
    expect(grip([take])).toEqual({ left: known(null), right: known("head") });
    expect(grip([actOf("slide", { hand: "right", object: "spear", zone: "rear" }), take])).toEqual({
      left: known("head"),
      right: known("rear"),
    });
  });
  test("a role nobody fills is unknown: either hand", () => {
    const laid = applyAct(rider(), actOf("lay reins", { on: "neck" }), CONTEXT);
    expect(grip([actOf("take", { hand: "rein hand", object: "spear", zone: "head" })], laid)).toEqual({
      left: oneOf<string | null>(["head", null]),
      right: oneOf<string | null>(["balance", "head"]),
    });
  });
  test("near is left, off is right, inside is the rein that is ridden", () => {
    for (const [role, hand] of [
      ["near", "left"],
      ["off", "right"],
      ["inside", "left"],
      ["outside", "right"],
    ] as const) {
      const after = applyAct(rider(), actOf("take", { hand: role, object: "spear", zone: "head" }), CONTEXT);
      expect(isKnown(after.objects[0]?.grip[hand] ?? UNKNOWN, "head")).toBe(true);
    }
  });
});

describe("what is derived", () => {
  test("who has the reins, which hands are on the shaft, the side of the point", () => {
    const state = applyAct(rider(), actOf("carry", { bearing: { is: "clock", hour: 10 } }), CONTEXT);
    const main = mainObject(state);
    expect(reinHands(state)).toEqual(known(["left"]));
    expect(main && handsOn(main)).toEqual(known(["right"]));
    expect(main && sideOfPoint(main)).toEqual(known("left"));
  });
});

describe("laws", () => {
  test("[H7] no reachable state contradicts itself", () => {
    fc.assert(
      fc.property(anyReachable, ({ start, acts }) => {
        let state = start;
        for (const act of acts) {
          state = applyAct(state, act, CONTEXT);
          expect(contradictions(state)).toEqual([]);
        }
      }),
      { numRuns: 400 },
    );
  });

  test("[H7] the check itself tells a state that cannot be", () => {
    const state = rider([SPEAR]);
    expect(contradictions(state)).toEqual([]);
    expect(contradictions({ ...state, reins: known("neck") })).toEqual([
      "no hand has the reins, yet a rein hand is placed",
    ]);
    expect(contradictions({ ...state, lead: known("left") })).toEqual(["a lead at the walk"]);
  });

  test("[H1] to know less never tells more: what the vaguer state knows, the other knows too", () => {
    fc.assert(
      fc.property(anyReachable, anyAct, ({ start, acts }, act) => {
        const exact = applyActs(start, acts, CONTEXT);
        const vague = eitherState(exact, startStateLike(exact));
        const [after, vaguely] = [exact, vague].map((state) => applyAct(state, act, CONTEXT));
        if (!after || !vaguely) throw new TypeError("two states");
        expect(within(after, vaguely)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("[H8] after what is not written out nothing is known, save what is carried and the way", () => {
    expect(afterUntreated(rider([SPEAR, REINS]))).toEqual(startState([SPEAR], "mounted"));
  });

  test("[H2] acts leave what they are given as it was", () => {
    fc.assert(
      fc.property(anyReachable, ({ start, acts }) => {
        const before = JSON.stringify(start);
        applyActs(start, acts, NO_CONTEXT);
        expect(JSON.stringify(start)).toBe(before);
      }),
    );
  });
});

function startStateLike(state: ControlState): ControlState {
  return startState(
    state.objects.map(({ object }) => object),
    state.way,
  );
}

/** Whether every part of `exact` is among what `vague` allows. */
function within(exact: ControlState, vague: ControlState): boolean {
  return (
    JSON.stringify(eitherState(vague, exact)) === JSON.stringify(vague) || sameParts(eitherState(vague, exact), vague)
  );
}

/** Equal up to the order in which possible values are listed. */
function sameParts(first: unknown, second: unknown): boolean {
  const sorted = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(sorted).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, held]) => [key, sorted(held)]));
  };
  return JSON.stringify(sorted(first)) === JSON.stringify(sorted(second));
}
