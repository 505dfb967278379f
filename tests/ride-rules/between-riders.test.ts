/** tests/ride-rules/between-riders.test.ts - what is found between riders: touching, too near, a point too near, apart. */
import { describe, expect, test } from "vitest";
import type { Rule } from "../../schema/riding.ts";
import { pathOf } from "../../shared/ground/path.ts";
import { straight } from "../../shared/ground/piece.ts";
import { TOLERANCE } from "../../shared/ground/plane.ts";
import { type CarriedPoint, type Rider, USUAL_BODY } from "../../shared/ground/riders.ts";
import { timeAtOneSpeed } from "../../shared/ground/timed-path.ts";
import { findingsBetween, type RiderOfRide, RULES_TABLE } from "../../shared/ride/rules/index.ts";
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
        expect(sentence).toMatch(/^After [\d.]+ s.*Anna.*Bero.*\.$/);
      }
    });
  }

  test("the sentence says when, who, how near and what to do", () => {
    const [finding] = findingsBetween([upAt("Anna", 0), upAt("Bero", 2)], []);
    expect(finding?.sentence).toMatch(
      /^After 0 s, at step 1 of Anna: Anna and Bero come within 1.2 m of each other; 2.44 m are to lie between them, (at|near|toward|in) .+\. Start one of them later, or give the two more ground\.$/,
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
