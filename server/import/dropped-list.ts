/** server/import/dropped-list.ts - gathers what is not in the passages; equal losses become one entry with a count.
 *  May import: schema types. Keeps rule I1 (server/import/RULES.md). */
import type { Dropped, FilePlace } from "../../schema/imported.ts";

const SAMPLE_LENGTH = 200;

/** Cuts at `length` UTF-16 units without splitting a surrogate pair. */
const cutSample = (words: string): string => {
  const folded = words.replace(/\s+/g, " ").trim();
  if (folded.length <= SAMPLE_LENGTH) return folded;
  const cut = folded.slice(0, SAMPLE_LENGTH - 1);
  return `${/[\uD800-\uDBFF]$/.test(cut) ? cut.slice(0, -1) : cut}…`;
};

export class DroppedList {
  readonly #entries = new Map<string, Dropped>();

  /** Reports one loss; `words` are the words that were lost, empty when none were. Place and sample of the first stay. */
  add(what: string, why: string, place: FilePlace, words = ""): void {
    const key = `${what}\n${why}`;
    const entry = this.#entries.get(key);
    if (entry === undefined) {
      this.#entries.set(key, { what, why, place, count: 1, sample: cutSample(words.slice(0, 4 * SAMPLE_LENGTH)) });
      return;
    }
    entry.count += 1;
    if (entry.sample === "") entry.sample = cutSample(words.slice(0, 4 * SAMPLE_LENGTH));
  }

  /** In the order of the first place. */
  toArray(): Dropped[] {
    return [...this.#entries.values()].sort((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
  }
}
