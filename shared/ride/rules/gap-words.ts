/** shared/ride/rules/gap-words.ts - a gap that a demand asks riders to keep, from its words: "two lengths behind the leader".
 *  May import: shared/ride. Keeps rule V63 (shared/ride/rules/RULES.md). Metres. */
import { isNamed } from "../event-meant.ts";
import { lengthsIn } from "../lengths-in-words.ts";

export interface Gap {
  metres: number;
  is: "at least" | "at most" | "about";
}

const LENGTHS = /\bhorse[’']?s?\s+lengths?\b/giu;
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
  const [metres, another] = lengthsIn(words);
  if (metres === undefined || another !== undefined) return null;
  return { metres, is: LEAST.test(words) ? "at least" : MOST.test(words) ? "at most" : "about" };
}
