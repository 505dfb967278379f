/** tests/ride/mirror.test.ts - the mirrored world and the other rein: acts, states, words and whole rides. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mirrorPose } from "../../shared/ground/plane.ts";
import type { ActContext } from "../../shared/hands/apply.ts";
import { applyAct } from "../../shared/hands/apply.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { mirrorAct, mirrorHold, mirrorHour } from "../../shared/ride/mirror-act.ts";
import { mirrorRidden } from "../../shared/ride/mirror-ridden.ts";
import { mirrorState } from "../../shared/ride/mirror-state.ts";
import { mirrorWords } from "../../shared/ride/mirror-words.ts";
import { poseAt } from "../../shared/ride/moments.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { anyAct, CONTEXT, rider, SABRE, SCABBARD, SPEAR } from "../hands/riders.ts";
import { demoRows } from "./rides.ts";

const stays = (station: string): string => station;

describe("acts and states", () => {
  test.each([
    [1, 11],
    [3, 9],
    [6, 6],
    [12, 12],
  ])("[R11] hour %i is hour %i", (hour, other) => {
    expect([mirrorHour(hour), mirrorHour(other)]).toEqual([other, hour]);
  });

  test("[R11] an act mirrored twice is the act, to the byte", () => {
    fc.assert(
      fc.property(anyAct, (act) => {
        expect(JSON.stringify(mirrorAct(mirrorAct(act, stays), stays))).toBe(JSON.stringify(act));
      }),
    );
  });

  test("[R11] a state mirrored twice is the state, to the byte", () => {
    fc.assert(
      fc.property(fc.array(anyAct, { maxLength: 6 }), (acts) => {
        const state = reached(acts, CONTEXT);
        expect(JSON.stringify(mirrorState(mirrorState(state)))).toBe(JSON.stringify(state));
      }),
    );
  });

  test("[R11] acting mirrored gives the mirrored state", () => {
    fc.assert(
      fc.property(fc.array(anyAct, { maxLength: 6 }), (acts) => {
        const mirrored = acts
          .map((act) => mirrorAct(act, stays))
          .reduce((state, act) => applyAct(state, act, MIRRORED), mirrorState(rider([SPEAR, SABRE, SCABBARD])));
        expect(asSets(mirrored)).toEqual(asSets(mirrorState(reached(acts, CONTEXT))));
      }),
      { numRuns: 300 },
    );
  });

  const MIRRORED: ActContext = {
    hold: (id) => {
      const hold = CONTEXT.hold(id);
      return hold === null ? null : mirrorHold(hold, stays);
    },
    movement: (id) => CONTEXT.movement(id)?.map((act) => mirrorAct(act, stays)) ?? null,
    isReins: CONTEXT.isReins,
  };

  function reached(acts: readonly KnownAct[], context: ActContext) {
    return acts.reduce((state, act) => applyAct(state, act, context), rider([SPEAR, SABRE, SCABBARD]));
  }

  /** Values that are one of several, without their order. */
  function asSets(value: unknown): unknown {
    if (Array.isArray(value)) return value.map(asSets);
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value).map(([key, held]) => {
      const list = asSets(held);
      const unordered = key === "values" && Array.isArray(list);
      return [key, unordered ? list.map((one) => JSON.stringify(one)).sort() : list] as const;
    });
    return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
  }
});

describe("words", () => {
  test.each([
    ["circle left, about the well", "circle right, about the well"],
    ["Left of x 3, y -4; then clockwise", "Right of x -3, y -4; then counter-clockwise"],
    ["point forward right (2 o’clock), the near hand", "point forward left (10 o’clock), the off hand"],
    ["the text says “to the left”: it is ridden left", "the text says “to the left”: it is ridden right"],
    ["to the left gate, left", "to the left gate, right"],
    ["x 0, y 2 is left as it is", "x 0, y 2 is right as it is"],
  ])("[R12] %s", (sentence, mirrored) => {
    expect(mirrorWords(sentence, ["the left gate"])).toBe(mirrored);
    expect(mirrorWords(mirrored, ["the left gate"])).toBe(sentence);
  });
});

describe("rides", () => {
  const { rows, exercises } = demoRows();

  for (const [name, exercise] of Object.entries(exercises)) {
    const ridden = rideExercise(rows, exercise, {});
    const mirrored = rideExercise(rows, exercise, { rein: "mirror the world" });

    test(`[R12] ${name}: mirrored twice is the same ride, to the byte`, () => {
      expect(JSON.stringify(mirrorRidden(mirrorRidden(ridden)))).toBe(JSON.stringify(ridden));
      expect(JSON.stringify(mirrored)).not.toBe(JSON.stringify(ridden));
    });

    test(`[R12] ${name}: the mirrored world ends every stage in the mirrored pose, at the same moment`, () => {
      expect(mirrored.timed.times).toEqual(ridden.timed.times);
      for (const [index, { to }] of ridden.stages.entries()) {
        expect(mirrored.stages[index]?.to).toBe(to);
        expect(poseAt(mirrored, to)).toEqual(mirrorPose(poseAt(ridden, to)));
      }
    });

    test(`[R12] ${name}: every verdict is kept, and the left hand does what the right hand did`, () => {
      const verdicts = (of: typeof ridden) => of.findings.map(({ id, verdict, severity }) => [id, verdict, severity]);
      expect(verdicts(mirrored)).toEqual(verdicts(ridden));
      const spans = (of: typeof ridden, key: string) =>
        of.lanes.find((lane) => lane.key === key)?.spans.map(({ from, to, shows }) => [from, to, shows]);
      expect(spans(mirrored, "left hand")).toEqual(spans(ridden, "right hand"));
      expect(spans(mirrored, "horse")).toEqual(spans(ridden, "horse"));
    });

    test(`[R10] ${name}: on the other rein it is as long, and ends on the other side`, () => {
      const other = rideExercise(rows, exercise, { rein: "on the other rein" });
      expect(other.metres).toBeCloseTo(ridden.metres, 2);
      expect(other.timed.duration).toBeCloseTo(ridden.timed.duration, 2);
      expect(other.stages.map(({ mirrored: turned }) => turned)).toEqual(
        ridden.stages.map(({ mirrored: turned }) => !turned),
      );
      expect(other.ground).toEqual(ridden.ground);
    });
  }
});
