/** shared/ride/puzzle/answer.ts - what holds: the count of an exercise under what is picked, as plain data.
 *  May import: shared/decide, siblings. Big integers are decimal strings, so that it goes through JSON and between threads. */
import { type Counted, type Pick as CruxPick, count, narrowed, type Puzzle, withoutRules } from "../../decide/index.ts";
import { ratio, type WeightedAnswer, weightedAnswer } from "./crux-confidences.ts";
import { isPerhaps, perhapsRule } from "./perhaps-rule.ts";
import type { Problem, WeighedExercise } from "./weighed.ts";

export interface DecideAsk {
  /** Readings taken provisionally. */
  picks: readonly CruxPick[];
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
  /** "" or which part of the exercises it is of, in words. */
  treated: string;
  /** Every reading of every crux that is counted. */
  shares: AnsweredReading[];
  /** The same weighed by confidences; null where none are given, or the count is not exact. */
  weighted: WeightedAnswer | null;
  /** Readings each possible by itself, never together; not those one of which arises only without the other. */
  excludedPairs: { first: CruxPick; second: CruxPick }[];
  apparatus: { crux: string; why: string }[];
  problems: Problem[];
  peaks: { inPlay: number; states: number };
  /** One way that holds, with what it supplies where the text is silent; null when none does. */
  witness: { readings: CruxPick[]; supplied: { stage: string; words: string }[] } | null;
  /** Where nothing holds: what broke, with how many assignments broke there last. */
  broken: { stage: string; rule: string; assignments: string }[];
}

/** Exact unless there are too many combinations; then `holding` and `holdingUpper` are bounds, and `why` says so. */
export function answerDecide(weighed: WeighedExercise, ask: DecideAsk): DecideAnswer {
  const puzzle = askedPuzzle(weighed, ask);
  const counted = count(puzzle, { witnesses: 1 });
  const [witness] = counted.witnesses;
  return {
    ...totalsOf(counted),
    treated: weighed.treated,
    shares: sharesOf(weighed, counted),
    weighted: counted.exact ? weightedAnswer(weighed, puzzle) : null,
    excludedPairs: counted.excludedPairs.filter(({ first, second }) => meet(puzzle, first, second)),
    apparatus: weighed.apparatus,
    problems: weighed.problems,
    peaks: counted.peaks,
    witness: witness
      ? {
          readings: [...witness.assignment].map(([crux, reading]) => ({ crux, reading })),
          supplied: witness.steps.flatMap(({ stage, supplied }) =>
            supplied === null ? [] : [{ stage, words: supplied }],
          ),
        }
      : null,
    broken: counted.broken
      .filter(({ rule }) => !isPerhaps(rule))
      .map((one) => ({ ...one, assignments: String(one.assignments) })),
  };
}

/** Whether the one can arise with the other at all: that it does not is no news. */
function meet({ cruxes }: Puzzle, first: CruxPick, second: CruxPick): boolean {
  const apart = (one: CruxPick, other: CruxPick): boolean =>
    (cruxes.find(({ id }) => id === one.crux)?.arisesWhen ?? []).some(
      ({ crux, readings }) => crux === other.crux && !readings.includes(other.reading),
    );
  return !apart(first, second) && !apart(second, first);
}

function totalsOf(
  counted: Counted,
): Pick<DecideAnswer, "exact" | "why" | "holding" | "holdingUpper" | "surely" | "all"> {
  if (counted.exact) {
    const holding = String(counted.holding);
    const [surely, all] = [String(counted.surelyHolding), String(counted.all)];
    return { exact: true, why: "", holding, holdingUpper: holding, surely, all };
  }
  return {
    exact: false,
    why: counted.why,
    holding: String(counted.holding.lower),
    holdingUpper: String(counted.holding.upper),
    surely: String(counted.surelyHolding.lower),
    all: String(counted.all.upper),
  };
}

/** The puzzle under what is asked. */
export function askedPuzzle(weighed: WeighedExercise, ask: DecideAsk): Puzzle {
  const dropped = ask.without.flatMap(({ stage, rule }) => [
    { stage, rule },
    { stage, rule: perhapsRule(rule) },
  ]);
  return withoutRules(narrowed(weighed.puzzle, picksOf(weighed, ask)), dropped);
}

/** What is picked, and as adopted what is adopted where nothing else is picked: one reading a crux, the last one picked.
 *  Picks of what is not counted change nothing. */
export function picksOf(weighed: WeighedExercise, { picks, asAdopted }: DecideAsk): CruxPick[] {
  const kept = asAdopted ? adopted(weighed) : [];
  const asked = [...kept, ...picks.flatMap((pick) => countedPick(weighed, pick) ?? [])];
  return [...new Map(asked.map((pick) => [pick.crux, pick])).values()];
}

/** The pick as the puzzle has it: the reading that stands for its class; null where it is not counted. */
export function countedPick({ classes }: WeighedExercise, { crux, reading }: CruxPick): CruxPick | null {
  const found = classes.get(crux)?.find(({ members }) => members.includes(reading));
  return found === undefined ? null : { crux, reading: found.reading };
}

/** Adopted without a condition, one of its crux alone. What is left free on purpose stays free. */
function adopted({ cruxes }: WeighedExercise): CruxPick[] {
  return cruxes.flatMap(({ id, leftFree, readings }) => {
    const taken = readings.filter(({ status, condition }) => status === "adopted" && condition.trim() === "");
    return leftFree || taken.length !== 1 ? [] : taken.map((one) => ({ crux: id, reading: one.sameAs ?? one.id }));
  });
}

function sharesOf(weighed: WeighedExercise, counted: Counted): AnsweredReading[] {
  const shares = new Map(counted.shares.map((one) => [JSON.stringify([one.crux, one.reading]), one]));
  const arising = new Map<string, bigint>();
  for (const { crux, holding } of counted.shares) arising.set(crux, (arising.get(crux) ?? 0n) + holding);
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
          share: counted.exact ? ratio(share.holding, whole) : null,
          verdict: reading.status === "ruled out" ? "ruled out" : share.verdict,
          sameAs: reading.sameAs,
        },
      ];
    }),
  );
}
