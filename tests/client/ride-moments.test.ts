/** tests/client/ride-moments.test.ts - which stage a moment lies in, and how a text is cut where cited words begin and end. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Place, type Run, runsOf } from "../../client/ride/lit-words.ts";
import { stageAtTime } from "../../client/ride/stage-at-time.ts";
import type { RiddenStage } from "../../shared/ride/ridden.ts";

const stages = (...times: [from: number, to: number][]) => times.map(([from, to]) => ({ from, to }) as RiddenStage);

describe("the stage at a moment", () => {
  test.each([
    ["before the first", stages([2, 4]), 0, 0],
    ["none at all", [], 3, 0],
    ["where one begins", stages([0, 2], [2, 4]), 2, 1],
    ["within", stages([0, 2], [2, 4], [4, 9]), 3.9, 1],
    ["after the end", stages([0, 2], [2, 4]), 99, 1],
    ["of those that begin together, the last", stages([0, 2], [2, 2], [2, 4]), 2, 2],
  ])("%s", (_, list, seconds, found) => {
    expect(stageAtTime(list, seconds)).toBe(found);
  });
});

const place = (from: number, to: number): Place => ({ passage: "p", text: "t", from, to });
const shown = (text: string, runs: readonly Run[]) =>
  runs
    .map(({ from, to, step, now }) => {
      const words = text.slice(from, to);
      return now ? `[${words}]` : step ? `(${words})` : words;
    })
    .join("");

describe("words that are lit", () => {
  const text = "he turns and halts";
  test.each([
    ["none", [], [], "he turns and halts"],
    ["the step's", [place(0, 8)], [], "(he turns) and halts"],
    ["what is done within the step", [place(0, 18)], [place(3, 8)], "(he )[turns]( and halts)"],
    ["over the edge of the step", [place(0, 5)], [place(3, 8)], "(he )[tu][rns] and halts"],
    ["a gap between words lights none", [], [place(8, 8)], "he turns and halts"],
    ["past the end of the text, as far as there are words", [], [place(13, 99)], "he turns and [halts]"],
  ])("%s", (_, step, now, expected) => {
    expect(shown(text, runsOf(text.length, step, now))).toBe(expected);
  });

  test("the runs are the whole text, in order, and each is lit exactly where a place covers it", () => {
    const places = fc.array(fc.tuple(fc.nat(30), fc.nat(30)).map(([a, b]) => place(Math.min(a, b), Math.max(a, b))));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), places, places, (length, step, now) => {
        const within = (list: Place[]) => list.filter(({ to }) => to <= length);
        const runs = runsOf(length, within(step), within(now));
        expect(runs.map(({ from }) => from)).toEqual([0, ...runs.slice(0, -1).map(({ to }) => to)]);
        expect(runs.at(-1)?.to).toBe(length);
        for (let at = 0; at < length; at += 1) {
          const run = runs.find(({ from, to }) => from <= at && at < to);
          expect(run?.now).toBe(within(now).some(({ from, to }) => from <= at && at < to));
          expect(run?.step).toBe(within(step).some(({ from, to }) => from <= at && at < to));
        }
      }),
    );
  });
});
