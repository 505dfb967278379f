/** Runs and lanes of overlapping marks, coverage, and the word comparison. Rules T23-T28 and T33. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  coverage,
  coveredShare,
  MOST_WORD_CHANGES,
  segments,
  untouchedWords,
  wordDiff,
} from "../../shared/text/index.ts";

const anyRanges = fc.array(
  fc
    .record({ id: fc.constantFrom(..."abcdefgh"), from: fc.nat(20), length: fc.nat(8) })
    .map(({ id, from, length }) => ({ id, from, to: from + length })),
  { maxLength: 10 },
);

describe("segments", () => {
  const shown = (ranges: [string, number, number][]) =>
    segments(ranges.map(([id, from, to]) => ({ id, from, to }))).segments.map(
      ({ from, to, ids }) => `${from}-${to} ${ids.join("")}`,
    );

  it.each([
    ["[T24] one mark", [["a", 2, 5]], ["2-5 a"]],
    [
      "[T24] an overlap",
      [
        ["a", 0, 4],
        ["b", 2, 6],
      ],
      ["0-2 a", "2-4 ab", "4-6 b"],
    ],
    [
      "[T24] bare text between",
      [
        ["a", 0, 1],
        ["b", 3, 4],
      ],
      ["0-1 a", "3-4 b"],
    ],
    [
      "[T24] two pieces that meet are one run",
      [
        ["a", 0, 2],
        ["a", 2, 4],
      ],
      ["0-4 a"],
    ],
    [
      "[T25] a gap cuts the run it stands in",
      [
        ["a", 0, 4],
        ["g", 2, 2],
      ],
      ["0-2 a", "2-2 ag", "2-4 a"],
    ],
    [
      "[T25] a gap at an edge belongs to itself",
      [
        ["a", 0, 2],
        ["g", 2, 2],
      ],
      ["0-2 a", "2-2 g"],
    ],
  ] as [string, [string, number, number][], string[]][])("%s", (_name, ranges, runs) => {
    expect(shown(ranges)).toEqual(runs);
  });

  it("[T24] each unit has exactly the ids that cover it", () => {
    fc.assert(
      fc.property(anyRanges, (ranges) => {
        const runs = segments(ranges).segments.filter(({ from, to }) => from < to);
        for (let unit = 0; unit < 30; unit += 1) {
          const wanted = new Set(ranges.filter(({ from, to }) => from <= unit && unit < to).map(({ id }) => id));
          const here = runs.filter(({ from, to }) => from <= unit && unit < to);
          expect(here.length).toBe(wanted.size === 0 ? 0 : 1);
          expect(new Set(here[0]?.ids ?? [])).toEqual(wanted);
        }
      }),
    );
  });

  it("[T25] every gap is kept", () => {
    fc.assert(
      fc.property(anyRanges, (ranges) => {
        const { segments: runs } = segments(ranges);
        for (const { id, from, to } of ranges) {
          if (from === to)
            expect(runs.some((run) => run.from === from && run.to === from && run.ids.includes(id))).toBe(true);
        }
      }),
    );
  });

  it("[T26] marks that overlap never share a lane, and no lane is left out", () => {
    fc.assert(
      fc.property(anyRanges, (ranges) => {
        const { segments: runs, lanes } = segments(ranges);
        for (const { ids } of runs) expect(new Set(ids.map((id) => lanes.get(id))).size).toBe(ids.length);
        const used = new Set(lanes.values());
        expect([...used].sort((a, b) => a - b)).toEqual([...used].map((_, index) => index));
      }),
    );
  });

  it("[T26] single pieces need no more lanes than the deepest overlap", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(20), fc.integer({ min: 1, max: 8 })), { maxLength: 10 }), (spans) => {
        const { segments: runs, lanes } = segments(
          spans.map(([from, length], id) => ({ id: `m${id}`, from, to: from + length })),
        );
        const deepest = Math.max(0, ...runs.map(({ ids }) => ids.length));
        expect(new Set(lanes.values()).size).toBe(deepest);
      }),
    );
  });

  it("[T26] the order of the marks does not matter", () => {
    fc.assert(
      fc.property(anyRanges, (ranges) => {
        const [one, other] = [segments(ranges), segments([...ranges].reverse())];
        expect(other.segments).toEqual(one.segments);
        expect(new Map([...other.lanes].sort())).toEqual(new Map([...one.lanes].sort()));
      }),
    );
  });
});

describe("coverage", () => {
  it("[T23] counts each unit once, inside the text only", () => {
    expect(
      coverage(10, [
        { from: 2, to: 5 },
        { from: 4, to: 6 },
        { from: 8, to: 99 },
        { from: 3, to: 3 },
      ]),
    ).toBe(6);
    fc.assert(
      fc.property(anyRanges, (ranges) => {
        const covered = Array.from({ length: 15 }, (_, unit) =>
          ranges.some(({ from, to }) => from <= unit && unit < to),
        );
        expect(coverage(15, ranges)).toBe(covered.filter(Boolean).length);
      }),
    );
  });

  it("[T23] leaves white space out of the share", () => {
    expect(coveredShare("ab  cd\n", [{ from: 0, to: 3 }])).toBe(0.5);
    expect(
      coveredShare("ab cd", [
        { from: 0, to: 2 },
        { from: 3, to: 5 },
      ]),
    ).toBe(1);
    expect(coveredShare(" \n", [])).toBe(1);
  });
});

describe("untouchedWords", () => {
  const left = (text: string, ranges: readonly { from: number; to: number }[]) => {
    const { words, stretches } = untouchedWords(text, ranges);
    return `${words}: ${stretches.map(({ from, to }) => text.slice(from, to)).join(" | ")}`;
  };
  it.each([
    ["nothing marked", "He rides on.", [], "3: He rides on"],
    ["one word marked", "He rides on.", [[3, 8]], "3: He | on"],
    ["a word touched in part", "He rides on.", [[5, 6]], "3: He | on"],
    [
      "only a gap and signs marked",
      "He, rides",
      [
        [1, 1],
        [2, 4],
      ],
      "2: He, rides",
    ],
    ["no words", " \n", [], "0: "],
    ["a joined word is one", "the horse’s ears", [[0, 5]], "3: ears"],
  ] as [string, string, [number, number][], string][])("[T33] %s", (_why, text, ranges, shown) => {
    expect(
      left(
        text,
        ranges.map(([from, to]) => ({ from, to })),
      ),
    ).toBe(shown);
  });

  it("[T33] counts as one who asks of each word whether a marked unit stands in it", () => {
    const anyText = fc.string({ unit: fc.constantFrom("a", "b", " ", ",", "é"), maxLength: 24 });
    fc.assert(
      fc.property(anyText, anyRanges, (text, ranges) => {
        const marked = (at: number) => ranges.some(({ from, to }) => from <= at && at < to);
        const bare = [...text.matchAll(/[^ ,]+/gu)].filter(
          ({ index, 0: word }) => ![...word].some((_, unit) => marked(index + unit)),
        );
        const found = untouchedWords(text, ranges).stretches.flatMap(({ words }) => words);
        expect(found).toEqual(bare.map(([word]) => word));
      }),
    );
  });
});

describe("wordDiff", () => {
  const line = (before: string, after: string) =>
    wordDiff(before, after)
      .map(({ kind, text }) => ({ same: text, removed: `[-${text}-]`, added: `[+${text}+]` })[kind])
      .join("");

  it.each([
    ["the spear low", "the lance low", "the [-spear-][+lance+] low"],
    ["turn left", "turn left again", "turn left[+ again+]"],
    ["", "a", "[+a+]"],
    ["a", "", "[-a-]"],
    ["same", "same", "same"],
    ["waḍʻ al-rumḥ", "waḍʿ al-rumḥ", "[-waḍʻ-][+waḍʿ+] al-rumḥ"],
  ])("[T27] %j to %j", (before, after, shown) => {
    expect(line(before, after)).toBe(shown);
  });

  it("[T27] the runs give back both wordings", () => {
    const anyWords = fc.string({ unit: fc.constantFrom("a", "b", " ", "\n", ",", "\u0301", "🐎"), maxLength: 40 });
    fc.assert(
      fc.property(anyWords, anyWords, (before, after) => {
        const runs = wordDiff(before, after);
        const joined = (not: string) =>
          runs
            .filter(({ kind }) => kind !== not)
            .map(({ text }) => text)
            .join("");
        expect(joined("added")).toBe(before);
        expect(joined("removed")).toBe(after);
        expect(runs.every((run, index) => run.text !== "" && run.kind !== runs[index - 1]?.kind)).toBe(true);
      }),
    );
  });

  it("[T28] two long texts with nothing in common are one replacement", () => {
    const [before, after] = ["a", "b"].map((name) =>
      Array.from({ length: MOST_WORD_CHANGES + 1 }, (_, index) => name + index).join("."),
    );
    expect(wordDiff(`x ${before} y`, `x ${after} y`).map(({ kind }) => kind)).toEqual([
      "same",
      "removed",
      "added",
      "same",
    ]);
  });
});
