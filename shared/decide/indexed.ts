/** shared/decide/indexed.ts - a puzzle with numbers for names, as the walk over blocks wants it.
 *  May import: siblings in shared/decide. Cruxes and stages are counted from 0 in the puzzle's order. A *value* of a crux is
 *  the index of a reading, or, for “does not arise”, the number of its readings. */
import { checkPuzzle } from "./checked.ts";
import type { Puzzle, ReadIn, Tie } from "./puzzle.ts";

/** What several cruxes may be together; looked at once all of them have a value. */
export interface Constraint {
  scope: readonly number[];
  /** Values in the order of the scope. */
  allows: (values: ArrayLike<number>) => boolean;
}

/** A number that assignments are weighted with, by the values of several cruxes; a positive whole number. */
export interface Factor {
  scope: readonly number[];
  weightOf: (values: ArrayLike<number>) => bigint;
}

export interface IndexedPuzzle {
  puzzle: Puzzle;
  indexOf: ReadonlyMap<string, number>;
  /** Values each crux may take, ruled-out ones left out. */
  values: readonly (readonly number[])[];
  /** How many numbers values of this crux range over: 0 to this, exclusive. */
  radix: readonly number[];
  /** Cruxes that each stage touches. */
  touches: readonly (readonly number[])[];
  constraints: readonly Constraint[];
  factors: readonly Factor[];
}

/** Throws RangeError for a broken puzzle (checked.ts). */
export function indexed(puzzle: Puzzle, factors: readonly Factor[] = []): IndexedPuzzle {
  checkPuzzle(puzzle);
  const { cruxes } = puzzle;
  const indexOf = new Map(cruxes.map(({ id }, index) => [id, index]));
  const at = (crux: string): number => indexOf.get(crux) as number;
  const numberOfReading = (crux: string, reading: string): number =>
    cruxes[at(crux)]?.readings.indexOf(reading) as number;
  const valuesOf = ({ crux, readings }: ReadIn) => new Set(readings.map((reading) => numberOfReading(crux, reading)));

  const tied = (tie: Tie, goesWith: boolean): Constraint => {
    const [own, some] = [numberOfReading(tie.crux, tie.reading), valuesOf(tie.of)];
    const [first, second] = [at(tie.crux), at(tie.of.crux)];
    const fits = (one: number, other: number) => one !== own || some.has(other) === goesWith;
    if (first === second) return { scope: [first], allows: (values) => fits(values[0] as number, values[0] as number) };
    return { scope: [first, second], allows: (values) => fits(values[0] as number, values[1] as number) };
  };

  const conditional = cruxes.filter(({ arisesWhen }) => arisesWhen.length > 0);
  const arising = conditional.map(({ id, arisesWhen, readings }): Constraint => {
    const scope = [...new Set([id, ...arisesWhen.map(({ crux }) => crux)])].map(at);
    const conditions = arisesWhen.map((condition) => ({
      place: scope.indexOf(at(condition.crux)),
      some: valuesOf(condition),
    }));
    const none = readings.length;
    return {
      scope,
      allows: (values) =>
        (values[0] !== none) === conditions.every(({ place, some }) => some.has(values[place] as number)),
    };
  });

  return {
    puzzle,
    indexOf,
    values: cruxes.map(({ readings, ruledOut, arisesWhen }) => [
      ...readings.flatMap((reading, value) => (ruledOut.includes(reading) ? [] : [value])),
      ...(arisesWhen.length > 0 ? [readings.length] : []),
    ]),
    radix: cruxes.map(({ readings, arisesWhen }) => readings.length + (arisesWhen.length > 0 ? 1 : 0)),
    touches: puzzle.stages.map(({ touches }) => [...new Set(touches)].map(at)),
    constraints: [
      ...puzzle.requires.map((tie) => tied(tie, true)),
      ...puzzle.excludes.map((tie) => tied(tie, false)),
      ...arising,
    ],
    factors,
  };
}
