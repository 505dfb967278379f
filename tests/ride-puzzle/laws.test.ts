/** tests/ride-puzzle/laws.test.ts - laws of exercises as puzzles, over exercises drawn at random; a failure prints its seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Kind, Rows } from "../../schema/record.ts";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import {
  answerDecide,
  type DecideAsk,
  exercisePuzzle,
  PuzzleMemory,
  type WeighOptions,
} from "../../shared/ride/puzzle/index.ts";
import { anyExercise, type Drawn, exerciseFrom } from "./any-exercise.ts";
import { mirroredRows } from "./mirrored-rows.ts";
import { expectAsRidden } from "./whole-rides.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };
const answered = (rows: Rows, exercise: string, options: WeighOptions = {}) =>
  answerDecide(exercisePuzzle(rows, [exercise], options), ASK);

describe("every exercise as a puzzle", () => {
  test("[P1] is counted as the whole ride has it, reading by reading", { timeout: 240_000 }, () => {
    const seen = { assignments: 0, holding: 0, surely: 0 };
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const { rows, exercise } = exerciseFrom(drawn);
        const { assignments, holding, surely } = expectAsRidden(rows, [exercise]);
        seen.assignments += assignments;
        seen.holding += holding;
        seen.surely += surely;
      }),
      { numRuns: 150 },
    );
    // That both happen often, so that neither is compared with nothing.
    expect(seen.assignments).toBeGreaterThan(250);
    expect(Math.min(seen.holding, seen.surely, seen.assignments - seen.holding)).toBeGreaterThan(30);
  });

  test("[P2] is counted by the fast count as by trying everything", { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const { rows, exercise } = exerciseFrom(drawn);
        const weighed = exercisePuzzle(rows, [exercise]);
        const { holding, surely, all } = answerDecide(weighed, ASK);
        const plain = countByBruteForce(weighed.puzzle);
        expect([holding, surely, all]).toEqual([plain.holding, plain.surelyHolding, plain.all].map(String));
      }),
      { numRuns: 120 },
    );
  });

  test("[P11] shares of a crux come to one, and what is forced has all of it", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const { rows, exercise } = exerciseFrom(drawn);
        const { shares } = answered(rows, exercise);
        for (const crux of new Set(shares.map((one) => one.crux))) {
          const own = shares.filter((one) => one.crux === crux && one.sameAs === null);
          const some = own.flatMap(({ share }) => share ?? []);
          if (some.length > 0) expect(some.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 6);
          for (const { verdict, share } of own) {
            if (verdict === "forced") expect(share).toBe(1);
            if (verdict === "dead") expect(share ?? 0).toBe(0);
          }
        }
      }),
      { numRuns: 80 },
    );
  });

  test("[P5] is answered the same with what was ridden for another one", { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(anyExercise, anyExercise, (before, drawn) => {
        const memory = new PuzzleMemory();
        const [first, second] = [exerciseFrom(before), exerciseFrom(drawn)];
        answered(first.rows, first.exercise, { memory });
        const fresh = answered(second.rows, second.exercise);
        expect(answered(second.rows, second.exercise, { memory })).toEqual(fresh);
        expect(answered(second.rows, second.exercise, { memory })).toEqual(fresh);
      }),
      { numRuns: 60 },
    );
  });

  test("is answered the same in whatever order its rows come", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const { rows, exercise } = exerciseFrom(drawn);
        const turned = Object.fromEntries(
          (Object.entries(rows) as [Kind, unknown[]][]).map(([kind, list]) => [kind, [...list].reverse()]),
        ) as Rows;
        expect(answered(turned, exercise)).toEqual(answered(rows, exercise));
      }),
      { numRuns: 40 },
    );
  });

  test("[P1] a rule more never raises the count", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyExercise, (drawn) => {
        const more = exerciseFrom({ ...drawn, bars: [...drawn.bars, 0, 7, 13, 20] });
        const fewer = exerciseFrom({ ...drawn, bars: drawn.bars.slice(0, 1) });
        expect(BigInt(answered(more.rows, more.exercise).holding)).toBeLessThanOrEqual(
          BigInt(answered(fewer.rows, fewer.exercise).holding),
        );
      }),
      { numRuns: 40 },
    );
  });

  test("the mirrored world keeps the count", { timeout: 240_000 }, () => {
    fc.assert(fc.property(anyExercise, expectMirrored), { numRuns: 100 });
  });

  test("[R22] the mirrored world keeps the count where it comes to the middle of the wall", () => {
    // Under a reading without a figure the horse goes straight on from the middle of the foot to that of the head.
    const act = { verb: 0, held: 0, values: 0, guard: 1, timing: 0 };
    const step = { is: 0, guard: 1, acts: [act], range: 0, manner: 0, times: 0 };
    const carries = { ...step, acts: [{ ...act, verb: 14, held: 1 }] };
    expectMirrored({
      cruxes: [{ readings: 2, arises: 0, tied: 0, ruledOut: false }],
      steps: [step, carries, step, step],
      ...{ standing: 0, bars: [], waived: [], exception: 1 },
    });
  });
});

function expectMirrored(drawn: Drawn): void {
  const { rows, exercise } = exerciseFrom(sidesSaid(drawn));
  const [one, other] = [answered(rows, exercise), answered(mirroredRows(rows), exercise)];
  expect([other.holding, other.surely, other.all]).toEqual([one.holding, one.surely, one.all]);
}

/** Every side is said, and as left or right: what is supplied where the text is silent, or where the inside is not told by
 *  the rein, takes the left first. */
function sidesSaid(drawn: Drawn): Drawn {
  return {
    ...drawn,
    steps: drawn.steps.map((step) => ({
      ...step,
      is: 0,
      acts: step.acts.map((act) => ({
        ...act,
        values: act.values % 2 === 0 ? 5 : 9,
        held: act.held % 2 === 0 ? 12 : 1,
      })),
    })),
  };
}
