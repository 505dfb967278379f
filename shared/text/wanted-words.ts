/** shared/text/wanted-words.ts - what is asked for in a search, and where it stands in a folded text.
 *  May import: siblings in shared/text. Keeps rules T29-T31 (shared/text/RULES.md).
 *  Offsets: UTF-16 units of the folded text from 0, half-open. */
import { foldForSearch } from "./fold.ts";

/** Words that must stand in a text. More than one stand beside each other, in this order. */
export interface Wanted {
  /** Folded; letters and digits only. */
  readonly words: readonly string[];
  /** Whether the last word may go on ("turn" finds "turns"): all but what stands between quotation marks. */
  readonly goesOn: boolean;
}

export interface Hit {
  readonly from: number;
  readonly to: number;
  /** Which of what is wanted, from 0. */
  readonly wanted: number;
}

/** Most things one search asks for; what comes after them is left out. */
export const MOST_WANTED = 24;

const WORD = /[\p{L}\p{N}]+/gu;
const AT_WORD_START = "(?<![\\p{L}\\p{N}])";
const AT_WORD_END = "(?![\\p{L}\\p{N}])";
const LETTERS = "[\\p{L}\\p{N}]*";
const BETWEEN_WORDS = "[^\\p{L}\\p{N}]+";

/** Scripts that join words: particles to the word in Arabic, everything to everything where no blanks are written. */
const JOINING = /[\p{Script=Arabic}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u;

/** The words of a folded text, in order. */
export function wordsOfFolded(folded: string): string[] {
  return folded.match(WORD) ?? [];
}

/** Whether the word may begin inside another, so that رمح is found in والرمح. */
export function maySitInside(word: string): boolean {
  return JOINING.test(word);
}

/** What a person typed, as what is wanted. Only quotation marks mean something; every other sign parts words. A mark
 *  that is not closed yet counts to the end, and its last word may go on. Empty when there is no letter or digit. */
export function wantedWords(query: string): Wanted[] {
  const pieces = foldForSearch(query).split('"');
  const wanted = pieces.flatMap((piece, index): Wanted[] => {
    const words = wordsOfFolded(piece);
    if (words.length === 0) return [];
    if (index % 2 === 1) return [{ words, goesOn: index === pieces.length - 1 }];
    return words.map((word) => ({ words: [word], goesOn: true }));
  });
  const known = new Set<string>();
  const once = wanted.filter(({ words, goesOn }) => {
    const key = `${goesOn} ${words.join(" ")}`;
    return known.has(key) ? false : known.add(key);
  });
  return once.slice(0, MOST_WANTED);
}

/** Finds all that is wanted in one folded text after another. */
export class WordFinder {
  readonly #patterns: readonly RegExp[];

  constructor(readonly wanted: readonly Wanted[]) {
    this.#patterns = wanted.map(patternOf);
  }

  /** Whether the folded text holds the one of that number, from 0. */
  holds(folded: string, number: number): boolean {
    const pattern = this.#patterns[number];
    return pattern !== undefined && folded.search(pattern) !== -1;
  }

  /** Every place of everything wanted, in order; places that overlap are given once, as the longest. */
  hits(folded: string): Hit[] {
    const all = this.#patterns.flatMap((pattern, wanted) =>
      [...folded.matchAll(pattern)].map((match) => ({
        from: match.index,
        to: match.index + match[0].length,
        wanted,
      })),
    );
    all.sort((a, b) => a.from - b.from || b.to - a.to || a.wanted - b.wanted);
    const apart: Hit[] = [];
    for (const hit of all) {
      const last = apart.at(-1);
      if (last === undefined || hit.from >= last.to) apart.push(hit);
    }
    return apart;
  }
}

/** Whole words are lit, also where only their beginning was asked for. */
function patternOf({ words, goesOn }: Wanted): RegExp {
  const [first = ""] = words;
  const inside = goesOn && words.length === 1 && maySitInside(first);
  const start = inside ? LETTERS : AT_WORD_START;
  return new RegExp(`${start}${words.join(BETWEEN_WORDS)}${goesOn ? LETTERS : AT_WORD_END}`, "gu");
}
