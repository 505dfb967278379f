/** shared/decide/walk.ts - one assignment run through the stages: does some completion, do all, break no barring rule?
 *  May import: siblings in shared/decide. Completions are never counted: states are kept as sets, so two completions that
 *  lead to the same state are one from there on. */
import type { Assignment, Hit, Puzzle, Stage, Successor } from "./puzzle.ts";

export interface Walk {
  /** Some completion breaks no barring rule. */
  holds: boolean;
  /** Every completion does; false whenever `holds` is false. */
  surelyHolds: boolean;
  /** One completion that breaks no barring rule: its state after each stage, what it supplies there, and the rules
   *  that only warned. Null when none holds. */
  witness: WitnessStep[] | null;
  /** Where none holds: the stage at which the last completions broke, and the barring rules they broke there. */
  brokenAt: { stage: string; rules: string[] } | null;
}

export interface WitnessStep {
  stage: string;
  state: string;
  supplied: string | null;
  hits: readonly Hit[];
}

interface Trail {
  step: WitnessStep;
  before: Trail | null;
}

export function walk(puzzle: Puzzle, assignment: Assignment): Walk {
  // A state is reached cleanly, or only by completions that broke something: for "surely" any broken one is enough.
  let clean = new Map<string, Trail | null>(puzzle.start.map((state) => [state, null]));
  let surely = puzzle.start.length > 0;
  for (const stage of puzzle.stages) {
    const next = new Map<string, Trail | null>();
    const broken = new Set<string>();
    for (const [state, before] of clean) {
      for (const successor of run(stage, state, assignment)) {
        const barring = successor.hits.filter(({ bars }) => bars);
        for (const { rule } of barring) broken.add(rule);
        if (barring.length === 0 && !next.has(successor.state)) {
          next.set(successor.state, { step: stepOf(stage, successor), before });
        }
      }
    }
    if (broken.size > 0) surely = false;
    if (next.size === 0) {
      return {
        holds: false,
        surelyHolds: false,
        witness: null,
        brokenAt: { stage: stage.id, rules: [...broken].sort() },
      };
    }
    clean = next;
  }
  const [trail] = clean.values();
  const holds = clean.size > 0;
  return { holds, surelyHolds: holds && surely, witness: holds ? stepsOf(trail ?? null) : null, brokenAt: null };
}

function run(stage: Stage, state: string, assignment: Assignment): readonly Successor[] {
  const successors = stage.run(state, (crux) => {
    if (!stage.touches.includes(crux)) {
      throw new RangeError(`The stage ${stage.id} asked for the crux ${crux}, which is not among those it touches.`);
    }
    return assignment.get(crux) ?? null;
  });
  if (successors.length === 0) throw new RangeError(`The stage ${stage.id} gives no way on from the state ${state}.`);
  return successors;
}

function stepOf(stage: Stage, { state, hits, supplied }: Successor): WitnessStep {
  return { stage: stage.id, state, supplied: supplied ?? null, hits };
}

function stepsOf(trail: Trail | null): WitnessStep[] {
  const steps: WitnessStep[] = [];
  for (let at = trail; at !== null; at = at.before) steps.push(at.step);
  return steps.reverse();
}
