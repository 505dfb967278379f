/** client/ride/step-marks.ts - numbers of steps on an axis of time, as many as can be read: evenly chosen, and always the one that is
 *  ridden now. */
import type { Ridden } from "../../shared/ride/ridden.ts";

export interface StepMark {
  /** Index of the stage where the step begins. */
  stage: number;
  /** Share of the axis, from 0. */
  at: number;
  number: number;
  /** Whether there is room for its number; where not, a tick stands alone. */
  told: boolean;
  /** Whether it is the step that is ridden. */
  isNow: boolean;
}

/** The share of an axis of so many CSS pixels that a number takes, with room beside it. */
export const numberShare = (width: number): number => (width > 0 ? 24 / width : 0.06);

/** Each printed step once, where it first begins; what is done again has its number once. `apart`: the share of the axis that a
 *  number takes. `now`: index of the stage that is ridden. Seconds. */
export function stepMarks(
  { stages, timed }: Pick<Ridden, "stages" | "timed">,
  apart: number,
  now: number,
  from = 0,
  to = timed.duration,
): StepMark[] {
  const marks: StepMark[] = [];
  let before: number | null = null;
  for (const [stage, { from: begins, number }] of stages.entries()) {
    const at = to > from ? (begins - from) / (to - from) : 0;
    if (number === null || number === before || at < 0 || at >= 1) continue;
    before = number;
    marks.push({ stage, at, number, told: false, isNow: false });
  }
  const current = marks.findLastIndex(({ stage }) => stage <= now);
  const told =
    [1, 2, 5, 10].map((every) => fitting(marks, every, current, apart)).find((list) => list.even) ??
    fitting(marks, 1, current, apart);
  return marks.map((mark, index) => ({ ...mark, told: told.list.has(index), isNow: index === current }));
}

/** Every so manieth number from the first, but for those in the way of the current one; `even` where no other had to go. */
function fitting(marks: readonly StepMark[], every: number, current: number, apart: number) {
  const clear = (one: number, other: number) => Math.abs((marks[one]?.at ?? 0) - (marks[other]?.at ?? 0)) >= apart;
  const list = new Set(current >= 0 ? [current] : []);
  let even = true;
  let last: number | null = null;
  for (let index = 0; index < marks.length; index += every) {
    if (current >= 0 && !clear(index, current)) continue;
    if (last !== null && !clear(index, last)) {
      even = false;
      continue;
    }
    list.add(index);
    last = index;
  }
  return { list, even };
}
