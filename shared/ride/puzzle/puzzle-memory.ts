/** shared/ride/puzzle/puzzle-memory.ts - what was ridden for one puzzle, kept for the next after an edit.
 *  May import: siblings. Whoever keeps one makes it; nothing here is kept by the module. */
import type { PuzzleWorld } from "./puzzle-world.ts";
import { RiddenBefore } from "./ride-on.ts";

/** States past which everything is forgotten, so that a long day of edits does not fill the memory of the machine. */
export const MOST_STATES = 20_000;

export class PuzzleMemory {
  readonly #worlds = new Map<string, RiddenBefore>();

  before({ key }: PuzzleWorld): RiddenBefore {
    const states = [...this.#worlds.values()].reduce((sum, { states: table }) => sum + table.size, 0);
    if (states > MOST_STATES) this.#worlds.clear();
    const known = this.#worlds.get(key);
    if (known !== undefined) return known;
    const made = new RiddenBefore();
    this.#worlds.set(key, made);
    return made;
  }
}
