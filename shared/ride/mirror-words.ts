/** shared/ride/mirror-words.ts - a sentence made here, said of the mirrored world.
 *  May import: siblings in shared/ride. Names and words of the text are never changed: the paper says "mirrored; the text
 *  says left". Twice is the same sentence again. */
import { mirrorHour } from "./mirror-act.ts";

/** Sides, hours, senses and places as sentences made here say them. */
const SIDED =
  /\b(?:(left|right)|(\d{1,2}) o’clock|(counter-clockwise|clockwise)|the (near|off) hand|x (-?\d+(?:\.\d+)?), y)\b/gi;

/** Words that say no more than a side: what a sentence made here could hold as well. */
const BARE = /^(to|the|on|upon|at|in|of|from|his|its|a|and|side|hand|rein|o’clock|,|\s)*$/i;

/** Whether words are told from others by a side, an hour or a place along x, and by more than that: “to the left” alone
 *  could stand in any sentence made here, and is mirrored like it. */
export function speaksOfSides(words: string): boolean {
  return words.search(SIDED) !== -1 && !BARE.test(words.replace(SIDED, ""));
}

/** `quoted`: words that stay as they are wherever they stand; so does whatever stands between “ and ”. */
export function mirrorWords(sentence: string, quoted: readonly string[]): string {
  const kept = quoted.filter((words) => words !== "" && sentence.includes(words));
  return sentence
    .split(/(“[^”]*”)/)
    .map((part, index) => (index % 2 === 1 ? part : around(part, kept)))
    .join("");
}

/** What lies around the quoted words is changed, the longest first. */
function around(sentence: string, kept: readonly string[]): string {
  const [longest, ...others] = [...kept].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  if (longest === undefined) return sentence.replace(SIDED, changed);
  return sentence
    .split(longest)
    .map((part) => around(part, others))
    .join(longest);
}

function changed(
  all: string,
  side: string | undefined,
  hour: string | undefined,
  sense: string | undefined,
  hand: string | undefined,
  x: string | undefined,
): string {
  if (side !== undefined) return likeFirst(side, side.toLowerCase() === "left" ? "right" : "left");
  if (hour !== undefined) return `${mirrorHour(Number(hour))} o’clock`;
  if (sense !== undefined)
    return likeFirst(sense, sense.toLowerCase() === "clockwise" ? "counter-clockwise" : "clockwise");
  if (hand !== undefined) return all.replace(hand, hand.toLowerCase() === "near" ? "off" : "near");
  if (x !== undefined) return Number(x) === 0 ? all : `x ${x.startsWith("-") ? x.slice(1) : `-${x}`}, y`;
  return all;
}

/** With a capital where the word it stands for has one. */
function likeFirst(word: string, other: string): string {
  return /^[A-Z]/.test(word) ? other.charAt(0).toUpperCase() + other.slice(1) : other;
}
