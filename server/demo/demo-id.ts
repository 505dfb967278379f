/** server/demo/demo-id.ts - ids for the book that comes with the program: made by counting, so the same every time.
 *  May import: nothing. Ids a person makes come from the clock; these must not, or no two demos would be alike. */

/** UUIDv7 whose time is the first instant of 2024 and whose random part is the count. */
const TIME_AND_VERSION = "018cc251-f400-7000-8000";

/** The `count`th id, from 1. Throws RangeError when the count is no positive whole number or does not fit. */
export function demoId(count: number): string {
  if (!Number.isSafeInteger(count) || count < 1 || count > 0xffffffffffff) {
    throw new RangeError(`A demo id counts from 1 in whole numbers; got ${count}.`);
  }
  return `${TIME_AND_VERSION}-${count.toString(16).padStart(12, "0")}`;
}
