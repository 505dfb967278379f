/** shared/ride/puzzle/puzzle-memory.ts - what was laid out and ridden for one puzzle, kept for the next after an edit.
 *  May import: schema types, siblings. Whoever keeps one makes it; nothing here is kept by the module. An exercise none of
 *  whose rows have changed is not laid out again, and a stage is ridden again only where something of it has. */
import type { ExercisePart } from "./exercise-part.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import { RiddenBefore } from "./ride-on.ts";

/** States past which everything is forgotten, so that a long day of edits does not fill the memory of the machine. */
export const MOST_STATES = 20_000;

export class PuzzleMemory {
  readonly #worlds = new Map<string, RiddenBefore>();
  /** By exercise and how it is done; the rows it was made of stand beside it. */
  readonly #parts = new Map<string, { rows: string; part: ExercisePart }>();

  before({ key }: PuzzleWorld): RiddenBefore {
    const states = [...this.#worlds.values()].reduce((sum, { states: table }) => sum + table.size, 0);
    if (states > MOST_STATES) this.#worlds.clear();
    const known = this.#worlds.get(key);
    if (known !== undefined) return known;
    const made = new RiddenBefore();
    this.#worlds.set(key, made);
    return made;
  }

  /** `rows`: all it is made of, as a text. */
  part(key: string, rows: string, make: () => ExercisePart): ExercisePart {
    const known = this.#parts.get(key);
    if (known?.rows === rows) return known.part;
    const part = make();
    this.#parts.set(key, { rows, part });
    return part;
  }
}
