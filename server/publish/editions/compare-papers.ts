/** server/publish/editions/compare-papers.ts - what one edition of a paper says otherwise than another, item by item.
 *  May import: schema types, diff, siblings. Items are known by what they are made from, so a step that is only numbered
 *  anew is no difference of its own: all of those are one note. */
import { diffArrays } from "diff";
import type { Paper } from "../../../schema/paper.ts";
import { itemsOf, type Of, type PaperItem, type PaperLine } from "./paper-items.ts";

export interface Difference {
  is: "reads" | "added" | "left out" | "moved";
  /** In the words of the older edition: "Step 5, left hand"; of what is new, where it comes: "After step 7". */
  where: string;
  /** Title of the exercise it is in, on a paper of several; else "". */
  exercise: string;
  element: string | null;
  /** The number the older edition showed; of what is new, the number it has now. */
  shown: string | null;
  /** "" for what is added. */
  was: string;
  /** "" for what is left out. */
  now: string;
  of: Of;
}

export interface Compared {
  differences: Difference[];
  /** "Steps 6 to 9 are now numbered 7 to 10." "" when none is. */
  renumbered: string;
}

/** In the order of the older paper, what is new where it comes. Empty when both say the same. */
export function comparePapers(older: Paper, newer: Paper): Compared {
  const [olds, news] = [itemsOf(older), itemsOf(newer)];
  const newByKey = new Map(news.map((item) => [item.key, item]));
  const oldKeys = new Set(olds.map(({ key }) => key));
  const moved = movedKeys(
    olds.filter(({ key, element }) => element !== null && newByKey.has(key)),
    news.filter(({ key, element }) => element !== null && oldKeys.has(key)),
  );
  const placed = olds.flatMap((item, at) =>
    differencesOf(item, newByKey.get(item.key), news, moved).map((difference) => ({ at, difference })),
  );
  const placeOf = new Map(olds.map(({ key }, at) => [key, at]));
  let last = -1;
  let underNew: Difference | null = null;
  for (const item of news) {
    last = placeOf.get(item.key) ?? last;
    if (oldKeys.has(item.key) || item.element !== null) underNew = null;
    if (oldKeys.has(item.key)) continue;
    if (underNew !== null && !isHeading(item)) {
      addUnder(underNew, item);
      continue;
    }
    // What is new comes behind what stood before it.
    const difference = addedBehind(item, olds.slice(0, last + 1));
    placed.push({ at: last + 0.5, difference });
    underNew = isHeading(item) ? difference : null;
  }
  placed.sort((a, b) => a.at - b.at);
  return { differences: placed.map(({ difference }) => difference), renumbered: renumbering(olds, newByKey) };
}

function differencesOf(
  item: PaperItem,
  now: PaperItem | undefined,
  news: readonly PaperItem[],
  moved: ReadonlySet<string>,
): Difference[] {
  if (now === undefined) return [whole("left out", item)];
  const said = linesDiffer(item, now);
  return moved.has(item.key) ? [move(item, news, now), ...said] : said;
}

/** The lines of one item that read otherwise: pairs where a line took another's place, else struck out or added. */
function linesDiffer(old: PaperItem, now: PaperItem): Difference[] {
  const places = [...new Set([...old.lines, ...now.lines].map(({ place }) => place))];
  return places.flatMap((place) => {
    const [before, after] = [wordsAt(old.lines, place), wordsAt(now.lines, place)];
    const found: Difference[] = [];
    let struck: string[] = [];
    const strike = () => {
      for (const words of struck) found.push(reads(old, place, words, ""));
      struck = [];
    };
    for (const { added, removed, value } of diffArrays(before, after)) {
      for (const words of value) {
        if (removed) struck.push(words);
        else if (added) {
          const [instead = "", ...rest] = struck;
          struck = rest;
          found.push(reads(old, place, instead, words, now.of));
        }
      }
      if (!removed) strike();
    }
    strike();
    return found;
  });
}

const wordsAt = (lines: readonly PaperLine[], place: string): string[] =>
  lines.filter((line) => line.place === place).map(({ words }) => words);

/** Which line of a column it is, is not said: a printed line breaks where its column ends, and the words name the place. */
function reads(item: PaperItem, place: string, was: string, now: string, nowOf: Of = []): Difference {
  return {
    is: "reads",
    where: place === "" ? item.where : `${item.where}, ${place}`,
    exercise: item.exercise,
    element: item.element,
    shown: item.shown,
    was,
    now,
    of: both(item.of, nowOf),
  };
}

function both(one: Of, other: Of): Of {
  const known = new Set(one.map(({ kind, id }) => `${kind} ${id}`));
  return [...one, ...other.filter(({ kind, id }) => !known.has(`${kind} ${id}`))];
}

function whole(is: "added" | "left out", item: PaperItem): Difference {
  const words = allWords(item);
  const { where, exercise, element, shown, of } = item;
  return {
    is,
    where,
    exercise,
    element,
    shown,
    was: is === "added" ? "" : words,
    now: is === "added" ? words : "",
    of,
  };
}

const allWords = ({ lines }: PaperItem): string => lines.map(({ words }) => words).join("; ");

const isHeading = ({ key }: PaperItem): boolean => key.startsWith("heading ");

/** A step comes behind the step before it, by its older number; a heading behind what the holder of the older paper finds
 *  there. Anything else is named by the heading it stands under. */
function addedBehind(item: PaperItem, before: readonly PaperItem[]): Difference {
  const added = whole("added", item);
  if (item.shown !== null) {
    const step = before.findLast(({ shown, exercise }) => shown !== null && exercise === item.exercise)?.shown;
    return { ...added, where: step === undefined ? "Before the first step" : `After step ${step}` };
  }
  if (!isHeading(item)) return added;
  const step = before.at(-1)?.shown ?? null;
  const behind = before.at(-1)?.where ?? "";
  if (step !== null) return { ...added, where: `After step ${step}` };
  const under = behind === "Heading" ? (before.at(-1)?.lines[0]?.words ?? "") : behind;
  return { ...added, where: under === "" ? "A new heading" : `Under “${under}”` };
}

/** What stands under a heading that is new is told with it. */
function addUnder(heading: Difference, item: PaperItem): void {
  const ends = /[.!?]["”’)]?$/u.test(heading.now);
  const between = heading.now.includes(" – ") ? (ends ? " " : "; ") : " – ";
  heading.now = `${heading.now}${between}${allWords(item)}`;
  heading.of = both(heading.of, item.of);
}

function move(item: PaperItem, news: readonly PaperItem[], other: PaperItem): Difference {
  const before = news.slice(0, news.indexOf(other)).findLast(({ element }) => element !== null);
  return {
    ...{
      is: "moved",
      where: item.where,
      exercise: item.exercise,
      element: item.element,
      shown: item.shown,
      of: other.of,
    },
    was: item.lines[0]?.words ?? "",
    now: before === undefined ? "now comes first" : `now comes after “${before.lines[0]?.words ?? before.where}”`,
  };
}

/** Keys out of the longest run that keeps its order. */
function movedKeys(olds: readonly PaperItem[], news: readonly PaperItem[]): Set<string> {
  const order = new Map(news.map(({ key }, index) => [key, index]));
  const places = olds.map(({ key }) => order.get(key) ?? -1);
  const best = places.map(() => 1);
  const from = places.map(() => -1);
  for (let i = 0; i < places.length; i += 1) {
    for (let j = 0; j < i; j += 1) {
      if ((places[j] ?? 0) < (places[i] ?? 0) && (best[j] ?? 0) + 1 > (best[i] ?? 0)) {
        best[i] = (best[j] ?? 0) + 1;
        from[i] = j;
      }
    }
  }
  const kept = new Set<number>();
  let at = best.indexOf(Math.max(0, ...best));
  for (; at >= 0; at = from[at] ?? -1) kept.add(at);
  return new Set(olds.flatMap(({ key }, index) => (kept.has(index) ? [] : [key])));
}

/** Runs of steps whose number alone changed, each as one clause. */
function renumbering(olds: readonly PaperItem[], newByKey: ReadonlyMap<string, PaperItem>): string {
  const pairs = olds.flatMap(({ key, shown, exercise }) => {
    const now = newByKey.get(key)?.shown ?? null;
    const [was, is] = [Number(shown), Number(now)];
    return shown === null || now === null || shown === now || Number.isNaN(was + is) ? [] : [{ was, is, exercise }];
  });
  const runs: { was: number; is: number; exercise: string; length: number }[] = [];
  for (const { was, is, exercise } of pairs) {
    const run = runs.find(
      (one) =>
        exercise === one.exercise && is - was === one.is - one.was && was <= one.was + one.length && was >= one.was,
    );
    if (run === undefined) runs.push({ was, is, exercise, length: 1 });
    else run.length = Math.max(run.length, was - run.was + 1);
  }
  const clauses = runs.map(({ was, is, exercise, length }) => {
    const inIt = exercise === "" ? "" : ` of “${exercise}”`;
    return length === 1
      ? `step ${was}${inIt} is now numbered ${is}`
      : `steps ${was} to ${was + length - 1}${inIt} are now numbered ${is} to ${is + length - 1}`;
  });
  const [first] = clauses;
  return first === undefined
    ? ""
    : `${first.charAt(0).toUpperCase()}${[first, ...clauses.slice(1)].join("; ").slice(1)}.`;
}
