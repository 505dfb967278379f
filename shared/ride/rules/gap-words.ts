/** shared/ride/rules/gap-words.ts - a gap that a demand asks riders to keep, from its words: "two lengths behind the leader".
 *  May import: shared/ground, shared/ride. Keeps rule V63 (shared/ride/rules/RULES.md). Metres. */
import { USUAL_BODY } from "../../ground/riders.ts";
import { isNamed } from "../event-meant.ts";

export interface Gap {
  metres: number;
  is: "at least" | "at most" | "about";
}

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^(m|metres?|meters?)$/, 1],
  // The pace of a text is taken for one step of a man, 0.7 to 0.9 m: a guess.
  [/^paces?$/, 0.8],
  [/^(feet|foot|ft)$/, 0.3048],
  [/^(yards?|yd)$/, 0.9144],
  [/^(horse[’']?s? )?lengths?$/, USUAL_BODY.ahead + USUAL_BODY.behind],
];
const NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const LENGTHS = /\bhorse[’']?s?\s+lengths?\b/giu;
const SIZE = new RegExp(
  `(?<![\\p{L}\\p{N}])(\\d+(?:[.,]\\d+)?|an?|${NUMBERS.join("|")})\\s+((?:horse[’']?s?\\s+)?\\p{L}+)`,
  "giu",
);
const BETWEEN =
  /\b(gap|apart|behind|between|distance|interval|ahead|in front|after|from|near|nearer|closer|farther)\b/i;
const RIDERS = /\b(riders?|horses?|one another|each other|the one (before|in front|ahead)|the file)\b/i;
const LEAST = /\b(at least|(no|not) (less|nearer|closer)|or more)\b/i;
const MOST = /\b(at most|(no|not) (more|farther|further)|within|or less)\b/i;

/** Null where the words give no gap between riders, or more than one length that could be it. `roles`: those of the
 *  exercise, since a demand may name a rider by his. */
export function gapIn(words: string, roles: readonly string[]): Gap | null {
  const ofRiders = RIDERS.test(words.replace(LENGTHS, "")) || roles.some((role) => isNamed(words, role));
  if (!BETWEEN.test(words) || !ofRiders) return null;
  const sizes = [...words.matchAll(SIZE)].flatMap(([, count = "", unit = ""]) => {
    const each = UNITS.find(([name]) => name.test(unit.toLowerCase().replace(/\s+/g, " ")))?.[1];
    const times = countOf(count.toLowerCase());
    return each === undefined || !(times > 0) ? [] : [times * each];
  });
  const [metres, another] = sizes;
  if (metres === undefined || another !== undefined) return null;
  return { metres, is: LEAST.test(words) ? "at least" : MOST.test(words) ? "at most" : "about" };
}

function countOf(word: string): number {
  if (word === "a" || word === "an") return 1;
  const named = NUMBERS.indexOf(word);
  return named === -1 ? Number(word.replace(",", ".")) : named + 1;
}
