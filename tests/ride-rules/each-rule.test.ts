/** tests/ride-rules/each-rule.test.ts - every rule of the table: a case that breaks it, one that keeps it, one that cannot tell. Null where
 *  there can be none: of ways supplied by us and of room to pull up it is only asked, and neither is ever broken. */
import { describe, expect, test } from "vitest";
import { known, oneOf, UNKNOWN } from "../../shared/hands/known.ts";
import { findingsOf, RULES_TABLE, type Verdict, verdictsOf } from "../../shared/ride/rules/index.ts";
import { act, bend, type Made, madeRide, on, riderWith } from "./made-ride.ts";

const clock = (hour: number) => ({ is: "clock", hour }) as const;
const left = { to: "left", viewpoint: "rider" } as const;
const right = { to: "right", viewpoint: "rider" } as const;
const pointAt = (hour: number, level: "low" | "middle" | "high" = "low") => ({
  bearing: known(clock(hour)),
  level: known(level),
});

/** The worst verdict of a rule over a made ride; null where it has nothing to judge. */
function verdictOn(code: string, made: Made): Verdict | null {
  const { ridden, context } = madeRide(made);
  const verdicts = verdictsOf(ridden, context)
    .filter(({ rule }) => rule === code)
    .map(({ verdict }) => verdict);
  if (verdicts.length === 0) return null;
  return verdicts.includes("broken") ? "broken" : verdicts.includes("cannot tell") ? "cannot tell" : "kept";
}

const twoHanded = {
  name: "in both hands",
  hands: "two",
  strong: true,
  slots: { zone: "rear", secondZone: "fore" },
} as const;
const underArm = (slots = {}) => ({
  name: "beneath the arm",
  strong: true,
  slots: { zone: "balance", contact: { with: "arm", degree: "bears" }, ...slots },
});

const stand = { go: "stand", seconds: 2, gait: "halt", speed: 0 } as const;

const CASES: Record<string, { breaks: Made | null; keeps: Made; cannotTell: Made | null }> = {
  "reins-held": {
    breaks: { steps: [{ acts: [act("hold", { hold: "two", hand: "right" }, 0.5)] }], holds: { two: twoHanded } },
    keeps: { steps: [{ acts: [act("lay reins", { on: "neck" }, 0.5)] }] },
    cannotTell: {
      steps: [{ acts: [act("wait")] }],
      start: riderWith({ reins: UNKNOWN }, { grip: { left: known("fore"), right: known("rear") } }),
      holds: {},
    },
  },
  "object-supported": {
    breaks: { steps: [{ acts: [act("release", { hand: "right" })] }] },
    keeps: { steps: [{ acts: [act("plant", {}), act("release", { hand: "right" })] }] },
    cannotTell: { steps: [{ acts: [act("release", { hand: "right" })] }], start: riderWith({}, { contacts: UNKNOWN }) },
  },
  "strong-hold": {
    breaks: {
      steps: [{ acts: [act("hold", { hold: "arm", hand: "right" })] }],
      holds: { arm: underArm({ contact: { with: "arm", degree: "near" } }) },
    },
    keeps: { steps: [{ acts: [act("hold", { hold: "arm", hand: "right" })] }], holds: { arm: underArm() } },
    cannotTell: {
      steps: [{ acts: [act("hold", { hold: "bare", hand: "right" })] }],
      holds: { bare: { name: "bare", strong: true, slots: { zone: "balance" } } },
    },
  },
  "one-thing": {
    breaks: { steps: [{ acts: [act("change reins", { to: "right" })] }] },
    keeps: { steps: [{ acts: [act("pass", { to: "left", zone: "balance" }), act("change reins", { to: "right" })] }] },
    cannotTell: { steps: [{ acts: [act("wait")] }], start: riderWith({ reins: oneOf(["left hand", "right hand"]) }) },
  },
  "pass-grips": {
    breaks: { steps: [{ acts: [act("pass", { to: "left", zone: "head" })] }] },
    keeps: { steps: [{ acts: [act("pass", { to: "left", zone: "fore" })] }] },
    cannotTell: { steps: [{ acts: [act("pass", { to: "left" })] }] },
  },
  "rein-hand-zone": {
    breaks: {
      steps: [
        { acts: [act("hold", { hold: "low", hand: "right" })] },
        { acts: [act("place rein hand", { zone: "raised" })] },
      ],
      holds: { low: { name: "low", slots: { zone: "balance", reinZone: "at its place" } } },
    },
    keeps: {
      steps: [{ acts: [act("hold", { hold: "low", hand: "right" })] }],
      holds: { low: { name: "low", slots: { zone: "balance", reinZone: "at its place" } } },
    },
    cannotTell: {
      steps: [{ acts: [act("hold", { hold: "low", hand: "right" })] }, { acts: [act("place rein hand", {})] }],
      holds: { low: { name: "low", slots: { zone: "balance", reinZone: "at its place" } } },
    },
  },
  "asserted-state": {
    breaks: { steps: [{ acts: [act("keep", { hand: "left", object: "spear" })] }] },
    keeps: { steps: [{ acts: [act("keep", { hand: "right", object: "spear", zone: "balance" })] }] },
    cannotTell: {
      steps: [{ acts: [act("keep", { hand: "right", object: "spear" })] }],
      start: riderWith({}, { grip: { left: UNKNOWN, right: UNKNOWN } }),
    },
  },
  "own-point": {
    breaks: { steps: [{ goes: [bend("left")] }], start: riderWith({}, pointAt(11)) },
    keeps: { steps: [{ goes: [bend("right")] }], start: riderWith({}, pointAt(11)) },
    cannotTell: {
      steps: [{ acts: [act("carry", { bearing: clock(11) })], goes: [bend("left")] }],
      start: riderWith({}, pointAt(12)),
    },
  },
  "threat-weapon": {
    breaks: { steps: [{ goes: [bend("left")], threat: { hour: 10, weaponSide: "left" } }] },
    keeps: { steps: [{ goes: [bend("right")], threat: { hour: 10, weaponSide: "left" } }] },
    cannotTell: { steps: [{ goes: [bend("left")], threat: { hour: 10 } }] },
  },
  "parry-across": {
    breaks: { steps: [{ acts: [act("parry", { to: right })], threat: { hour: 10 } }] },
    keeps: { steps: [{ acts: [act("parry", { to: left })], threat: { hour: 10 } }] },
    cannotTell: { steps: [{ acts: [act("parry", {})], threat: { hour: 10 } }] },
  },
  "threat-covered": {
    breaks: { steps: [{ threat: { hour: 6 } }] },
    keeps: { steps: [{ threat: { hour: 1 } }] },
    cannotTell: { steps: [{ threat: {} }] },
  },
  "lead-bend": {
    breaks: {
      steps: [{ goes: [bend("left", 20, 360, { gait: "canter", speed: 4 })] }],
      start: riderWith({ gait: known("canter"), lead: known("right") }),
    },
    keeps: {
      steps: [{ goes: [bend("left", 20, 360, { gait: "canter", speed: 4 })] }],
      start: riderWith({ gait: known("canter"), lead: known("left") }),
    },
    cannotTell: {
      steps: [{ goes: [bend("left", 20, 360, { gait: "canter", speed: 4 })] }],
      start: riderWith({ gait: known("canter"), lead: UNKNOWN }),
    },
  },
  "bend-suits-gait": {
    breaks: { steps: [{ goes: [bend("left", 3, 180, { gait: "canter", speed: 3.91 })] }] },
    keeps: { steps: [{ goes: [bend("left", 6, 90, { gait: "canter", speed: 3.91 })] }] },
    cannotTell: null,
  },
  "circle-size": {
    breaks: { steps: [{ goes: [bend("left", 4, 360, { gait: "trot", speed: 2 })] }] },
    keeps: { steps: [{ goes: [bend("left", 8, 360, { gait: "trot", speed: 2, figure: "volte" })] }] },
    cannotTell: null,
  },
  "on-ground": {
    breaks: { steps: [{ goes: [on(70)] }] },
    keeps: { steps: [{ goes: [on(50)] }] },
    cannotTell: null,
  },
  "figure-fits": {
    breaks: { steps: [{ refused: "It does not fit: the circle of 60 m goes 8 m past the wall. Make it smaller." }] },
    keeps: { steps: [{}] },
    cannotTell: null,
  },
  "begins-there": {
    breaks: {
      steps: [{ acts: [act("ride", { figure: "straight", from: { is: "station", station: "elm" } })] }],
      stations: [elm(10)],
    },
    keeps: {
      steps: [{ acts: [act("ride", { figure: "straight", from: { is: "station", station: "elm" } })] }],
      stations: [elm(1)],
    },
    cannotTell: null,
  },
  "joins-shown": {
    breaks: { steps: [{ goes: [on(7, { joins: true }), on(5)] }] },
    keeps: { steps: [{ goes: [on(2, { joins: true }), on(5)] }] },
    cannotTell: null,
  },
  "joins-ridden": {
    // A way of ours is never more than a question.
    breaks: null,
    keeps: { steps: [{ goes: [bend("left", 60, 30, { gait: "gallop", speed: 12.5, joins: true }), on(5)] }] },
    cannotTell: { steps: [{ goes: [bend("left", 6, 30, { gait: "gallop", speed: 12.5, joins: true }), on(5)] }] },
  },
  "point-inside": {
    breaks: { steps: [{ goes: [on(59.4)] }], start: riderWith({}, pointAt(12)), trackOffset: 1.8 },
    keeps: { steps: [{ goes: [on(59.4)] }], start: riderWith({}, pointAt(12, "high")), trackOffset: 1.8 },
    cannotTell: { steps: [{ goes: [on(59.4)] }], start: riderWith({}, { level: UNKNOWN }), trackOffset: 1.8 },
  },
  "room-to-pull-up": {
    // The ride changes its speed at once: that it says so is never more than a question.
    breaks: null,
    keeps: { steps: [{ goes: [on(30, { gait: "gallop", speed: 12.5 }), stand] }] },
    cannotTell: { steps: [{ goes: [on(15, { gait: "gallop", speed: 12.5 }), stand] }] },
  },
  "same-hand": {
    breaks: {
      steps: [{ acts: [act("pass", { to: "left", zone: "balance" })] }, {}],
      demands: [{ rule: "same-hand", from: 0, to: 1 }],
    },
    keeps: { steps: [{}, {}], demands: [{ rule: "same-hand", from: 0, to: 1 }] },
    cannotTell: {
      steps: [{}, {}],
      start: riderWith({}, { grip: { left: UNKNOWN, right: UNKNOWN } }),
      demands: [{ rule: "same-hand", from: 0, to: 1 }],
    },
  },
  "back-where-begun": {
    breaks: { steps: [{ goes: [bend("left", 20, 180)] }], demands: [{ rule: "back-where-begun", from: 0, to: 0 }] },
    keeps: { steps: [{ goes: [bend("left", 20, 360)] }], demands: [{ rule: "back-where-begun", from: 0, to: 0 }] },
    cannotTell: {
      steps: [{ goes: [bend("left", 20, 180)] }, { is: "untreated" }, {}],
      demands: [{ rule: "back-where-begun", from: 0, to: 2 }],
    },
  },
  "again-fits": {
    breaks: { steps: [{}, { again: { of: 0, round: 1, mirrored: true } }] },
    keeps: { steps: [{}, { again: { of: 0, round: 1, mirrored: false } }] },
    cannotTell: {
      steps: [{}, { again: { of: 0, round: 1, mirrored: false } }],
      start: riderWith({}, { grip: { left: UNKNOWN, right: UNKNOWN } }),
    },
  },
  "sizes-allow": {
    breaks: {
      steps: [{ acts: [act("hold", { hold: "arm", hand: "right" })] }],
      holds: { arm: underArm({ zone: "butt" }) },
    },
    keeps: { steps: [{ acts: [act("hold", { hold: "arm", hand: "right" })] }], holds: { arm: underArm() } },
    cannotTell: {
      steps: [{ acts: [act("hold", { hold: "arm", hand: "right" })] }],
      holds: { arm: underArm() },
      start: shaftWithoutLength(),
    },
  },
};

function elm(x: number) {
  return { id: "elm", name: "the elm", outline: { is: "point" as const, at: { x, y: 0 } }, partner: null };
}

function shaftWithoutLength() {
  const state = riderWith({});
  return {
    ...state,
    objects: state.objects.map((held) => ({ ...held, object: { ...held.object, lengthMetres: null } })),
  };
}

describe("[V1] each rule of the table", () => {
  test("has its cases here, save those between riders", () => {
    const coded = RULES_TABLE.filter(({ reach }) => reach !== "whole").map(({ code }) => code);
    expect(Object.keys(CASES)).toEqual(coded);
  });

  for (const [code, { breaks, keeps, cannotTell }] of Object.entries(CASES)) {
    test.runIf(breaks !== null)(`${code} is broken, and the finding says so`, () => {
      if (breaks === null) return;
      expect(verdictOn(code, breaks)).toBe("broken");
      const { ridden, context } = madeRide(breaks);
      const [finding] = findingsOf(ridden, context).filter(({ rule }) => rule === code);
      expect(finding).toMatchObject({
        verdict: "broken",
        severity: RULES_TABLE.find((rule) => rule.code === code)?.severity,
        waived: null,
      });
      expect(finding?.sentence).toMatch(/^(Step \d+|“).*\.$/);
    });
    test(`${code} is kept`, () => {
      expect(verdictOn(code, keeps)).toBe("kept");
      const { ridden, context } = madeRide(keeps);
      expect(findingsOf(ridden, context).filter(({ rule }) => rule === code)).toEqual([]);
    });
    if (cannotTell !== null)
      test(`${code} cannot be told`, () => {
        expect(verdictOn(code, cannotTell)).toBe("cannot tell");
        const { ridden, context } = madeRide(cannotTell);
        const found = findingsOf(ridden, context).filter(({ rule }) => rule === code);
        expect(found.every(({ severity, verdict }) => severity === "notes" && verdict === "cannot tell")).toBe(true);
      });
  }
});

describe("[V50] of two hands on the shaft the one that does it best is asked", () => {
  const onGround = (near: "butt" | "head", off: "butt" | "head") => ({
    steps: [{ acts: [act("wait")] }],
    start: riderWith({}, { grip: { left: known(near), right: known(off) }, level: known("ground") }),
  });

  test.each([
    ["butt", "head"],
    ["head", "butt"],
  ] as const)("left at the %s, right at the %s", (near, off) => {
    expect(verdictOn("sizes-allow", onGround(near, off))).toBe("kept");
  });
  test("both at the head", () => {
    expect(verdictOn("sizes-allow", onGround("head", "head"))).toBe("broken");
  });
});
