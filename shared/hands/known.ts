/** shared/hands/known.ts - what is known of a value: exactly one, some of them, or no limit at all.
 *  May import: schema types. Values are compared by what they are made of, keys in any order. */
import type { Known } from "../../schema/slot.ts";

export const UNKNOWN = { is: "unknown" } as const;

export function known<T>(value: T): Known<T> {
  return { is: "known", value };
}

/** One value is known; none is a mistake of the caller: throws RangeError. Equal values count once. */
export function oneOf<T>(values: readonly T[]): Known<T> {
  const distinct = values.length < 2 ? values : [...new Map(values.map((value) => [keyOf(value), value])).values()];
  const [first, second] = distinct;
  if (first === undefined && distinct.length === 0) throw new RangeError("One of no values is nothing at all.");
  return second === undefined && distinct.length === 1 ? known(first as T) : { is: "one of", values: distinct };
}

/** Known to be the one or the other, no more. */
export function either<T>(first: Known<T>, second: Known<T>): Known<T> {
  if (first === second) return first;
  if (first.is === "unknown" || second.is === "unknown") return UNKNOWN;
  return oneOf([...possible(first, []), ...possible(second, [])]);
}

/** The values that are possible; `all` where nothing is known. */
export function possible<T>(value: Known<T>, all: readonly T[]): readonly T[] {
  switch (value.is) {
    case "known":
      return [value.value];
    case "one of":
      return value.values;
    case "unknown":
      return all;
  }
}

/** Each possible value changed; unknown stays unknown. */
export function mapKnown<T, U>(value: Known<T>, change: (value: T) => U): Known<U> {
  return value.is === "unknown" ? UNKNOWN : oneOf(possible(value, []).map(change));
}

/** The value where exactly one is known, else null (so not for values that may be null themselves). */
export function exactly<T>(value: Known<T>): T | null {
  return value.is === "known" ? value.value : null;
}

/** Known to be this value. */
export function isKnown<T>(value: Known<T>, wanted: T): boolean {
  return value.is === "known" && sameValue(value.value, wanted);
}

/** Whether this value is possible. */
export function mayBe<T>(value: Known<T>, wanted: T): boolean {
  return value.is === "unknown" || possible(value, []).some((held) => sameValue(held, wanted));
}

/** Most values are words: only what has parts is compared by its key. */
function sameValue(first: unknown, second: unknown): boolean {
  if (!hasParts(first) || !hasParts(second)) return first === second;
  return first === second || keyOf(first) === keyOf(second);
}

function hasParts(value: unknown): boolean {
  return typeof value === "object" && value !== null;
}

/** Equal values have equal keys. */
function keyOf(value: unknown): string {
  if (!hasParts(value)) return JSON.stringify(value);
  return JSON.stringify(value, (_, held: unknown) =>
    typeof held === "object" && held !== null && !Array.isArray(held)
      ? Object.fromEntries(Object.entries(held).sort(([first], [second]) => (first < second ? -1 : 1)))
      : held,
  );
}
