/** tests/drill/rank.test.ts - ranks between ranks, and the one comparison everybody sorts by. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Rank } from "../../schema/id.ts";
import { compareRanked, rankBetween, ranksBetween } from "../../shared/rank.ts";

describe("ranks", () => {
  test("however rows are put in, each stands where it was put", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { maxLength: 60 }), (places) => {
        const list: string[] = [];
        for (const place of places) {
          const at = place % (list.length + 1);
          list.splice(at, 0, rankBetween(list[at - 1] ?? null, list[at] ?? null));
        }
        expect(list).toEqual([...list].sort((a, b) => (a < b ? -1 : 1)));
        expect(new Set(list).size).toBe(list.length);
        for (const rank of list) expect(Rank.safeParse(rank).success).toBe(true);
      }),
    );
  });

  test("between equal ranks the same is given back, and the id decides", () => {
    expect(rankBetween("a1", "a1")).toBe("a1");
    expect(ranksBetween("a1", "a1", 2)).toEqual(["a1", "a1"]);
    expect(
      [
        { rank: "a1", id: "c" },
        { rank: "a1", id: "b" },
        { rank: "Zz", id: "d" },
      ].sort(compareRanked),
    ).toEqual([
      { rank: "Zz", id: "d" },
      { rank: "a1", id: "b" },
      { rank: "a1", id: "c" },
    ]);
  });

  test("several at once stand in order between their neighbours", () => {
    const ranks = ["a0", ...ranksBetween("a0", "a1", 20), "a1"];
    expect(ranks).toEqual([...ranks].sort());
    expect(ranksBetween(null, null, 0)).toEqual([]);
  });

  test("neighbours out of order are the caller's mistake", () => {
    expect(() => rankBetween("a2", "a1")).toThrow(
      'A rank can only be made between two ranks in order; got "a2" before "a1".',
    );
    expect(() => ranksBetween(null, null, -1)).toThrow("How many ranks must be a whole number from 0; got -1.");
  });
});
