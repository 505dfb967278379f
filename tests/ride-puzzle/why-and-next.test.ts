/** tests/ride-puzzle/why-and-next.test.ts - why nothing holds, and what is worth asking, in words: on small exercises and the demo. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { count, narrowed, type Pick, type Puzzle } from "../../shared/decide/index.ts";
import {
  answerDecide,
  type DecideAsk,
  exercisePuzzle,
  type ToldMember,
  type WeighedExercise,
  whatNextOf,
  whyNot,
} from "../../shared/ride/puzzle/index.ts";
import { demoRows } from "../ride/rides.ts";
import { anyExercise, exerciseFrom } from "./any-exercise.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };
const EFFORTS = { ask: 1, picture: 1, foot: 3, mounted: 6 };
const { rows, exercises } = demoRows();
const weighed = new Map(Object.values(exercises).map((id) => [id, exercisePuzzle(rows, [id])]));
const titles = new Map(rows.cruxes?.map(({ value }) => [value.title, value.id]));
const readings = new Map(rows.readings?.map(({ value }) => [`${value.crux} ${value.title}`, value.id]));

function pick(crux: string, reading: string): Pick {
  const id = titles.get(crux) ?? "";
  return { crux: id, reading: readings.get(`${id} ${reading}`) ?? "" };
}

/** Whether something holds when these members are kept and every other rule is dropped. */
function holds({ puzzle }: WeighedExercise, target: Pick | null, kept: readonly ToldMember[]): boolean {
  const rules = new Set(kept.flatMap(({ member }) => (member.is === "rule" ? [`${member.stage} ${member.rule}`] : [])));
  const picks = kept.flatMap(({ member }) => (member.is === "pick" ? [member] : []));
  const only: Puzzle = {
    ...puzzle,
    stages: puzzle.stages.map((stage) => ({
      ...stage,
      run: (state, readingOf, without) =>
        stage
          .run(state, readingOf, without)
          .map((way) => ({ ...way, hits: way.hits.filter(({ rule }) => rules.has(`${stage.id} ${rule}`)) })),
    })),
  };
  const { holding } = count(narrowed(only, [...picks, ...(target ? [target] : [])]), { witnesses: 0 });
  return typeof holding === "bigint" ? holding > 0n : holding.lower > 0n;
}

describe("why not", () => {
  const dead = [...weighed].flatMap(([id, one]) =>
    answerDecide(one, ASK)
      .shares.filter(({ verdict }) => verdict === "dead")
      .map(({ crux, reading }) => ({ id, crux, reading })),
  );

  test("the demo has dead readings to explain", () => {
    expect(dead.length).toBeGreaterThan(2);
  });

  test.each(dead)("[P12] every clash of a dead reading is one, and no part of it is: $reading", ({ id, ...target }) => {
    const one = weighed.get(id) as WeighedExercise;
    const { clashes, mustGive, sentence } = whyNot(one, ASK, target);
    expect(clashes.length).toBeGreaterThan(0);
    expect(sentence).toMatch(/^Nothing holds with “.+” read as “.+”\. /);
    for (const clash of clashes) {
      expect(holds(one, target, clash)).toBe(false);
      for (const member of clash) {
        expect(member.words).not.toBe("");
        if (member.member.is === "stated") continue;
        expect(
          holds(
            one,
            target,
            clash.filter((other) => other !== member),
          ),
        ).toBe(true);
      }
    }
    const given = mustGive?.flatMap(({ member }) => (member.is === "rule" ? [member] : [])) ?? [];
    expect(answerDecide(one, { ...ASK, picks: [target], without: given }).holding).not.toBe("0");
  });

  test("[P12] a rule is told by what it finds, with the words of the passage", () => {
    const one = weighed.get(exercises.change) as WeighedExercise;
    const target = pick("The other hand, or the other side", "to the other hand; the reins change too");
    const { clashes, complete, shortest } = whyNot(one, ASK, target);
    expect([complete, shortest]).toEqual([true, true]);
    const told = clashes.flat().filter(({ rule }) => rule === "own-point");
    expect(told.map(({ words }) => words)).toContainEqual(
      expect.stringMatching(/^Step 3, .*: the horse turns right while the point of the spear is forward on the right/),
    );
    expect(told.flatMap(({ quote }) => quote.map((words) => words.quote))).toContain(
      "brings the spear across before him",
    );
  });

  test("something that holds has nothing in its way", () => {
    const one = weighed.get(exercises.circle) as WeighedExercise;
    expect(whyNot(one, ASK, null)).toMatchObject({ clashes: [], sentence: expect.stringMatching(/^Something holds/) });
    const target = pick("Once about, or twice", "once, as in A");
    expect(whyNot(one, ASK, target).sentence).toMatch(/can be ridden: nothing is in the way/);
  });

  test("what is picked is told with the words of its crux", () => {
    const one = weighed.get(exercises.change) as WeighedExercise;
    const taken = pick("The other hand, or the other side", "to the other hand; the reins change too");
    const [clash] = whyNot(one, { ...ASK, picks: [taken] }, null).clashes;
    const member = clash?.find(({ crux }) => crux === taken.crux);
    expect(member?.words).toBe("“The other hand, or the other side” read as “to the other hand; the reins change too”");
    expect(member?.quote.length).toBeGreaterThan(0);
  });

  test("[P9] dropping what is stated only ever adds ways to go on", { timeout: 120_000 }, () => {
    let dropped = 0;
    fc.assert(
      fc.property(anyExercise, fc.nat(), (drawn, salt) => {
        const { rows: plain, exercise } = exerciseFrom(drawn);
        const { puzzle } = exercisePuzzle(allStated(plain), [exercise]);
        const readingOf = (crux: string) => puzzle.cruxes.find(({ id }) => id === crux)?.readings[0] ?? null;
        let states = ["start"];
        for (const { run, stated = [] } of puzzle.stages) {
          const some = stated.filter((_, index) => (salt >> (index % 20)) % 2 === 0);
          const more = new Set(stated.filter((value, index) => some.includes(value) || index % 3 === 0));
          dropped += some.length;
          for (const state of states) {
            const said = run(state, readingOf);
            const fewer = run(state, readingOf, new Set(some));
            const fewest = run(state, readingOf, more);
            for (const [before, after] of [
              [said, fewer],
              [fewer, fewest],
            ] as const)
              for (const way of before)
                expect(after.some((other) => other.state === way.state && within(other.hits, way.hits))).toBe(true);
          }
          states = [...new Set(states.flatMap((state) => run(state, readingOf).map((way) => way.state)))].slice(0, 4);
        }
      }),
      { numRuns: 60 },
    );
    expect(dropped).toBeGreaterThan(50);
  });
});

const within = (hits: readonly { rule: string }[], others: readonly { rule: string }[]): boolean =>
  hits.every(({ rule }) => others.some((other) => other.rule === rule));

/** The same rows with every value stated, whatever states it. */
function allStated(plain: Rows): Rows {
  return JSON.parse(JSON.stringify(plain).replaceAll('"warrant":"supplied"', '"warrant":"stated"'));
}

describe("what next", () => {
  const next = (id: string, ask: DecideAsk = ASK) =>
    whatNextOf(
      weighed.get(id) as WeighedExercise,
      ask,
      (rows.questions ?? []).map(({ value }) => value),
      EFFORTS,
    );

  test("[P13] either answer leaves one way to ride the steps it bears on", () => {
    const [first] = next(exercises.circle);
    expect(first?.sentence).toMatch(/: either answer leaves \d+ of the \d+ ways, and one way to ride step 1\.$/);
    expect(first).toMatchObject({ kind: "crux", gain: 1, settles: 0 });
  });

  test("[P13] what an answer leaves is what the count says under it", () => {
    for (const [id, one] of weighed) {
      for (const { answers, kind, crux, gain } of next(id)) {
        expect(gain).toBeGreaterThan(0);
        if (kind !== "crux" || crux === null) continue;
        const open = one.classes.get(crux)?.map(({ reading }) => reading) ?? [];
        const counts = open.map((reading) => answerDecide(one, { ...ASK, picks: [{ crux, reading }] }));
        const left = counts.filter(({ shares }) =>
          shares.some((share) => share.crux === crux && share.verdict !== "ruled out"),
        );
        expect(left.length).toBeGreaterThan(1);
        for (const answer of answers)
          for (const { crux: decided, reading } of answer.decides) {
            const at = answers.indexOf(answer);
            const under = answerDecide(one, { ...ASK, picks: [{ crux, reading: open[at] ?? "" }] });
            expect(under.shares.find((share) => share.crux === decided && share.reading === reading)?.verdict).toBe(
              "forced",
            );
          }
      }
    }
  });

  test("[P13] what is settled is not asked again", () => {
    const [first] = next(exercises.circle);
    const crux = first?.crux ?? "";
    const reading = (weighed.get(exercises.circle) as WeighedExercise).classes.get(crux)?.[0]?.reading ?? "";
    expect(next(exercises.circle, { ...ASK, picks: [{ crux, reading }] }).map(({ id }) => id)).not.toContain(crux);
  });

  test("[P13] harder means come later for the same gain", () => {
    const cheap = whatNextOf(weighed.get(exercises.spears) as WeighedExercise, ASK, [], {
      ...EFFORTS,
      ask: 1,
      picture: 9,
    });
    const dear = whatNextOf(weighed.get(exercises.spears) as WeighedExercise, ASK, [], {
      ...EFFORTS,
      ask: 9,
      picture: 1,
    });
    expect(cheap[0]?.means).toBe("ask");
    expect(dear[0]?.means).not.toBe("ask");
  });
});
