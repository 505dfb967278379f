/** tests/ride-puzzle/nearest-to-first.test.ts - which readings are shown of what nobody settled, in the invented book and against
 *  every combination tried by brute force. */
import { describe, expect, test } from "vitest";
import { answerDecide, exercisePuzzle, nearestToFirst } from "../../shared/ride/puzzle/index.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { demoRows } from "../ride/rides.ts";

const { rows, exercises } = demoRows();

function weigh(exercise: string) {
  const weighed = exercisePuzzle(rows, [exercise], { way: "mounted" });
  const settled = weighed.cruxes.flatMap(({ id, readings }) => {
    const adopted = readings.find(({ status }) => status === "adopted");
    return adopted === undefined ? [] : [{ crux: id, reading: adopted.id }];
  });
  const open = weighed.cruxes.map(({ id }) => id).filter((id) => settled.every(({ crux }) => crux !== id));
  return { weighed, taken: settled, open };
}
const titleOf = (reading: string) => rows.readings?.find(({ value }) => value.id === reading)?.value.title;

describe("[P15] the readings that are shown", () => {
  test("in the second exercise the first reading cannot be ridden, so the second is shown; nothing bars it then", () => {
    const { weighed, taken, open } = weigh(exercises.change);
    const shown = nearestToFirst(weighed, { taken, open });
    expect(shown?.map(({ first, reading }) => [first, reading].map(titleOf))).toEqual([
      ["to the other hand; the reins change too", "to the other side, in the same hand"],
    ]);
    const preferred = new Map(shown?.map(({ crux, reading }) => [crux, reading]));
    const barred = (options: object) =>
      rideExercise(rows, exercises.change, options).findings.filter(({ severity }) => severity === "bars");
    expect(barred({})).not.toEqual([]);
    expect(barred({ preferred })).toEqual([]);
  });

  test("a reading that is shown is not settled by that, and one that is chosen goes before it", () => {
    const { weighed, taken, open } = weigh(exercises.change);
    const [shown] = nearestToFirst(weighed, { taken, open }) ?? [];
    if (shown === undefined) throw new Error("Another reading is shown.");
    const preferred = new Map([[shown.crux, shown.reading]]);
    const words = rideExercise(rows, exercises.change, { preferred }).supplied.join(" ");
    expect(words).toContain("shown as ‘to the other side, in the same hand’; not settled.");
    const choice = [{ crux: shown.crux, reading: shown.first }];
    expect(rideExercise(rows, exercises.change, { preferred, choice })).toEqual(
      rideExercise(rows, exercises.change, { choice }),
    );
    expect(
      nearestToFirst(weighed, { taken: [...taken, ...choice], open: open.filter((id) => id !== shown.crux) }),
    ).toBe(null);
  });

  test("where what is adopted cannot be ridden there is nothing better than the first", () => {
    const { weighed, taken, open } = weigh(exercises.spears);
    expect(answerDecide(weighed, { picks: taken, asAdopted: false, without: [] }).holding).toBe("0");
    expect(nearestToFirst(weighed, { taken, open })).toBe(null);
  });

  test("with nothing taken it is the first of all combinations that holds, in the order of the exercise", () => {
    for (const exercise of Object.values(exercises)) {
      const { weighed } = weigh(exercise);
      const counted = new Set(
        answerDecide(weighed, { picks: [], asAdopted: false, without: [] }).shares.map(({ crux }) => crux),
      );
      const cruxes = weighed.cruxes.filter(({ id }) => counted.has(id));
      const shown = nearestToFirst(weighed, { taken: [], open: cruxes.map(({ id }) => id) });
      const found = firstHolding(
        cruxes.map(({ id, readings }) => ({ id, readings: readings.filter(({ status }) => status !== "ruled out") })),
        (picks) => answerDecide(weighed, { picks, asAdopted: false, without: [] }).holding !== "0",
      );
      const inPlace = new Map(shown?.map(({ crux, reading }) => [crux, reading]));
      expect(cruxes.map(({ id, readings }) => inPlace.get(id) ?? readings[0]?.id)).toEqual(
        found.map(({ reading }) => reading),
      );
    }
  });
});

interface Open {
  id: string;
  readings: readonly { id: string }[];
}
interface Picked {
  crux: string;
  reading: string;
}

/** Every combination in the order of ranks, the last crux turning fastest, until one holds. */
function firstHolding(cruxes: readonly Open[], holds: (picks: Picked[]) => boolean): Picked[] {
  const tried = (at: number, picks: Picked[]): Picked[] | null => {
    const crux = cruxes[at];
    if (crux === undefined) return holds(picks) ? picks : null;
    for (const { id } of crux.readings) {
      const found = tried(at + 1, [...picks, { crux: crux.id, reading: id }]);
      if (found !== null) return found;
    }
    return null;
  };
  return tried(0, []) ?? [];
}
