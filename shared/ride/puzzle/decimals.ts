/** shared/ride/puzzle/decimals.ts - decimals as they were written, added without rounding.
 *  May import: nothing. */

/** `denominator` is a power of ten, from 1. */
export interface Fraction {
  numerator: bigint;
  denominator: bigint;
}

/** "0.6" is 6 of 10; null for anything that is not digits with at most one point among them. */
export function fractionOfDecimal(decimal: string): Fraction | null {
  const match = /^(\d+)(?:\.(\d+))?$/.exec(decimal);
  if (match === null) return null;
  const [, whole = "0", part = ""] = match;
  return { numerator: BigInt(whole + part), denominator: 10n ** BigInt(part.length) };
}

/** Over the largest of the denominators; 0 of 1 for none. What is no decimal is left out. */
export function sumOfDecimals(decimals: readonly string[]): Fraction {
  const fractions = decimals.flatMap((decimal) => fractionOfDecimal(decimal) ?? []);
  const denominator = fractions.reduce((most, one) => (one.denominator > most ? one.denominator : most), 1n);
  const numerator = fractions.reduce((sum, one) => sum + one.numerator * (denominator / one.denominator), 0n);
  return { numerator, denominator };
}
