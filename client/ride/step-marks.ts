/** client/ride/step-marks.ts - numbers of steps on an axis of time, as many as can be read, and always the one that is
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
  const [most = new Set()] = [1, 2, 5, 10]
    .map((every) => fitting(marks, every, current, apart))
    .sort((a, b) => b.size - a.size);
  const places = [...most].map((index) => marks[index]?.at ?? 0);
  // A tick that would stand in the figures of a number says nothing.
  const isHidden = ({ at }: StepMark) => places.some((place) => at >= place && at < place + apart * FIGURES);
  return marks.flatMap((mark, index) => {
    const told = most.has(index);
    return told || !isHidden(mark) ? [{ ...mark, told, isNow: index === current }] : [];
  });
}

/** The part of a number's room that its figures take. */
const FIGURES = 0.6;

/** Numbers from the first on, each so many after the last as far as there is room, and that of the step that is ridden. */
function fitting(marks: readonly StepMark[], every: number, current: number, apart: number): Set<number> {
  const clear = (one: number, other: number) => Math.abs((marks[one]?.at ?? 0) - (marks[other]?.at ?? 0)) >= apart;
  const list = new Set(current >= 0 ? [current] : []);
  let last: number | null = null;
  for (let index = 0; index < marks.length; index += every) {
    if ((current >= 0 && !clear(index, current)) || (last !== null && !clear(index, last))) continue;
    list.add(index);
    last = index;
  }
  return list;
}
