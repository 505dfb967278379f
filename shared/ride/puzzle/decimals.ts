/** shared/ride/puzzle/decimals.ts - decimals as they were written, added without rounding.
 *  May import: nothing. */

/** `digits` over ten to the power of `places`. */
export interface Decimal {
  digits: bigint;
  places: number;
}

/** "0.6" is 6 with one place; null for anything that is not digits with at most one point among them. */
export function decimalOf(written: string): Decimal | null {
  const match = /^(\d+)(?:\.(\d+))?$/.exec(written);
  if (match === null) return null;
  const [, whole = "0", part = ""] = match;
  return { digits: BigInt(whole + part), places: part.length };
}

/** With as many places as the longest. What is no decimal is left out. */
export function sumOfDecimals(written: readonly string[]): Decimal {
  const decimals = written.flatMap((one) => decimalOf(one) ?? []);
  const places = Math.max(0, ...decimals.map((one) => one.places));
  const digits = decimals.reduce((sum, one) => sum + one.digits * 10n ** BigInt(places - one.places), 0n);
  return { digits, places };
}

export function isOverOne({ digits, places }: Decimal): boolean {
  return digits > 10n ** BigInt(places);
}
