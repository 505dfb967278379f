/** server/publish/papers/uses.ts - the steps of an exercise that use something, as an index tells them.
 *  May import: schema types, siblings. */
import type { Drill, DrillElement } from "../../../schema/drill.ts";
import type { Line, Span } from "../../../schema/paper.ts";
import { joinedLines, soft, words } from "./spans.ts";
import { stepAnchor } from "./step-rows.ts";

interface Step {
  number: number;
  to: string;
}

export interface Uses {
  steps: Step[];
  /** What has no number, once each, by what it is: advice, a part not treated, what stands throughout. */
  others: Map<string, Span>;
}

export const newUses = (): Uses => ({ steps: [], others: new Map() });

export function useOf({ steps, others }: Uses, { id, number, is }: DrillElement): void {
  const to = `#${stepAnchor(id)}`;
  if (number !== null) steps.push({ number, to });
  else if (!others.has(is)) others.set(is, { ...words(is), to });
}

/** "exercise 1, steps 2–4, 6, advice". `several`: the paper has more than one exercise. */
export function usesLine({ label, title }: Drill["exercise"], { steps, others }: Uses, several: boolean): Line {
  const lead: Line[] = several ? [[soft(label === "" ? title : `exercise ${label}`)]] : [];
  return joinedLines([...lead, stepRuns(steps), ...[...others.values()].map((span) => [span])], ", ");
}

/** "steps 2–4, 6", each run leading to its first step. Empty for none. */
function stepRuns(steps: readonly Step[]): Line {
  const runs: { first: Step; last: Step }[] = [];
  for (const step of [...steps].sort((a, b) => a.number - b.number)) {
    const run = runs.at(-1);
    if (run !== undefined && step.number <= run.last.number + 1) run.last = step;
    else runs.push({ first: step, last: step });
  }
  if (runs.length === 0) return [];
  const told = runs.map(({ first, last }): Line => {
    const { number: to } = last;
    const text = to === first.number ? String(to) : `${first.number}${to === first.number + 1 ? ", " : "–"}${to}`;
    return [{ ...words(text), to: first.to }];
  });
  const one = steps.every(({ number }) => number === steps[0]?.number);
  return [words(one ? "step " : "steps "), ...joinedLines(told, ", ")];
}
