/** tests/hands/riders.ts - builders for states and acts: a rider with a spear, a sabre and a scabbard. */
import fc from "fast-check";
import { VERB_NAMES, VERBS, type Verb } from "../../schema/act.ts";
import { domainOf, type ValueKind } from "../../schema/values.ts";
import type { ActContext } from "../../shared/hands/apply.ts";
import { known, oneOf, UNKNOWN } from "../../shared/hands/known.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { type Carried, type ControlState, consistent, type ObjectState, startState } from "../../shared/hands/state.ts";

export const SPEAR: Carried = { id: "spear", name: "spear", is: "shaft", lengthMetres: 2 };
export const SABRE: Carried = { id: "sabre", name: "sabre", is: "blade", lengthMetres: null };
export const SCABBARD: Carried = { id: "scabbard", name: "scabbard", is: "sheath", lengthMetres: null };
export const REINS: Carried = { id: "reins", name: "reins", is: "reins", lengthMetres: null };

/** An act by plain values; undefined slots are silent. */
export function actOf(verb: Verb, slots: Record<string, unknown> = {}): KnownAct {
  return { verb, slots: Object.fromEntries(Object.entries(slots).map(([name, value]) => [name, known(value)])) };
}

/** The rider of the examples: mounted at a walk on the left rein, reins in the left hand, spear at the balance in the
 *  right, its point forward and low. */
export function rider(objects: readonly Carried[] = [SPEAR]): ControlState {
  const start = startState(objects, "mounted");
  return consistent({
    ...start,
    objects: start.objects.map(
      (held): ObjectState =>
        held.object.id === "spear"
          ? {
              ...held,
              grip: { left: known(null), right: known("balance") },
              palm: { left: known(null), right: known("over") },
              bearing: known({ is: "clock", hour: 12 }),
              level: known("low"),
              contacts: known([]),
              frame: known("carried"),
            }
          : held,
    ),
    doing: { left: known({ is: "nothing besides" }), right: known({ is: "nothing besides" }) },
    reins: known("left hand"),
    reinZone: known("at its place"),
    gait: known("walk"),
    pace: known("medium"),
    lead: known(null),
    rein: known("left"),
    direction: known("forward"),
  });
}

export const CONTEXT: ActContext = {
  isReins: (id) => id === "reins",
  hold: (id) =>
    id === "two-handed"
      ? {
          hands: "two",
          slots: {
            zone: known("rear"),
            secondZone: known("fore"),
            bearing: known({ is: "clock", hour: 11 }),
            level: known("middle"),
          },
        }
      : id === "couched"
        ? { hands: "one", slots: { zone: known("rear"), contact: known({ with: "arm", degree: "bears" }) } }
        : null,
  movement: (id) =>
    id === "change over"
      ? [actOf("change reins"), actOf("pass", { object: "spear" })]
      : id === "itself"
        ? [actOf("raise", { object: "spear" }), actOf("perform", { movement: "itself" })]
        : null,
};

const SAMPLES: Partial<Record<ValueKind, readonly unknown[]>> = {
  object: ["spear", "sabre", "scabbard", "reins", "nothing known"],
  hold: ["two-handed", "couched", "nothing known"],
  movement: ["change over", "itself", "nothing known"],
  side: ["left", "right", "inside", "outside", "near", "off"].map((to) => ({ to, viewpoint: "rider" })),
  turn: ["left", "right", "inside", "outside"].map((to) => ({ to, viewpoint: "rider" })),
  bearing: [
    { is: "clock", hour: 1 },
    { is: "clock", hour: 9 },
    { is: "toward", what: "the onlookers" },
  ],
  contact: [
    { with: "thigh", degree: "touches" },
    { with: "ground", degree: "bears" },
  ],
  spin: [
    { plane: "level", sense: "clockwise", viewpoint: "rider" },
    { plane: "across", sense: "point over to the left" },
    { plane: "fore and aft", sense: "point forward and down" },
  ],
  count: [
    { is: "times", n: 1 },
    { is: "times", n: 0.5 },
    { is: "until", event: "the end" },
  ],
  place: [{ is: "words", words: "the wall" }],
  length: [{ is: "exact", of: 0.15 }],
  angle: [{ is: "exact", of: 45 }],
  words: ["somehow"],
};

/** Any act whatever: each slot silent, known, one of two, or unknown. */
export const anyAct: fc.Arbitrary<KnownAct> = fc.constantFrom(...VERB_NAMES).chain((verb) => {
  const slots = Object.entries(VERBS[verb].slots as Record<string, ValueKind>).map(([name, kind]) => {
    const values: readonly unknown[] = SAMPLES[kind] ?? domainOf(kind) ?? [];
    const value = fc.constantFrom(...values);
    return fc
      .oneof(
        fc.constant(null),
        value.map((held) => known(held)),
        fc.tuple(value, value).map((both) => oneOf(both)),
        fc.constant(UNKNOWN),
      )
      .map((held) => [name, held] as const);
  });
  return fc
    .tuple(...slots)
    .map((held) => ({ verb, slots: Object.fromEntries(held.filter(([, value]) => value !== null)) }) as KnownAct);
});

/** States that can be reached: any acts, from the rider above or from a beginning of which nothing is known. */
export const anyReachable: fc.Arbitrary<{ start: ControlState; acts: KnownAct[] }> = fc.record({
  start: fc.constantFrom(
    rider([SPEAR, SABRE, SCABBARD, REINS]),
    startState([SPEAR, SABRE, SCABBARD, REINS], "mounted"),
    startState([SPEAR, SCABBARD], "on foot"),
  ),
  acts: fc.array(anyAct, { maxLength: 12 }),
});
