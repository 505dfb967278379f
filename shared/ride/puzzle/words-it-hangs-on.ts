/** shared/ride/puzzle/words-it-hangs-on.ts - the stated values without which a clash would not be one.
 *  May import: shared/decide, siblings. Keeps rules P9 and P12 (shared/ride/puzzle/RULES.md). They are looked for one by one at
 *  the steps of the clash and the steps before; with them the clash is still irreducible: each of them alone undoes it. */
import { count, type Member, narrowed, type Pick, type Puzzle, type Stage } from "../../decide/index.ts";

/** Stages looked at: those of the clash, and so many before each. */
const STAGES_BEFORE = 3;
/** Values tried for one clash, at most; those nearest to it first. */
export const MOST_TRIED = 24;

/** `picks` are those of the clash, and the reading that is asked about. */
export function wordsItHangsOn(puzzle: Puzzle, clash: readonly Member[], picks: readonly Pick[]): Member[] {
  const rules = clash.flatMap((one) => (one.is === "rule" ? [one] : []));
  if (rules.length === 0) return [];
  const own = narrowed({ ...puzzle, stages: puzzle.stages.map((stage) => onlyThese(stage, rules)) }, picks);
  return candidates(puzzle.stages, rules)
    .slice(0, MOST_TRIED)
    .filter((member) => holdsWithout(own, member))
    .sort((a, b) => indexOf(puzzle.stages, a.stage) - indexOf(puzzle.stages, b.stage));
}

type Stated = Extract<Member, { is: "stated" }>;
type Rule = Extract<Member, { is: "rule" }>;

const indexOf = (stages: readonly Stage[], id: string): number => stages.findIndex((stage) => stage.id === id);

function candidates(stages: readonly Stage[], rules: readonly Rule[]): Stated[] {
  const at = rules.map(({ stage }) => indexOf(stages, stage));
  const near = stages.flatMap((stage, index) => {
    const steps = at.map((place) => place - index).filter((back) => back >= 0 && back <= STAGES_BEFORE);
    return steps.length === 0 ? [] : [{ stage, back: Math.min(...steps) }];
  });
  return near
    .sort((a, b) => a.back - b.back)
    .flatMap(({ stage: { id, stated = [] } }) => stated.map((value): Stated => ({ is: "stated", stage: id, value })));
}

/** The stage with the hits of these rules alone. */
function onlyThese(stage: Stage, rules: readonly Rule[]): Stage {
  const own = new Set(rules.filter((one) => one.stage === stage.id).map(({ rule }) => rule));
  return {
    ...stage,
    run: (state, readingOf, without) =>
      stage
        .run(state, readingOf, without)
        .map((way) => ({ ...way, hits: way.hits.filter(({ rule }) => own.has(rule)) })),
  };
}

function holdsWithout(puzzle: Puzzle, { stage: id, value }: Stated): boolean {
  const without = new Set([value]);
  const stages = puzzle.stages.map(
    (stage): Stage =>
      stage.id === id ? { ...stage, run: (state, readingOf) => stage.run(state, readingOf, without) } : stage,
  );
  const counted = count({ ...puzzle, stages }, { witnesses: 0 });
  return counted.exact ? counted.holding > 0n : counted.holding.lower > 0n;
}
