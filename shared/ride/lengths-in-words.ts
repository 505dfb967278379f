/** shared/ride/lengths-in-words.ts - lengths that stand in words: "two lengths", "6,5 metres", "ten paces".
 *  May import: shared/ground. Metres. */
import { USUAL_BODY } from "../ground/riders.ts";

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^(m|metres?|meters?)$/, 1],
  // The pace of a text is taken for one step of a man, 0.7 to 0.9 m: a guess.
  [/^paces?$/, 0.8],
  [/^(feet|foot|ft)$/, 0.3048],
  [/^(yards?|yd)$/, 0.9144],
  [/^(horse[’']?s? )?lengths?$/, USUAL_BODY.ahead + USUAL_BODY.behind],
];
const NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const LENGTH = new RegExp(
  `(?<![\\p{L}\\p{N}])(\\d+(?:[.,]\\d+)?|an?|${NUMBERS.join("|")})\\s+((?:horse[’']?s?\\s+)?\\p{L}+)`,
  "giu",
);

/** Every length, in the order of the words. */
export function lengthsIn(words: string): number[] {
  return [...words.matchAll(LENGTH)].flatMap(([, count = "", unit = ""]) => {
    const each = UNITS.find(([name]) => name.test(unit.toLowerCase().replace(/\s+/g, " ")))?.[1];
    const times = countOf(count.toLowerCase());
    return each === undefined || !(times > 0) ? [] : [times * each];
  });
}

function countOf(word: string): number {
  if (word === "a" || word === "an") return 1;
  const named = NUMBERS.indexOf(word);
  return named === -1 ? Number(word.replace(",", ".")) : named + 1;
}
