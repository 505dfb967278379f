/** shared/ride/puzzle/state-table.ts - states of a ride by short names: equal ones have the same name.
 *  May import: siblings. */
import { keyOf, type Remembered } from "./remembered.ts";

export class StateTable {
  readonly #byKey = new Map<string, string>();
  readonly #states = new Map<string, Remembered>();

  nameOf(held: Remembered): string {
    const key = keyOf(held);
    const known = this.#byKey.get(key);
    if (known !== undefined) return known;
    const name = `state ${this.#states.size + 1}`;
    this.#byKey.set(key, name);
    this.#states.set(name, held);
    return name;
  }

  /** Throws RangeError for a name that was not given out here. */
  stateOf(name: string): Remembered {
    const found = this.#states.get(name);
    if (found === undefined) throw new RangeError(`There is no ${name} in this ride.`);
    return found;
  }

  get size(): number {
    return this.#states.size;
  }
}
