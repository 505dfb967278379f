/** tests/ride-rules/between-riders.test.ts - what is found between riders: touching, too near, a point too near, apart. */
import { describe, expect, test } from "vitest";
import type { Rule } from "../../schema/riding.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { pathOf } from "../../shared/ground/path.ts";
import { straight } from "../../shared/ground/piece.ts";
import { TOLERANCE } from "../../shared/ground/plane.ts";
import { type CarriedPoint, type Rider, USUAL_BODY } from "../../shared/ground/riders.ts";
import { timeAtOneSpeed } from "../../shared/ground/timed-path.ts";
import { gapIn } from "../../shared/ride/rules/gap-words.ts";
import {
  findingsBetween,
  type GapAsked,
  gapsAsked,
  type RiderOfRide,
  RULES_TABLE,
} from "../../shared/ride/rules/index.ts";
import { RideBuilder } from "../ride/build-ride.ts";
import { madeRide } from "./made-ride.ts";

const { ridden } = madeRide({ steps: [{}, {}] });

/** A rider up the ground at x, 20 m at 2 m/s. */
function upAt(name: string, x: number, starts = 0, points: CarriedPoint[] = []): RiderOfRide {
  const path = pathOf([straight({ x, y: 0 }, { x, y: 20 })], TOLERANCE);
  const rider: Rider = {
    name,
    timed: timeAtOneSpeed(path, 2),
    starts,
    body: USUAL_BODY,
    points,
    counts: "while riding",
  };
  return { rider, ridden };
}

const spear = (left: number): CarriedPoint => ({ name: "spear", moments: [{ seconds: 0, ahead: 0, left }] });

describe("between riders", () => {
  const cases: [title: string, riders: RiderOfRide[], codes: string[]][] = [
    ["one alone", [upAt("Anna", 0)], []],
    ["5 m apart", [upAt("Anna", 0), upAt("Bero", 5)], []],
    ["[V61] 2 m apart", [upAt("Anna", 0), upAt("Bero", 2)], ["bodies-apart"]],
    ["[V60] one in the other", [upAt("Anna", 0), upAt("Bero", 0.5)], ["bodies-clear"]],
    ["[V62] a point 0.4 m off", [upAt("Anna", 0, 0, [spear(-4.2)]), upAt("Bero", 5)], ["points-clear"]],
    ["a point 2 m off", [upAt("Anna", 0, 0, [spear(-2.6)]), upAt("Bero", 5)], []],
  ];
  for (const [title, riders, codes] of cases) {
    test(title, () => {
      const findings = findingsBetween(riders, []);
      expect(findings.map(({ rule }) => rule)).toEqual(codes);
      for (const { sentence, severity, rule } of findings) {
        expect(severity).toBe(RULES_TABLE.find(({ code }) => code === rule)?.severity);
        expect(sentence).toMatch(/^At \d+:\d\d.*Anna.*Bero.*\.$/);
      }
    });
  }

  test("the sentence says when, who, how near and what to do", () => {
    const [finding] = findingsBetween([upAt("Anna", 0), upAt("Bero", 2)], []);
    expect(finding?.sentence).toMatch(
      /^At 0:00, in step 1 of Anna: Anna and Bero come within 1.2 m of each other; 2.44 m are to lie between them, (at|near|toward|in) .+\. Start one of them later, or give the two more ground\.$/,
    );
  });

  test("the work sets the severity, or turns it off", () => {
    const row = (severity: Rule["severity"]) => [
      { id: "row", code: "bodies-apart", severity, support: [] } as unknown as Rule,
    ];
    const pair = [upAt("Anna", 0), upAt("Bero", 2)];
    expect(findingsBetween(pair, row("notes")).map(({ severity }) => severity)).toEqual(["notes"]);
    expect(findingsBetween(pair, row("off"))).toEqual([]);
  });
});

describe("[V63] a gap in words", () => {
  const length = 1.3 + 1.14;
  test.each<[string, number | null, string?]>([
    ["keep two lengths behind the leader", 2 * length, "about"],
    ["at least a horse’s length from the horse in front", length, "at least"],
    ["no nearer to each other than 3 m", 3, "at least"],
    ["within ten paces of the leader, and behind", 8, "at most"],
    ["let the riders keep a gap of 6,5 metres", 6.5, "about"],
    ["ten feet apart, one rider after another", 3.048, "about"],
    ["keep the spear two metres from the wall", null],
    ["ride two laps behind the leader", null],
    ["two lengths behind, or three lengths, the leader", null],
    ["keep behind the leader", null],
  ])("%s", (words, metres, is) => {
    const gap = gapIn(words, ["the leader", "the pursuer"]);
    if (metres === null) expect(gap).toBeNull();
    else expect(gap).toEqual({ metres: expect.closeTo(metres, 9), is });
  });
});

describe("[V63] a gap that the text asks for", () => {
  /** Leader and pursuer on one line, so many seconds apart at 2 m/s: 2 m a second less a horse's length and roundness. */
  const between = (seconds: number): number => 2 * seconds - 1.3 - 1.14 - 0.8;
  const follow = (seconds: number): RiderOfRide[] => [
    { ...upAt("Anna", 0), role: "the leader" },
    { ...upAt("Bero", 0, seconds), role: "the pursuer" },
  ];
  const asks = (metres: number, is: "at least" | "at most" | "about", role = "the pursuer"): GapAsked => ({
    element: "demand",
    demand: "so far behind the leader",
    gap: { metres, is },
    role,
    over: new Set(ridden.stages.map(({ element }) => element)),
    citations: [],
  });
  const told = (riders: RiderOfRide[], gap: GapAsked, rules: Rule[] = []): string[] =>
    findingsBetween(riders, rules, [gap]).flatMap(({ rule, sentence }) => (rule === "gap-kept" ? [sentence] : []));

  test.each<[string, number, GapAsked, boolean]>([
    ["at least, and there is more", 4, asks(3, "at least"), true],
    ["at least, and there is less", 3, asks(3, "at least"), false],
    ["at most, and there is less", 3, asks(3, "at most"), true],
    ["at most, and there is more", 4, asks(3, "at most"), false],
    ["about, a little out", 4, asks(between(4) * 1.2, "about"), true],
    ["about, far out", 4, asks(between(4) * 1.5, "about"), false],
    ["without a role: to the one before", 3, asks(3, "at least", ""), false],
    ["of a role that nobody has", 3, asks(3, "at least", "the groom"), true],
  ])("%s", (_, seconds, gap, kept) => {
    expect(told(follow(seconds), gap)).toHaveLength(kept ? 0 : 1);
  });

  test("the sentence says who has what to whom, and what was asked", () => {
    expect(told(follow(3), asks(3, "at least"))).toEqual([
      "At 0:03: Bero has 2.8 m to Anna, where the text asks for at least 3 m (“so far behind the leader”). Let him set out later, or ride at another pace.",
    ]);
  });

  test("it can be set aside for the work", () => {
    const off = { id: "r", work: "w", code: "gap-kept", severity: "off", support: [] } as unknown as Rule;
    expect(told(follow(3), asks(3, "at least"), [off])).toEqual([]);
  });

  test("is read from the demands of an exercise", () => {
    const made = new RideBuilder({ width: 20, length: 40 });
    const leads = made.step("he leads", made.home, { role: "the leader" });
    const follows = made.step("he follows", made.home, { role: "the pursuer" });
    made.element("keep back", made.home, {
      is: "advice",
      role: "the pursuer",
      demand: "Let him keep two lengths behind the leader.",
      from: follows,
      to: null,
      rule: null,
    });
    const rows = made.rows();
    const elements = (rows.elements ?? []).map(({ value }) => value);
    const [asked, another] = gapsAsked(elements, compileDrill(rows, made.home));
    expect(another).toBeUndefined();
    expect(asked).toMatchObject({ role: "the pursuer", gap: { is: "about" } });
    expect([asked?.over.has(leads), asked?.over.has(follows)]).toEqual([false, true]);
  });
});
