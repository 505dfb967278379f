/** tests/text/correction.test.ts - one wording put right by another, in the fewest words. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Correction, corrected, correctionOf } from "../../shared/text/correction.ts";

describe("a correction", () => {
  const cases: [name: string, was: string, now: string, told: Correction][] = [
    [
      "of one word",
      "ride a circle to the left about the well",
      "ride a circle to the right about the well",
      { do: "read", was: "left", now: "right" },
    ],
    [
      "by striking out",
      "with the left hand or the right hand",
      "with the left hand",
      { do: "strike out", was: "or the right hand" },
    ],
    [
      "by adding",
      "change the reins to the right hand",
      "change the reins quickly to the right hand",
      { do: "add", now: "quickly", after: "change the reins" },
    ],
    [
      "of words that stand there twice, by the whole line",
      "from the gate to the gate by the wall",
      "from the gate to the stair by the wall",
      { do: "read", was: "from the gate to the gate by the wall", now: "from the gate to the stair by the wall" },
    ],
    ["of a line that is new", "", "halt", { do: "add", now: "halt", after: "" }],
    ["of a line that goes", "halt", "", { do: "strike out", was: "halt" }],
    [
      "of a line with little in common",
      "walk on",
      "halt at the gate",
      { do: "read", was: "walk on", now: "halt at the gate" },
    ],
  ];
  it.each(cases)("[T34] %s", (_name, was, now, told) => {
    expect(correctionOf(was, now)).toEqual(told);
  });

  it("[T35] gives the newer line to whoever makes it in the older one", () => {
    const word = fc.constantFrom("the", "left", "hand", "takes", "$&", "reins", "and");
    const line = fc.array(word, { minLength: 1, maxLength: 12 }).map((words) => words.join(" "));
    fc.assert(
      fc.property(line, line, (was, now) => {
        if (was === now) return;
        expect(corrected(was, correctionOf(was, now))).toBe(now);
      }),
    );
  });
});
