/** shared/ride/lengths-in-words.ts - lengths that stand in words: "two lengths", "6,5 metres", "ten paces".
 *  May import: shared/ground, types of shared/hands. Metres. */
import { USUAL_BODY } from "../ground/riders.ts";
import type { ControlState } from "../hands/state.ts";

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^(m|metres?|meters?)$/, 1],
  // The pace of a text is taken for one step of a man, 0.7 to 0.9 m: a guess.
  [/^paces?$/, 0.8],
  [/^(feet|foot|ft)$/, 0.3048],
  [/^(yards?|yd)$/, 0.9144],
  [/^((horse|mount)[’']?s?’? )?lengths?( of (the|a|his) (horse|mount))?$/, USUAL_BODY.ahead + USUAL_BODY.behind],
];
const NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const LENGTH = new RegExp(
  `(?<![\\p{L}\\p{N}])(\\d+(?:[.,]\\d+)?|an?|${NUMBERS.join("|")})\\s+((?:\\p{L}+(?:[’']s?)?\\s+)?lengths?(?:\\s+of\\s+(?:the|a|his)\\s+\\p{L}+)?|\\p{L}+)`,
  "giu",
);

/** Something whose length can be a measure; null where its length is not known. */
export interface Thing {
  name: string;
  metres: number | null;
}

/** What is carried, by which words can measure: "a spear's length". */
export function thingsOf({ objects }: ControlState): Thing[] {
  return objects.map(({ object }) => ({ name: object.name, metres: object.lengthMetres }));
}

/** Every length that can be told, in the order of the words. */
export function lengthsIn(words: string): number[] {
  return measuresIn(words).flatMap((metres) => metres ?? []);
}

/** Every length, in the order of the words; null where it is that of something whose length is not known. */
export function measuresIn(words: string, things: readonly Thing[] = []): (number | null)[] {
  return [...words.matchAll(LENGTH)].flatMap(([, count = "", unit = ""]) => {
    const called = unit.toLowerCase().replace(/\s+/g, " ");
    const each = UNITS.find(([name]) => name.test(called))?.[1] ?? lengthOfThing(called, things);
    const times = countOf(count.toLowerCase());
    if (each === undefined || !(times > 0)) return [];
    return [each === null ? null : times * each];
  });
}

/** The length of what is named by its last word; undefined where no length is meant, null where it is not known or several
 *  things of different length could be meant. */
function lengthOfThing(called: string, things: readonly Thing[]): number | null | undefined {
  const [, before, , behind] = /^(?:(\p{L}+)(?:[’']s?)? )?lengths?( of \p{L}+ (\p{L}+))?$/u.exec(called) ?? [];
  const thing = behind ?? before;
  if (thing === undefined) return undefined;
  const meant = things.filter(({ name }) => isCalled(name, thing) || isCalled(name, thing.replace(/s$/, "")));
  const [first] = meant;
  return first !== undefined && meant.every(({ metres }) => metres === first.metres) ? first.metres : null;
}

function isCalled(name: string, word: string): boolean {
  return name.toLowerCase().split(/\s+/).at(-1) === word;
}

function countOf(word: string): number {
  if (word === "a" || word === "an") return 1;
  const named = NUMBERS.indexOf(word);
  return named === -1 ? Number(word.replace(",", ".")) : named + 1;
}
