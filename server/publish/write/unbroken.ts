/** server/publish/write/unbroken.ts - what the end of a line does not part: a number from its unit, a folio from its lines.
 *  May import: nothing. */

/** A part of a reference longer than this many characters may be broken. */
const LONGEST_PART = 18;
const NO_BREAK = "\u00a0";

/** Words in which a number holds on to its unit: "12.8 m", "2 s"; and "step" to its number. */
export function bound(words: string): string {
  return words
    .replace(/(\d) (?=(?:mm|cm|m|km|ft|in|s|min|kg)(?![\p{L}\d]))/gu, `$1${NO_BREAK}`)
    .replace(/(?<![\p{L}])([Ss]teps?|ll?\.|ff?\.|pp?\.) (?=\d)/gu, `$1${NO_BREAK}`);
}

/** Parts of a reference that are not broken within: "f. 3r," and "ll. 10–18". Null where a part is long. */
export function unbrokenParts(reference: string): string[] | null {
  if (reference !== reference.trim()) return null;
  const parts = reference.split(/(?<=[,;]) /u);
  return parts.every((part) => part.length <= LONGEST_PART) ? parts : null;
}
