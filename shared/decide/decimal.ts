/** shared/decide/decimal.ts - decimals as people write them, kept exactly.
 *  May import: nothing. */

/** `digits` without the point, over ten to the power of `places`. */
export interface Decimal {
  digits: bigint;
  places: number;
}

/** Of “0.6” or “1”; null for anything else, such as a sign, an exponent, a comma, or a point at either end. */
export function decimalOf(text: string): Decimal | null {
  const parts = /^(\d+)(?:\.(\d+))?$/.exec(text.trim());
  if (!parts) return null;
  const [, whole = "", fraction = ""] = parts;
  return { digits: BigInt(whole + fraction), places: fraction.length };
}

/** The digits over ten to the power of `places`, which is no less than the decimal's own. */
export function over(decimal: Decimal, places: number): bigint {
  return decimal.digits * 10n ** BigInt(places - decimal.places);
}

export function written({ digits, places }: Decimal): string {
  const text = digits.toString().padStart(places + 1, "0");
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
}

/** The greatest common divisor; of 0 and a number, the number. */
export function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}
