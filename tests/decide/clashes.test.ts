/** tests/decide/clashes.test.ts - clashes and what must give, against every subset of the members. Rules N11-N13. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  clashes,
  countByBruteForce,
  type Member,
  narrowed,
  type Pick,
  type Puzzle,
  whatMustGive,
  withoutRules,
} from "../../shared/decide/index.ts";
import { anyClashing, barringStage, plainCrux, puzzleOf } from "./puzzles.ts";

const told = (member: Member): string => JSON.stringify(member);
const toldSet = (members: readonly Member[]): string => members.map(told).sort().join(" + ");

/** Whether something holds that takes the target when only these members are kept: by brute force. */
function holdsWith(puzzle: Puzzle, target: Pick | null, all: readonly Member[], kept: readonly Member[]): boolean {
  const dropped = all.filter((member) => !kept.some((other) => told(other) === told(member)));
  const picks = kept.flatMap((member) => (member.is === "pick" ? [member] : []));
  const rules = dropped.flatMap((member) => (member.is === "rule" ? [member] : []));
  const unsaid = dropped.flatMap((member) => (member.is === "stated" ? [member] : []));
  const stages = puzzle.stages.map((stage) => {
    const own = new Set(unsaid.filter((member) => member.stage === stage.id).map(({ value }) => value));
    return own.size === 0
      ? stage
      : { ...stage, run: (...args: Parameters<typeof stage.run>) => stage.run(args[0], args[1], own) };
  });
  const changed = withoutRules(narrowed({ ...puzzle, stages }, picks), rules);
  const counted = countByBruteForce(target ? narrowed(changed, [target]) : changed);
  if (!target) return counted.holding > 0n;
  return counted.shares.some(
    (share) => share.crux === target.crux && share.reading === target.reading && share.holding > 0n,
  );
}

/** Every member there could be, found without the search's help. */
function everyMember(puzzle: Puzzle, picks: readonly Pick[]): Member[] {
  const members: Member[] = picks.map((one) => ({ is: "pick", ...one }));
  for (const stage of puzzle.stages) {
    for (const rule of ["a", "b"]) members.push({ is: "rule", stage: stage.id, rule });
    for (const value of stage.stated ?? []) members.push({ is: "stated", stage: stage.id, value });
  }
  return members;
}

function subsets<Item>(items: readonly Item[]): Item[][] {
  return Array.from({ length: 2 ** items.length }, (_, bits) => items.filter((_item, at) => (bits >> at) % 2 === 1));
}

/** All clashes and a smallest set to drop, from every subset of the members. */
function byBruteForce(puzzle: Puzzle, target: Pick | null, picks: readonly Pick[]) {
  const all = everyMember(puzzle, picks);
  const some = subsets(all).sort((a, b) => a.length - b.length);
  const clashing: Member[][] = [];
  let most = -1;
  for (const kept of some) {
    if (clashing.some((one) => one.every((member) => kept.includes(member)))) continue;
    if (holdsWith(puzzle, target, all, kept)) most = Math.max(most, kept.length);
    else clashing.push(kept);
  }
  return { clashes: clashing, drop: most < 0 ? null : all.length - most };
}

const side = plainCrux("side", ["left", "right"]);
const hand = plainCrux("hand", ["left", "right"]);

describe("clashes worked by hand", () => {
  const reins = barringStage("reins", ["side"], (reading) => reading("side") === "left");
  const point = barringStage("point", ["side", "hand"], (r) => r("side") === "right" && r("hand") === "right");
  const puzzle = puzzleOf([side, hand], [reins, point]);

  test("[N11] something holds: none", () => {
    expect(clashes(puzzle, null)).toEqual({ clashes: [], complete: true, shortest: false, searched: 1 });
    expect(whatMustGive(puzzle)).toEqual({ drop: [], smallest: true });
  });
  test("[N11] a dead reading: one rule at one step is enough", () => {
    const target = { crux: "side", reading: "left" };
    const found = clashes(puzzle, target);
    expect(found.clashes).toEqual([[{ is: "rule", stage: "reins", rule: "reins" }]]);
    expect([found.complete, found.shortest]).toEqual([true, true]);
    expect(whatMustGive(puzzle, { target })).toEqual({
      drop: [{ is: "rule", stage: "reins", rule: "reins" }],
      smallest: true,
    });
  });
  test("[N11] a pick and two rules", () => {
    const picks = [{ crux: "hand", reading: "right" }];
    const found = clashes(puzzle, null, { picks });
    expect(found.clashes.map((clash) => clash.map(told).sort())).toEqual([
      [
        { is: "pick", crux: "hand", reading: "right" },
        { is: "rule", stage: "point", rule: "point" },
        { is: "rule", stage: "reins", rule: "reins" },
      ]
        .map((member) => JSON.stringify(member))
        .sort(),
    ]);
    expect(whatMustGive(puzzle, { picks })?.drop.length).toBe(1);
  });
  test("[N11] what ties alone exclude: an empty clash, and nothing to give", () => {
    const tied = puzzleOf([side, { ...hand, ruledOut: ["right"] }], [], {
      requires: [{ crux: "side", reading: "left", of: { crux: "hand", readings: ["right"] } }],
    });
    const target = { crux: "side", reading: "left" };
    expect(clashes(tied, target).clashes).toEqual([[]]);
    expect(whatMustGive(tied, { target })).toBeNull();
  });
  test("[N13] a limit is said when it is hit", () => {
    const picks = [{ crux: "hand", reading: "right" }];
    const limited = clashes(puzzle, null, { picks, limits: { clashes: 5, checks: 3 } });
    expect([limited.clashes, limited.complete, limited.shortest, limited.searched]).toEqual([[], false, false, 3]);
    const given = whatMustGive(puzzle, { picks, limits: { clashes: 5, checks: 3 } });
    expect(given?.smallest).toBe(false);
    expect(given?.drop.length).toBeGreaterThan(0);
  });
  test("two picks of one crux are the caller's mistake", () => {
    const picks = [
      { crux: "hand", reading: "right" },
      { crux: "hand", reading: "left" },
    ];
    expect(() => clashes(puzzle, null, { picks })).toThrow(
      "The crux hand is picked twice: a clash needs one pick of each.",
    );
  });
});

describe("against every subset of the members", () => {
  test("[N11][N12] all clashes, each irreducible, and a smallest set to drop", () => {
    const limits = { clashes: 200, checks: 5000 };
    let several = 0;
    fc.assert(
      fc.property(anyClashing, ({ puzzle, target, picks }) => {
        const oracle = byBruteForce(puzzle, target, picks);
        const found = clashes(puzzle, target, { picks, limits });
        if (found.clashes.length > 1) several += 1;
        expect(found.complete).toBe(true);
        expect(found.clashes.map(toldSet).sort()).toEqual(oracle.clashes.map(toldSet).sort());
        expect(found.shortest).toBe(oracle.clashes.length > 0);
        const given = whatMustGive(puzzle, { target, picks, limits });
        expect(given?.drop.length ?? null).toBe(oracle.drop);
        const all = everyMember(puzzle, picks);
        if (given) {
          const kept = all.filter((member) => !given.drop.some((one) => told(one) === told(member)));
          expect(holdsWith(puzzle, target, all, kept)).toBe(true);
        }
      }),
      { numRuns: 250 },
    );
    expect(several).toBeGreaterThan(10);
  }, 60_000);

  test("[N13] within a small limit what is found is still true", () => {
    fc.assert(
      fc.property(anyClashing, fc.integer({ min: 0, max: 12 }), ({ puzzle, target, picks }, checks) => {
        const found = clashes(puzzle, target, { picks, limits: { clashes: 2, checks } });
        const all = everyMember(puzzle, picks);
        expect(found.searched).toBeLessThanOrEqual(checks);
        for (const clash of found.clashes) {
          expect(holdsWith(puzzle, target, all, clash)).toBe(false);
          for (const member of clash) {
            expect(
              holdsWith(
                puzzle,
                target,
                all,
                clash.filter((other) => other !== member),
              ),
            ).toBe(true);
          }
        }
        const given = whatMustGive(puzzle, { target, picks, limits: { clashes: 2, checks } });
        if (!given) return;
        const kept = all.filter((member) => !given.drop.some((one) => told(one) === told(member)));
        expect(holdsWith(puzzle, target, all, kept)).toBe(true);
      }),
      { numRuns: 200 },
    );
  }, 60_000);

  test("[N12] dropping a member only enlarges", () => {
    fc.assert(
      fc.property(anyClashing, fc.nat(), ({ puzzle, picks }, which) => {
        const all = everyMember(puzzle, picks);
        const member = all[which % all.length];
        if (!member) return;
        const holds = (kept: readonly Member[]) => holdsWith(puzzle, null, all, kept);
        if (holds(all)) expect(holds(all.filter((one) => one !== member))).toBe(true);
      }),
    );
  });
});
