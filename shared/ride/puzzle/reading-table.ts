/** shared/ride/puzzle/reading-table.ts - something under every combination of the readings that make a difference to it.
 *  May import: types of shared/decide, siblings. Keeps rules P2 and P6 (shared/ride/puzzle/RULES.md). */
import type { ReadingOf } from "../../decide/puzzle.ts";
import type { ByReadings } from "./by-readings.ts";

/** Combinations tried of one element, at most. Past it every crux that could bear on it is taken to make a difference. */
export const MOST_COMBINATIONS = 1_024;

/** The readings to try of a crux, at least one for every crux that is asked for and has any. */
export type ReadingsOf = (crux: string) => readonly string[];

export interface ReadingTable<T> {
  /** Cruxes that make a difference, in the order they are asked for. */
  cruxes: readonly string[];
  /** Every crux that is asked for. */
  asked: readonly string[];
  /** What there can be, each once. */
  values: readonly T[];
  /** Null past the limit. Whether two readings make no difference here, whatever the others are. */
  alike: ((crux: string, first: string, second: string) => boolean) | null;
}

/** `keyOf` tells values apart. */
export function readingTable<T>(
  by: ByReadings<T>,
  readingsOf: ReadingsOf,
  keyOf: (value: T) => string,
): ReadingTable<T> {
  const leaves = by.all(readingsOf, MOST_COMBINATIONS);
  if (leaves === null) return { cruxes: [], asked: [], values: [], alike: null };
  const asked = [...new Set(leaves.flatMap(({ readings }) => [...readings.keys()]))];
  const values = [...new Map(leaves.map(({ value }) => [keyOf(value), value])).values()];
  if (values.length === 1) return { cruxes: [], asked, values, alike: () => true };
  const open = asked.filter((crux) => readingsOf(crux).length > 1);
  const sizes = open.map((crux) => readingsOf(crux).length);
  const combinations = sizes.reduce((product, size) => product * size, 1);
  if (combinations > MOST_COMBINATIONS) return { cruxes: open, asked, values, alike: () => false };

  // Mixed radix: crux i counts `steps[i]` places a reading.
  const steps = sizes.map((_, index) => sizes.slice(0, index).reduce((product, size) => product * size, 1));
  const digit = (at: number, index: number): number =>
    Math.floor(at / (steps[index] as number)) % (sizes[index] as number);
  const keys = Array.from({ length: combinations }, (_, at) => {
    const fixed = new Map(open.map((crux, index) => [crux, readingsOf(crux)[digit(at, index)] as string]));
    return keyOf(by.get((crux) => fixed.get(crux) ?? readingsOf(crux)[0] ?? null));
  });
  const same = (index: number, first: number, second: number): boolean =>
    keys.every(
      (key, at) => digit(at, index) !== first || key === keys[at + (second - first) * (steps[index] as number)],
    );
  const cruxes = open.filter((_, index) =>
    Array.from({ length: sizes[index] as number }, (__, reading) => reading).some(
      (reading) => !same(index, 0, reading),
    ),
  );
  return {
    cruxes,
    asked,
    values,
    alike: (crux, first, second) => {
      const index = open.indexOf(crux);
      if (index === -1 || !cruxes.includes(crux)) return true;
      const [a, b] = [readingsOf(crux).indexOf(first), readingsOf(crux).indexOf(second)];
      return a === b || (a !== -1 && b !== -1 && same(index, a, b));
    },
  };
}

/** Answers for the cruxes that make a difference; any other is read as the first of its readings. */
export function onlyAsked(readingOf: ReadingOf, touches: ReadonlySet<string>, readingsOf: ReadingsOf): ReadingOf {
  return (crux) => (touches.has(crux) ? readingOf(crux) : (readingsOf(crux)[0] ?? null));
}
