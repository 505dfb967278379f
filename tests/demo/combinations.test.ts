/** tests/demo/combinations.test.ts - which readings of the invented book can be ridden together, by riding every combination
 *  of every exercise: what is forced, what is dead, which pairs exclude each other, and what clashes. The oracle is the ride
 *  itself with its barring rules; no counter is asked. */
import { beforeAll, describe, expect, test } from "vitest";
import type { Crux, Reading } from "../../schema/crux.ts";
import { rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { findingsOf } from "../../shared/ride/rules/index.ts";
import { demoRows } from "../ride/rides.ts";

const { rows, exercises } = demoRows();
const allReadings = (rows.readings ?? []).map(({ value }) => value);

/** A reading for every crux that arises. */
type Combination = readonly Reading[];

const among = (taken: Combination) => (condition: { crux: string; readings: readonly string[] }) =>
  taken.some((reading) => reading.crux === condition.crux && condition.readings.includes(reading.id));

/** Every combination of the cruxes, which come after those they arise from. Ties between readings are not looked at. */
function combinations([crux, ...others]: readonly Crux[], taken: Combination = []): Combination[] {
  if (crux === undefined) return [taken];
  if (!crux.arisesWhen.every(among(taken))) return combinations(others, taken);
  return allReadings
    .filter((reading) => reading.crux === crux.id && reading.status.is !== "ruled out")
    .flatMap((reading) => combinations(others, [...taken, reading]));
}

/** Why it cannot be ridden: step and rule of each bar; "tied" where a reading requires or excludes another. */
function bars(exercise: string, taken: Combination): string[] {
  const tied = taken.some(
    ({ requires, excludes }) => !requires.every(among(taken)) || excludes.some((one) => among(taken)(one)),
  );
  if (tied) return ["tied"];
  const choice = taken.map(({ crux, id }) => ({ crux, reading: id }));
  const { ridden, context } = rideWithContext(rows, exercise, { choice });
  return findingsOf(ridden, context, { compareReadings: false })
    .filter(({ severity, verdict, waived }) => severity === "bars" && verdict === "broken" && waived === null)
    .map(({ stage, rule }) => `step ${ridden.stages[stage]?.number}: ${rule}`);
}

const known = new Map<string, ReturnType<typeof countAll>>();

/** Ridden once an exercise: some have hundreds of combinations. */
function counted(exercise: string): ReturnType<typeof countAll> {
  const held = known.get(exercise) ?? countAll(exercise);
  known.set(exercise, held);
  return held;
}

function countAll(exercise: string) {
  const own = (rows.cruxes ?? [])
    .map(({ value }) => value)
    .filter(({ exercise: of }) => of === exercise || of === null);
  // Cruxes of the whole work that no ride of this exercise is moved by would only double the count.
  const cruxes = own.filter((crux) => crux.exercise !== null || moves(exercise, crux));
  const ridden = combinations(inOrder(cruxes)).map((taken) => ({ taken, bars: bars(exercise, taken) }));
  return { ridden, holding: ridden.filter((one) => one.bars.length === 0).map(({ taken }) => taken) };
}

/** Those that arise from others after them. */
function inOrder(cruxes: readonly Crux[]): Crux[] {
  return [...cruxes].sort((a, b) => a.arisesWhen.length - b.arisesWhen.length);
}

/** Whether some action or step of the exercise waits for the crux. */
function moves(exercise: string, crux: Crux): boolean {
  const elements = (rows.elements ?? [])
    .filter(({ value }) => value.exercise === exercise)
    .map(({ value }) => value.id);
  return (rows.actions ?? []).some(
    ({ value }) => elements.includes(value.owner) && JSON.stringify([value.guard, value.act]).includes(crux.id),
  );
}

/** The words a reading is told by here: as much of its title as tells it apart. */
const has = (taken: Combination, title: string) => taken.some((reading) => reading.title.startsWith(title));

interface Expected {
  all: number;
  holding: number;
  forced: string[];
  dead: string[];
  /** Two readings that each hold, and never together. */
  excluded: [string, string][];
}

const EXPECTED: [name: keyof typeof exercises, expected: Expected][] = [
  ["circle", { all: 4, holding: 4, forced: [], dead: [], excluded: [] }],
  [
    "change",
    {
      all: 4,
      holding: 2,
      forced: ["to the other side, in the same hand"],
      dead: ["to the other hand; the reins change too"],
      excluded: [],
    },
  ],
  [
    "spears",
    {
      all: 216,
      holding: 8,
      forced: ["the left: the reins are somewhere else", "he leaves the wall to the left"],
      dead: [
        "the right: it has just put its spear away",
        "in the left hand: he never moved them",
        "into the ground, in the place of the other",
        "the spear is lowered to the left",
      ],
      excluded: [
        ["beneath his arm", "in his right hand"],
        ["beneath his arm", "he turns the spear over into the right hand"],
        ["in his right hand", "he turns the spear over into the right hand"],
        ["the horse turns to the right", "his own; he rides home with the lesser"],
      ],
    },
  ],
  [
    "boar",
    {
      all: 32,
      holding: 9,
      forced: ["draws it back (retrahit)"],
      dead: ["leaves it (relinquit)"],
      excluded: [
        ["to the right, off the wall", "he lowers the spear and then turns"],
        ["slackened, in the left hand still", "with both hands"],
      ],
    },
  ],
  [
    "knot",
    {
      all: 24,
      holding: 12,
      forced: [],
      dead: ["the horse changes the rein; the spear stays"],
      excluded: [["the reins stay where they are", "the spear goes to the other hand"]],
    },
  ],
];

/** Milliseconds: hundreds of rides, perhaps on a busy machine. */
const A_LONG_RIDE = 120_000;

describe.each(EXPECTED)("of the exercise “%s”", (name, expected) => {
  let { ridden, holding }: ReturnType<typeof countAll> = { ridden: [], holding: [] };
  beforeAll(() => {
    ({ ridden, holding } = counted(exercises[name]));
  }, A_LONG_RIDE);

  test("so many combinations can be ridden", () => {
    expect([ridden.length, holding.length]).toEqual([expected.all, expected.holding]);
  });

  test("the forced readings are in every one, the dead in none, and all others in some", () => {
    const titles = [...new Set(ridden.flatMap(({ taken }) => taken.map(({ title }) => title)))];
    for (const title of titles) {
      const share = holding.filter((taken) => has(taken, title)).length;
      const dead = expected.dead.some((one) => title.startsWith(one));
      const forced = expected.forced.some((one) => title.startsWith(one));
      expect([title, share === 0, share === holding.length]).toEqual([title, dead, forced]);
    }
    for (const one of [...expected.dead, ...expected.forced])
      expect(titles.some((title) => title.startsWith(one))).toBe(true);
  });

  test.runIf(expected.excluded.length > 0)("pairs that exclude each other hold one by one, never together", () => {
    for (const [first, second] of expected.excluded) {
      expect(holding.some((taken) => has(taken, first))).toBe(true);
      expect(holding.some((taken) => has(taken, second))).toBe(true);
      expect(holding.some((taken) => has(taken, first) && has(taken, second))).toBe(false);
    }
  });
});

describe("clashes", () => {
  /** Of the readings taken, those without which it can be ridden: each has to give, or another that holds it back. */
  const holds = (exercise: string, wanted: readonly string[]): boolean =>
    counted(exercise).holding.some((taken) => wanted.every((title) => has(taken, title)));

  test("the reading adopted for the free hand is dead, and says why at three places", () => {
    const adopted = allReadings.find(({ title }) => title.startsWith("the right: it has just put"));
    expect(adopted?.status.is).toBe("adopted");
    const { ridden } = counted(exercises.spears);
    const why = new Set(ridden.filter(({ taken }) => has(taken, adopted?.title ?? "?")).flatMap((one) => one.bars));
    expect(why).toContain("step 5: own-point");
    expect(why).toContain("step 5: asserted-state");
  });

  test("three readings of the two spears hold two by two, and not together", () => {
    const three = ["beneath his arm", "on the neck of the horse", "he turns the spear over into the right hand"];
    expect(holds(exercises.spears, three)).toBe(false);
    expect(holds(exercises.spears, three.slice(0, 2))).toBe(true);
    expect(holds(exercises.spears, three.slice(1))).toBe(true);
    expect(holds(exercises.spears, [three[0] ?? "", three[2] ?? ""])).toBe(false);
  });
});
