/** tests/client/count-words.test.ts - a count in sentences. */
import { describe, expect, test } from "vitest";
import { countSentence, grouped, leftOutSentence, shareWords, ways, wholeOf } from "../../client/decide/count-words.ts";
import type { AnsweredReading, DecideAnswer } from "../../shared/ride/puzzle/index.ts";

function answer(all: string, holding: string, surely: string, upper = holding): DecideAnswer {
  return {
    ...{ exact: upper === holding, why: "", holding, holdingUpper: upper, surely, all, treated: "" },
    ...{ shares: [], excludedPairs: [], apparatus: [], problems: [], peaks: { inPlay: 0, states: 0 } },
    ...{ weighted: null, witness: null, broken: [] },
  };
}

describe("a count in a sentence", () => {
  test.each<[all: string, holding: string, surely: string, sentence: string]>([
    ["216", "12", "4", "Of 216 ways to read it, 12 can be ridden; 4 surely."],
    ["216", "12", "12", "Of 216 ways to read it, 12 can be ridden; surely so."],
    ["216", "12", "0", "Of 216 ways to read it, 12 can be ridden; none surely."],
    ["216", "216", "1", "Of 216 ways to read it, all can be ridden; 1 surely."],
    ["216", "0", "0", "Of 216 ways to read it, none can be ridden."],
    ["1", "1", "1", "There is one way to read it, and it can surely be ridden."],
    ["1", "1", "0", "There is one way to read it, and it can be ridden."],
    ["1", "0", "0", "There is one way to read it, and it cannot be ridden."],
    ["0", "0", "0", "There is no way to read it: what is ruled out or required leaves none."],
    [
      "5308416",
      "1234567890123456789012",
      "4096",
      "Of 5,308,416 ways to read it, 1,234,567,890,123,456,789,012 can be ridden; 4,096 surely.",
    ],
  ])("of %s hold %s, %s surely", (all, holding, surely, sentence) => {
    expect(countSentence(answer(all, holding, surely))).toBe(sentence);
  });

  test("bounds are called bounds", () => {
    expect(countSentence(answer("5308416", "12", "3", "4096"))).toBe(
      "Of 5,308,416 ways to read it, at least 12 and at most 4,096 can be ridden; surely at least 3.",
    );
  });

  test.each([
    ["0", "0", "no way"],
    ["1", "1", "one way"],
    ["999", "999", "999 ways"],
    ["1000", "1,000", "1,000 ways"],
    ["1000000", "1,000,000", "1,000,000 ways"],
  ])("%s is written %s, and told as %s", (count, written, told) => {
    expect(grouped(count)).toBe(written);
    expect(ways(count)).toBe(told);
  });
});

describe("the share of a reading", () => {
  const reading = (id: string, holding: string, sameAs: string | null = null): AnsweredReading => ({
    ...{ crux: "c", reading: id, holding, surely: "0", all: "9", share: null, verdict: "possible" as const, sameAs },
  });

  test("is of what holds where the crux arises; readings of equal effect count once", () => {
    const list = [reading("a", "8"), reading("b", "8", "a"), reading("c", "4")];
    expect(wholeOf(list)).toBe(12n);
    expect(list.map((one) => shareWords(one, wholeOf(list)))).toEqual(["8 of 12", "8 of 12", "4 of 12"]);
  });

  test("is not told where nothing holds", () => {
    const list = [reading("a", "0"), reading("b", "0")];
    expect(shareWords(list[0] as AnsweredReading, wholeOf(list))).toBe("");
  });
});

describe("what is left out of the ways", () => {
  const share = (crux: string, reading: string, verdict: AnsweredReading["verdict"] = "possible"): AnsweredReading => ({
    ...{ crux, reading, holding: "1", surely: "0", all: "1", share: null, verdict, sameAs: null },
  });
  const shares = [
    share("c", "a"),
    share("c", "b", "dead"),
    share("d", "e"),
    share("d", "f"),
    share("d", "g", "ruled out"),
  ];

  test.each<[all: string, sentence: RegExp]>([
    ["4", /^$/],
    ["3", /^Of 4 combinations of readings, 1 is left out because /],
    ["2", /^Of 4 combinations of readings, 2 are left out because .* or do not arise\.$/],
  ])("of four combinations %s are ways", (all, sentence) => {
    expect(leftOutSentence({ ...answer(all, "1", "0"), shares })).toMatch(sentence);
  });

  test("readings of equal effect are one, and bounds tell nothing", () => {
    const alike = [...shares, { ...share("c", "h"), sameAs: "a" }];
    expect(leftOutSentence({ ...answer("4", "1", "0"), shares: alike })).toBe("");
    expect(leftOutSentence({ ...answer("2", "1", "0", "2"), shares })).toBe("");
  });
});
