/** tests/ride-puzzle/any-exercise.ts - small exercises drawn at random: figures, hands, things done again, and cruxes in all of it.
 *  Up to four cruxes of two or three readings, so that every way to read one can be ridden as a whole. */
import fc from "fast-check";
import type { ActOf, Verb } from "../../schema/act.ts";
import type { Element } from "../../schema/exercise.ts";
import type { Guard } from "../../schema/guard.ts";
import type { Rows } from "../../schema/record.ts";
import type { ReadingValue, SlotAddress } from "../../schema/slot.ts";
import { RIDE_RULES } from "../../shared/ride/rules/table.ts";
import { idOf, notSaid, supplied } from "../drill/build-rows.ts";
import { RideBuilder } from "../ride/build-ride.ts";

export interface DrawnExercise {
  rows: Rows;
  exercise: string;
}

/** What is drawn; small whole numbers are taken modulo whatever there is to choose from. */
export interface Drawn {
  cruxes: { readings: number; arises: number; tied: number; ruledOut: boolean }[];
  steps: DrawnStep[];
  standing: number;
  bars: number[];
  waived: number[];
  exception: number;
}
interface DrawnStep {
  is: number;
  guard: number;
  acts: { verb: number; held: number; values: number; guard: number; timing: number }[];
  range: number;
  manner: number;
  times: number;
}

const small = fc.nat({ max: 59 });
const drawn: fc.Arbitrary<Drawn> = fc.record({
  cruxes: fc.array(
    fc.record({ readings: fc.integer({ min: 2, max: 3 }), arises: small, tied: small, ruledOut: fc.boolean() }),
    { minLength: 1, maxLength: 3 },
  ),
  steps: fc.array(
    fc.record({
      is: small,
      guard: small,
      acts: fc.array(fc.record({ verb: small, held: small, values: small, guard: small, timing: small }), {
        minLength: 1,
        maxLength: 3,
      }),
      range: small,
      manner: small,
      times: small,
    }),
    { minLength: 2, maxLength: 5 },
  ),
  standing: small,
  bars: fc.array(small, { maxLength: 4 }),
  waived: fc.array(small, { maxLength: 2 }),
  exception: small,
});

const at = <T>(list: readonly T[], draw: number): T => list[draw % list.length] as T;

/** A slot with the values it may be drawn to have. */
type SlotDraw = [slot: string, values: readonly unknown[]];
const HAND: SlotDraw = ["hand", ["left", "right", "both", "rein hand", "the other"]];
const TURN: SlotDraw = [
  "turn",
  [
    { to: "left", viewpoint: "rider" },
    { to: "right", viewpoint: "rider" },
    { to: "inside", viewpoint: "rider" },
  ],
];
const station = (name: string) => ({ is: "station", station: idOf(name) });
const BEARING: SlotDraw = ["bearing", [10, 2, 12, 6].map((hour) => ({ is: "clock", hour }))];
const LEVEL: SlotDraw = ["level", ["low", "middle", "high"]];
const OBJECT: SlotDraw = ["object", [idOf("spear"), idOf("spear"), idOf("reins")]];

/** Verbs with the slots that are drawn for them. */
const ACTS: readonly [Verb, readonly SlotDraw[]][] = [
  ["ride", [["figure", ["circle", "volte", "half volte", "figure of eight"]], TURN, ["size", [8, 16, 60].map(metres)]]],
  ["ride", [["figure", ["along the wall"]], TURN, ["size", [10, 30].map(metres)]]],
  ["ride", [["figure", ["circle"]], TURN, ["about", [station("well"), station("oak")]]]],
  [
    "ride",
    [
      ["figure", ["straight"]],
      ["from", [station("gate"), station("well")]],
      ["toward", [station("oak")]],
    ],
  ],
  ["ride", [["figure", ["turn", "halt"]], TURN]],
  [
    "go at",
    [
      ["gait", ["walk", "canter", "halt"]],
      ["lead", ["left", "right"]],
    ],
  ],
  ["take", [HAND, OBJECT, ["zone", ["balance", "rear"]]]],
  ["keep", [HAND, OBJECT]],
  ["release", [HAND, OBJECT]],
  [
    "pass",
    [
      ["object", [idOf("spear")]],
      ["from", ["left", "right"]],
      ["to", ["left", "right"]],
    ],
  ],
  ["carry", [["object", [idOf("spear"), idOf("sword")]], HAND, BEARING, LEVEL]],
  ["lay reins", [["on", ["neck"]]]],
  ["change reins", [["to", ["left", "right"]]]],
  ["hold", [["object", [idOf("spear")]], ["hold", [idOf("by the boot"), idOf("in both hands")]], HAND]],
  ["perform", [["movement", [idOf("greeting")]], HAND]],
  ["raise", [["object", [idOf("spear")]], LEVEL]],
];

function metres(of: number) {
  return { is: "exact", of };
}

const TIMINGS = [
  null,
  null,
  { is: "before" },
  { is: "after" },
  { is: "at", over: 1, of: 2 },
  { is: "throughout" },
  { is: "when", event: "he comes to the oak" },
  { is: "until", event: "the circle is done" },
];
const ROLES = ["", "", "", "", "", "the first", "the second"];

/** Drawn as a plan of small numbers, so that a failure prints something short; `exerciseFrom` makes its rows. */
export const anyExercise: fc.Arbitrary<Drawn> = drawn;

export function exerciseFrom({ cruxes, steps, standing, bars, waived, exception }: Drawn): DrawnExercise {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1.8 });
  let acts = 0;
  const values = new Map<string, { at: SlotAddress; value: ReadingValue }[]>();
  made.station("well", 0, 0);
  made.station("oak", 10, 5, "elm");
  made.station("elm", -10, 5, "oak");
  made.station("gate", 0, -20);
  made.object("spear", "shaft");
  made.object("sword", "blade");
  made.object("reins", "reins");
  const crux = (draw: number): string => `crux ${draw % cruxes.length}`;
  const readings = (name: string): string[] =>
    Array.from({ length: cruxes[Number(name.slice(5))]?.readings ?? 2 }, (_, index) => `${name} reading ${index}`);
  const guard = (draw: number): Guard => {
    if (draw % 3 !== 0) return [];
    const name = crux(draw);
    return [{ is: "reading", crux: idOf(name), readings: [at(readings(name), draw)].map(idOf) }];
  };
  /** Holds the slot in a crux, each reading of which gives another of the values. */
  const inCrux = (draw: number, address: SlotAddress, choices: readonly unknown[]) => {
    const name = crux(draw);
    for (const [index, reading] of readings(name).entries()) {
      const value: ReadingValue =
        draw % 7 === 1 && index === 1
          ? notSaid
          : draw % 11 === 1 && index === 1
            ? { is: "absent" }
            : supplied(at(choices, draw + index));
      values.set(reading, [...(values.get(reading) ?? []), { at: address, value }]);
    }
    return { is: "in crux", crux: idOf(name) };
  };
  const boot = idOf("by the boot");
  made.hold("by the boot", {
    slots: {
      zone: supplied("balance"),
      bearing: supplied({ is: "clock", hour: 12 }),
      level: supplied("high"),
      contact: supplied({ with: "boot", side: "right", degree: "bears" }),
      ...(exception % 4 === 0
        ? { reinZone: inCrux(exception, { kind: "holds", id: boot, slot: "reinZone" }, ["at its place"]) }
        : {}),
    } as never,
  });
  made.hold("in both hands", { hands: "two", strong: true, slots: { bearing: supplied({ is: "clock", hour: 10 }) } });
  made.movement("greeting");
  made.action(idOf("greeting"), "raise", { object: supplied(idOf("spear")), level: supplied("high") });
  made.action(idOf("greeting"), "carry", {
    object: supplied(idOf("spear")),
    bearing: supplied({ is: "clock", hour: 11 }),
    level: supplied("middle"),
  });
  const act = (
    owner: string,
    { verb, held, values: draw, guard: guarded, timing }: DrawnStep["acts"][number],
  ): void => {
    const [name, slots] = at(ACTS, verb);
    const when = at(TIMINGS, timing);
    const id = idOf(`act ${acts}`);
    acts += 1;
    const filled = slots.filter((_, index) => index === 0 || (draw >> index) % 3 !== 0);
    const said = filled.map(([slot, choices], index) =>
      held % 2 === 0 && index === held % filled.length
        ? [slot, inCrux(held, { kind: "actions", id, slot }, choices)]
        : [slot, supplied(at(choices, draw + index))],
    );
    made.action(owner, name, Object.fromEntries(said) as ActOf<Verb>["slots"], {
      id,
      guard: guard(guarded),
      ...(when === null ? {} : { timing: supplied(when) as never }),
    });
  };
  if (standing % 3 === 0) {
    const throughout = made.standing("throughout", made.home);
    act(throughout, { verb: standing % 2 === 0 ? 5 : 7, held: standing, values: standing, guard: 1, timing: 0 });
  }
  const names: string[] = [];
  for (const [index, step] of steps.entries()) {
    const name = `step ${index}`;
    const is = at(["step", "step", "step", "step", "again", "again", "untreated", "advice"] as const, step.is);
    const [from, to] = [at(names, step.range), names.at(-1)];
    const fields = { guard: guard(step.guard), role: at(ROLES, step.is) };
    if (is === "again" && from !== undefined && to !== undefined) {
      const id = made.element(name, made.home, {
        is,
        title: name,
        of: { is: "elements", from: idOf(from), to: idOf(to) },
        manner: at(["as it is", "mirrored"] as const, step.manner),
        except: [],
        times: supplied({ is: "times", n: 1 + (step.times % 2) }),
        ...fields,
      } as Partial<Element> & Pick<Element, "is">);
      if (step.times % 5 === 0 && step.acts[0]) act(id, step.acts[0]);
    } else if (is === "untreated") {
      const passage = made.passage(`passage of ${name}`, [{ kind: "section", from: ["1"] }], made.home);
      made.element(name, made.home, {
        is,
        fromPassage: passage,
        toPassage: passage,
        estimate: null,
        ...fields,
      } as never);
    } else if (is === "advice") {
      const code = at(["same-hand", "back-where-begun"], step.manner);
      made.element(name, made.home, {
        is,
        demand: "as before",
        from: from === undefined || step.range % 4 === 0 ? null : idOf(from),
        to: step.times % 2 === 0 ? null : idOf(`step ${steps.length - 1}`),
        rule: idOf(`rule ${code}`),
        ...fields,
      } as never);
      continue;
    } else {
      const id = made.step(name, made.home, fields);
      for (const one of step.acts) act(id, one);
    }
    names.push(name);
  }
  const barring = new Set(bars.map((draw) => at(RIDE_RULES, draw).code));
  for (const rule of RIDE_RULES) {
    const needed = rule.code === "same-hand" || rule.code === "back-where-begun";
    if (!needed && !barring.has(rule.code)) continue;
    made.put("rules", {
      id: idOf(`rule ${rule.code}`),
      work: made.work,
      code: rule.code,
      sentence: rule.sentence,
      basis: rule.basis,
      support: [],
      severity: barring.has(rule.code) || bars.length > 2 ? "bars" : rule.severity,
      reach: rule.reach,
    });
  }
  for (const [index, draw] of waived.entries()) {
    const element = at(names, draw);
    if (element === undefined) continue;
    made.put("waivers", {
      id: idOf(`waiver ${index}`),
      rule: at(RIDE_RULES, draw * 7).code,
      element: idOf(element),
      reason: "tried",
      basis: [],
    });
  }
  for (const [index, { arises, tied, ruledOut }] of cruxes.entries()) {
    const name = crux(index);
    const before = index === 0 ? null : crux(index - 1);
    const under = (other: string, draw: number) => ({
      is: "reading" as const,
      crux: idOf(other),
      readings: [idOf(at(readings(other), draw))],
    });
    made.crux(name, made.home, {
      arisesWhen: before !== null && arises % 4 === 0 ? [under(before, arises)] : [],
      exceptions:
        exception % 5 === 0 && names[0] !== undefined
          ? [{ element: idOf(at(names, exception)), reading: idOf(at(readings(name), exception)), reason: "here" }]
          : [],
    });
    for (const [place, reading] of readings(name).entries())
      made.reading(reading, idOf(name), {
        values: values.get(reading) ?? [],
        requires: before !== null && tied % 7 === 0 && place === 0 ? [under(before, tied)] : [],
        excludes: before !== null && tied % 7 === 1 && place === 1 ? [under(before, tied)] : [],
        status:
          ruledOut && place === 2
            ? { is: "ruled out", on: "2026-01-01", sitting: null, reason: "no" }
            : { is: "standing" },
      });
  }
  return { rows: made.rows(), exercise: made.home };
}
