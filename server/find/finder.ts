/** server/find/finder.ts - finds words in everything a store holds. One index a group of things, made when it is first
 *  asked for and kept until a row it is made of has changed.
 *  May import: schema, shared/text, server/store, siblings. */
import { FIND_GROUPS, type FindAnswer, type FindGroup, type FindQuery, type FoundGroup } from "../../schema/find.ts";
import { foldForSearch } from "../../shared/text/fold.ts";
import { WordFinder, wantedWords } from "../../shared/text/wanted-words.ts";
import { kindsTouchedSince, newestNumber, type Store } from "../store/index.ts";
import { GROUP_SOURCES } from "./entries.ts";
import type { Entry } from "./entry.ts";
import { foundOf } from "./found.ts";
import { type Candidate, type WordIndex, wordIndexOf } from "./word-index.ts";

/** A group as it was when its index was made. */
interface Shelf {
  entries: readonly Entry[];
  /** Per entry the folded title, then the folded parts. */
  folded: readonly (readonly string[])[];
  index: WordIndex;
}

export interface Finder {
  find(query: FindQuery): FindAnswer;
}

export function finderOf(store: Store): Finder {
  const shelves = new Map<FindGroup, Shelf>();
  /** Folded forms of the texts that were on a shelf when it was last made: most of them have not changed. */
  const folds = new Map<FindGroup, ReadonlyMap<string, string>>();
  let madeAt = 0;

  function dropStale(): number {
    const now = newestNumber(store);
    if (now === madeAt) return now;
    const touched = new Set(kindsTouchedSince(store, madeAt));
    for (const group of FIND_GROUPS) {
      if (GROUP_SOURCES[group].madeOf.some((kind) => touched.has(kind))) shelves.delete(group);
    }
    madeAt = now;
    return now;
  }

  function shelfOf(group: FindGroup): Shelf {
    const kept = shelves.get(group);
    if (kept !== undefined) return kept;
    const known = folds.get(group);
    const used = new Map<string, string>();
    const fold = (text: string): string => {
      const folded = used.get(text) ?? known?.get(text) ?? foldForSearch(text);
      used.set(text, folded);
      return folded;
    };
    const entries = GROUP_SOURCES[group].entries(store);
    const folded = entries.map(({ title, parts }) => [fold(title), ...parts.map(({ text }) => fold(text))]);
    const index = wordIndexOf(folded.map(([title = "", ...rest]) => ({ title, rest: rest.join("\n") })));
    const shelf = { entries, folded, index };
    shelves.set(group, shelf);
    folds.set(group, used);
    return shelf;
  }

  function findIn(group: FindGroup, finder: WordFinder, limit: number): FoundGroup {
    const { entries, folded, index } = shelfOf(group);
    const inOrder = finder.wanted.flatMap(({ words }, number) => (words.length > 1 ? [number] : []));
    const whole = index
      .candidates(finder.wanted)
      .filter(({ at }) => inOrder.every((number) => folded[at]?.some((text) => finder.holds(text, number))));
    const shown = whole.sort(group === "passages" ? byBook : byScore).slice(0, limit);
    return {
      group,
      total: whole.length,
      found: shown.flatMap(({ at }) => {
        const entry = entries[at];
        return entry === undefined ? [] : [foundOf(store, entry, finder)];
      }),
    };
  }

  return {
    find({ q, limit }) {
      const at = dropStale();
      const finder = new WordFinder(wantedWords(q));
      if (finder.wanted.length === 0) return { at, groups: [] };
      const groups = FIND_GROUPS.map((group) => findIn(group, finder, limit));
      return { at, groups: groups.filter(({ total }) => total > 0) };
    },
  };
}

/** Passages are listed as the book has them, those with the very words first. */
function byBook(a: Candidate, b: Candidate): number {
  return b.exact - a.exact || a.at - b.at;
}

function byScore(a: Candidate, b: Candidate): number {
  return b.exact - a.exact || b.score - a.score || a.at - b.at;
}
