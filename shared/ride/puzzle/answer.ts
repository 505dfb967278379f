/** shared/ride/puzzle/answer.ts - what holds: the count of an exercise under what is picked, as plain data.
 *  May import: shared/decide, siblings. Big integers are decimal strings, so that it goes through JSON and between threads. */
import { type Count, countByBruteForce } from "../../decide/brute-force.ts";
import type { Puzzle } from "../../decide/puzzle.ts";
import type { Pick, Problem, WeighedExercise } from "./weighed.ts";

export interface DecideAsk {
  /** Readings taken provisionally. */
  picks: readonly Pick[];
  /** Whether readings adopted without a condition narrow the count. What is left free stays free. */
  asAdopted: boolean;
  /** Rules not counted at a stage. */
  without: readonly { stage: string; rule: string }[];
}

export interface AnsweredReading {
  crux: string;
  reading: string;
  holding: string;
  surely: string;
  all: string;
  /** Of what holds where the crux arises, 0 to 1; null when nothing holds there, or the crux is not counted. A proportion of combinations, not a
   *  probability. */
  share: number | null;
  verdict: "forced" | "possible" | "dead" | "ruled out";
  /** The first reading of its class, where that is another. */
  sameAs: string | null;
}

export interface DecideAnswer {
  exact: boolean;
  /** Why it is not exact; "" when it is. */
  why: string;
  holding: string;
  /** The same as `holding` when exact. */
  holdingUpper: string;
  surely: string;
  all: string;
  /** "" or which part it is of, in words. */
  treated: string;
  /** Every reading of every crux that is counted. */
  shares: AnsweredReading[];
  excludedPairs: { first: Pick; second: Pick }[];
  apparatus: { crux: string; why: string }[];
  problems: Problem[];
  peaks: { inPlay: number; states: number };
  /** One way that holds, with what it supplies where the text is silent; null when none does. */
  witness: { readings: Pick[]; supplied: { stage: string; words: string }[] } | null;
  /** Where nothing holds: what broke, with how many assignments broke there last. */
  broken: { stage: string; rule: string; assignments: string }[];
}

export function answerDecide(weighed: WeighedExercise, ask: DecideAsk): DecideAnswer {
  const puzzle = askedPuzzle(weighed, ask);
  const count = countByBruteForce(puzzle);
  const [witness] = count.witnesses;
  return {
    exact: true,
    why: "",
    holding: String(count.holding),
    holdingUpper: String(count.holding),
    surely: String(count.surelyHolding),
    all: String(count.all),
    treated: weighed.treated,
    shares: sharesOf(weighed, count),
    excludedPairs: count.excludedPairs,
    apparatus: weighed.apparatus,
    problems: weighed.problems,
    peaks: { inPlay: 0, states: 0 },
    witness: witness
      ? {
          readings: [...witness.assignment].map(([crux, reading]) => ({ crux, reading })),
          supplied: witness.steps.flatMap(({ stage, supplied }) =>
            supplied === null ? [] : [{ stage, words: supplied }],
          ),
        }
      : null,
    broken: count.broken.map((one) => ({ ...one, assignments: String(one.assignments) })),
  };
}

/** The puzzle under what is asked. */
export function askedPuzzle(weighed: WeighedExercise, { picks, asAdopted, without }: DecideAsk): Puzzle {
  const wanted = new Map(asAdopted ? adopted(weighed).map(({ crux, reading }) => [crux, reading]) : []);
  for (const { crux, reading } of picks) wanted.set(crux, classOf(weighed, crux, reading));
  const dropped = new Set(without.map(({ stage, rule }) => JSON.stringify([stage, rule])));
  const { puzzle } = weighed;
  return {
    ...puzzle,
    cruxes: puzzle.cruxes.map((crux) => {
      const only = wanted.get(crux.id);
      return only === undefined
        ? crux
        : { ...crux, ruledOut: crux.readings.filter((id) => id !== only || crux.ruledOut.includes(id)) };
    }),
    stages: puzzle.stages.map((stage) => ({
      ...stage,
      run: (state, readingOf) =>
        stage.run(state, readingOf).map((one) => ({
          ...one,
          hits: one.hits.filter(({ rule }) => !dropped.has(JSON.stringify([stage.id, rule]))),
        })),
    })),
  };
}

function adopted({ cruxes }: WeighedExercise): Pick[] {
  return cruxes.flatMap(({ id, leftFree, readings }) => {
    const taken = readings.filter(({ status, condition }) => status === "adopted" && condition.trim() === "");
    return leftFree || taken.length !== 1 ? [] : taken.map((one) => ({ crux: id, reading: one.sameAs ?? one.id }));
  });
}

/** The reading that stands for this one in the puzzle. */
export function classOf({ classes }: WeighedExercise, crux: string, reading: string): string {
  return classes.get(crux)?.find(({ members }) => members.includes(reading))?.reading ?? reading;
}

function sharesOf(weighed: WeighedExercise, count: Count): AnsweredReading[] {
  const shares = new Map(count.shares.map((one) => [JSON.stringify([one.crux, one.reading]), one]));
  const arising = new Map<string, bigint>();
  for (const { crux, holding } of count.shares) arising.set(crux, (arising.get(crux) ?? 0n) + holding);
  return weighed.cruxes.flatMap(({ id, readings }) =>
    readings.flatMap((reading): AnsweredReading[] => {
      const share = shares.get(JSON.stringify([id, reading.sameAs ?? reading.id]));
      if (share === undefined) return [];
      const whole = arising.get(id) ?? 0n;
      return [
        {
          crux: id,
          reading: reading.id,
          holding: String(share.holding),
          surely: String(share.surelyHolding),
          all: String(share.all),
          share: whole === 0n ? null : Number((share.holding * 1_000_000_000n) / whole) / 1_000_000_000,
          verdict: reading.status === "ruled out" ? "ruled out" : share.verdict,
          sameAs: reading.sameAs,
        },
      ];
    }),
  );
}
