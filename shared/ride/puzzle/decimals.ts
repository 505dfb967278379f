/** shared/ride/puzzle/decimals.ts - decimals as they were written, added without rounding.
 *  May import: nothing. */

/** `denominator` is a power of ten, from 1. */
export interface Fraction {
  numerator: bigint;
  denominator: bigint;
}

/** "0.6" is 6 of 10. Throws RangeError for anything that is not digits with at most one point. */
export function fractionOfDecimal(decimal: string): Fraction {
  const match = /^(\d+)(?:\.(\d+))?$/.exec(decimal);
  if (match === null) throw new RangeError(`A decimal such as 0.6 was expected, not “${decimal}”.`);
  const [, whole = "0", part = ""] = match;
  return { numerator: BigInt(whole + part), denominator: 10n ** BigInt(part.length) };
}

export function sumOfDecimals(decimals: readonly string[]): Fraction {
  return decimals.map(fractionOfDecimal).reduce(
    (sum, { numerator, denominator }) => {
      const [small, large] =
        sum.denominator < denominator ? [sum.denominator, denominator] : [denominator, sum.denominator];
      const scaled = (of: Fraction): bigint => of.numerator * (large / of.denominator);
      return small === large
        ? { numerator: sum.numerator + numerator, denominator: large }
        : { numerator: scaled(sum) + scaled({ numerator, denominator }), denominator: large };
    },
    { numerator: 0n, denominator: 1n },
  );
}
