/** tests/decide/what-next.test.ts - gain and settles against every assignment. Rules N14, N15 of shared/decide/RULES.md. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Assignment,
  assignments,
  type Candidate,
  cruxCandidate,
  type Puzzle,
  type ReadIn,
  walk,
  whatNext,
} from "../../shared/decide/index.ts";
import { anyRichPuzzle, barringStage, plainCrux, puzzleOf } from "./puzzles.ts";

const side = plainCrux("side", ["left", "right"]);
const hand = plainCrux("hand", ["left", "right"]);
const place = plainCrux("place", ["oak", "elm", "gate", "well"]);
const same = barringStage("same", ["side", "hand"], (reading) => reading("side") !== reading("hand"));

describe("worked by hand", () => {
  // Two ways for side and hand together, four places: eight hold.
  const puzzle = puzzleOf([side, hand, place], [same]);
  const ranked = (candidates: Candidate[]) =>
    whatNext(puzzle, candidates).map(({ id, gain, settles, perEffort }) => [id, gain, settles, perEffort]);

  test("[N14] four equal answers are two bits, two are one; a side decides the hand", () => {
    expect(ranked([cruxCandidate(side, 1), cruxCandidate(place, 1)])).toEqual([
      ["place", 2, 0, 2],
      ["side", 1, 1, 1],
    ]);
  });
  test("[N14] effort divides the gain", () => {
    expect(ranked([cruxCandidate(side, 1), cruxCandidate(place, 4)])).toEqual([
      ["side", 1, 1, 1],
      ["place", 2, 0, 0.5],
    ]);
  });
  test("[N15] what each answer leaves and decides", () => {
    expect(whatNext(puzzle, [cruxCandidate(side, 1)])[0]?.answers).toEqual([
      { label: "left", holding: 4n, decides: [{ crux: "hand", reading: "left" }], lapses: [] },
      { label: "right", holding: 4n, decides: [{ crux: "hand", reading: "right" }], lapses: [] },
    ]);
  });
  test("[N14] a question over several cruxes", () => {
    const question: Candidate = {
      id: "where and which",
      effort: 1,
      answers: [
        {
          label: "left at the oak",
          allows: [
            { crux: "side", readings: ["left"] },
            { crux: "place", readings: ["oak"] },
          ],
        },
        { label: "anything else", allows: [] },
      ],
    };
    const [first] = whatNext(puzzle, [question]);
    expect(first?.answers.map(({ holding }) => holding)).toEqual([1n, 8n]);
    // One of nine times three bits, else none.
    expect(first?.gain).toBeCloseTo(3 / 9, 12);
  });
  test("an effort below 1 is the caller's mistake", () => {
    expect(() => whatNext(puzzle, [cruxCandidate(side, 0)])).toThrow(
      "The effort of side is 0; an effort is 1 or more.",
    );
  });
});

/** From the list of assignments that hold, and nothing else. */
function byBruteForce(puzzle: Puzzle, { answers }: Candidate) {
  const holding = [...assignments(puzzle)].filter((one) => walk(puzzle, one).holds);
  const fits =
    (assignment: Assignment) =>
    ({ crux, readings }: ReadIn) => {
      const reading = assignment.get(crux);
      return reading === undefined || readings.includes(reading);
    };
  const readingsOf = (some: readonly Assignment[], crux: string) => new Set(some.flatMap((one) => one.get(crux) ?? []));
  const named = new Set(answers.flatMap(({ allows }) => allows.map(({ crux }) => crux)));
  const open = puzzle.cruxes.filter(({ id }) => !named.has(id) && readingsOf(holding, id).size > 1);
  const told = answers.map(({ allows }) => {
    const left = holding.filter((one) => allows.every(fits(one)));
    const decided = left.length === 0 ? [] : open.filter(({ id }) => readingsOf(left, id).size <= 1);
    return { left: left.length, decided: decided.map(({ id }) => id) };
  });
  const sum = told.reduce((total, { left }) => total + left, 0);
  const average = (of: (answer: (typeof told)[number]) => number) =>
    told.reduce((total, one) => total + (one.left === 0 ? 0 : (one.left / sum) * of(one)), 0);
  return {
    told,
    gain: average(({ left }) => Math.log2(holding.length / left)),
    settles: average(({ decided }) => decided.length),
  };
}

describe("against every assignment", () => {
  const anyAsked = fc.record({
    puzzle: anyRichPuzzle({ cruxes: 5, stages: 5 }),
    draws: fc.array(fc.array(fc.tuple(fc.nat(4), fc.nat(6)), { maxLength: 3 }), { minLength: 1, maxLength: 3 }),
  });
  test("[N14][N15] questions and cruxes", () => {
    fc.assert(
      fc.property(anyAsked, ({ puzzle, draws }) => {
        const question: Candidate = {
          id: "question",
          effort: 3,
          answers: draws.map((picks, index) => ({
            label: String(index),
            allows: picks.map(([crux, mask]) => {
              const { id, readings } = puzzle.cruxes[crux % puzzle.cruxes.length] ?? plainCrux("none", []);
              return { crux: id, readings: readings.filter((_, at) => ((mask + 1) >> at) % 2 === 1) };
            }),
          })),
        };
        const candidates = [question, ...puzzle.cruxes.map((crux) => cruxCandidate(crux, 1))];
        for (const found of whatNext(puzzle, candidates)) {
          const candidate = candidates.find(({ id }) => id === found.id) as Candidate;
          const oracle = byBruteForce(puzzle, candidate);
          expect(found.answers.map(({ holding }) => Number(holding))).toEqual(oracle.told.map(({ left }) => left));
          const decided = found.answers.map(({ decides, lapses }) =>
            [...decides.map(({ crux }) => crux), ...lapses].sort(),
          );
          expect(decided).toEqual(oracle.told.map((one) => one.decided.sort()));
          expect(found.gain).toBeCloseTo(oracle.gain, 9);
          expect(found.settles).toBeCloseTo(oracle.settles, 9);
          expect(found.perEffort).toBeCloseTo(oracle.gain / candidate.effort, 9);
          expect(found.exact).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
});
