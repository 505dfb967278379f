/** tests/ride-rules/when.test.ts - what is told when: changes done together, moments that are not said, what lasts, what is
 *  supplied. */
import { describe, expect, test } from "vitest";
import { known } from "../../shared/hands/known.ts";
import type { Finding } from "../../shared/ride/ridden.ts";
import { findingsOf } from "../../shared/ride/rules/index.ts";
import { act, bend, type Made, madeRide, on, riderWith } from "./made-ride.ts";

function findings(made: Made): Finding[] {
  const { ridden, context } = madeRide(made);
  return findingsOf(ridden, context);
}
const told = (made: Made): string[] =>
  findings(made).map(({ rule, stage, verdict }) => `${rule} at ${stage}: ${verdict}`);

const pass = (at: number | null) => act("pass", { to: "left", zone: "balance" }, at, "he gives it to the other");
const change = (at: number | null) => act("change reins", { to: "right" }, at);
const forwardLeft = { bearing: { is: "clock", hour: 11 } };
const lowAhead = riderWith({}, { bearing: known({ is: "clock", hour: 12 }), level: known("low") });

const CASES: [title: string, made: Made, expected: string[]][] = [
  ["[V6] hands that change over do it together", { steps: [{ acts: [pass(null), change(null)] }] }, []],
  ["[V6] one is timed, the other not: still together", { steps: [{ acts: [pass(0.5), change(null)] }] }, []],
  [
    "[V6] timed apart, the hand has both for a while",
    { steps: [{ acts: [pass(0.2), change(0.8)] }] },
    ["one-thing at 0: broken"],
  ],
  [
    "[V6] a step that ends with both in one hand",
    { steps: [{ acts: [pass(null)] }, { acts: [change(null)] }] },
    ["one-thing at 0: broken"],
  ],
  [
    "[V5] what lasts is told where it begins",
    { steps: [{ acts: [pass(null)] }, { acts: [act("wait")] }, { acts: [act("wait")] }] },
    ["one-thing at 0: broken"],
  ],
  [
    "[V5] what comes again after it was mended is told again",
    { steps: [{ acts: [pass(null)] }, { acts: [change(null)] }, { acts: [act("change reins", { to: "left" })] }] },
    ["one-thing at 0: broken", "one-thing at 2: broken"],
  ],
  [
    "[V7] carried there before the bend",
    { steps: [{ acts: [act("carry", forwardLeft, 0)], goes: [bend("left")] }], start: lowAhead },
    ["own-point at 0: broken"],
  ],
  [
    "[V7] carried there at the middle of the bend",
    { steps: [{ acts: [act("carry", forwardLeft, 0.5)], goes: [bend("left")] }], start: lowAhead },
    ["own-point at 0: broken"],
  ],
  [
    "[V7] carried there at some moment of the step: a question",
    { steps: [{ acts: [act("carry", forwardLeft)], goes: [bend("left")] }], start: lowAhead },
    ["own-point at 0: cannot tell"],
  ],
  [
    "[V7] taken away at some moment of the step: in time",
    {
      steps: [{ acts: [act("raise", { level: "high" })], goes: [bend("left")] }],
      start: riderWith({}, { bearing: known({ is: "clock", hour: 11 }), level: known("low") }),
    },
    [],
  ],
  [
    "[V20] a bend of 14° is no turn",
    {
      steps: [{ goes: [bend("left", 12, 14)] }],
      start: riderWith({}, { bearing: known({ is: "clock", hour: 11 }), level: known("low") }),
    },
    [],
  ],
  [
    "[V20] a point on high may be turned into",
    {
      steps: [{ goes: [bend("left")] }],
      start: riderWith({}, { bearing: known({ is: "clock", hour: 11 }), level: known("high") }),
    },
    [],
  ],
  [
    "[V20] what is planted is left out",
    {
      steps: [{ acts: [act("plant", {}, 0)], goes: [bend("left")] }],
      start: riderWith({}, { bearing: known({ is: "clock", hour: 11 }), level: known("low") }),
    },
    [],
  ],
  [
    "[V8] a supplied join is not judged, but told",
    {
      steps: [{ goes: [bend("left", 12, 90, { joins: true }), on(5)] }],
      start: riderWith({}, { bearing: known({ is: "clock", hour: 11 }), level: known("low") }),
    },
    ["joins-shown at 0: broken"],
  ],
  [
    "[V22] the lead is asked for by the bend",
    {
      steps: [
        {
          acts: [act("go at", { gait: "canter", lead: "outside" }, 0)],
          goes: [bend("left", 20, 360, { gait: "canter", speed: 3.9 })],
        },
      ],
    },
    [],
  ],
  [
    "[V13] a hold that places the rein hand keeps the reins",
    {
      steps: [{ acts: [act("hold", { hold: "both", hand: "right" })] }],
      holds: {
        both: { name: "both", hands: "two", slots: { zone: "balance", secondZone: "fore", reinZone: "at its place" } },
      },
    },
    [],
  ],
  [
    "[V10] on foot nobody asks for reins",
    {
      steps: [{ acts: [act("hold", { hold: "both", hand: "right" })] }],
      way: "on foot",
      start: riderWith({ way: "on foot", reins: known("away") }),
      holds: { both: { name: "both", hands: "two", slots: { zone: "balance", secondZone: "fore" } } },
    },
    [],
  ],
];

describe("when things are told", () => {
  for (const [title, made, expected] of CASES) test(title, () => expect(told(made)).toEqual(expected));

  test("[V5] what lasts is told with its end", () => {
    const [finding] = findings({ steps: [{ acts: [pass(1)] }, { acts: [act("wait")] }, { acts: [act("wait")] }] });
    expect(finding?.from).toBeCloseTo(10 / 1.7);
    expect(finding?.to).toBeCloseTo(30 / 1.7);
  });

  test("a long quotation is cut at a word", () => {
    const words = `he gives it to the other ${"and again to the other ".repeat(10)}`;
    const [finding] = findings({ steps: [{ acts: [act("pass", { to: "left", zone: "balance" }, 1, words)] }] });
    const quote = /“([^”]*)”/.exec(finding?.sentence ?? "")?.[1] ?? "";
    expect(quote).toMatch(/ …$/);
    expect(quote.length).toBeLessThanOrEqual(112);
    expect(words.startsWith(quote.slice(0, -2))).toBe(true);
  });
});
