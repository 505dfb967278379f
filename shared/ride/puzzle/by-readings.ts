/** shared/ride/puzzle/by-readings.ts - what a computation gives, kept by the readings it asked for.
 *  May import: types of shared/decide. A computation tells by asking which cruxes bear on it: nobody has to know beforehand.
 *  It must ask in the same order whenever it is given the same answers. */
import type { ReadingOf } from "../../decide/puzzle.ts";

type Node<T> = { is: "asks"; crux: string; ways: Map<string | null, Node<T>> } | { is: "gives"; value: T };

export class ByReadings<T> {
  #root: Node<T> | null = null;
  readonly #compute: (readingOf: ReadingOf) => T;

  /** `compute` may keep the `readingOf` it is given: it goes on answering what was asked, and throws RangeError for any
   *  other crux. */
  constructor(compute: (readingOf: ReadingOf) => T) {
    this.#compute = compute;
  }

  /** Computed once for each combination of the readings that are asked for. */
  get(readingOf: ReadingOf): T {
    let node = this.#root;
    while (node !== null && node.is === "asks") {
      const { ways, crux } = node;
      const reading = readingOf(crux);
      node = ways.get(reading) ?? null;
    }
    if (node !== null) return node.value;
    const asked = new Map<string, string | null>();
    let over = false;
    const value = this.#compute((crux) => {
      const known = asked.get(crux);
      if (known !== undefined) return known;
      if (over) throw new RangeError(`The crux ${crux} was asked for after the computation that bears on it was over.`);
      const reading = readingOf(crux);
      asked.set(crux, reading);
      return reading;
    });
    over = true;
    this.#keep([...asked], value);
    return value;
  }

  #keep(asked: readonly [string, string | null][], value: T): void {
    let node = this.#root;
    let put = (made: Node<T>): void => {
      this.#root = made;
    };
    for (const [crux, reading] of asked) {
      if (node === null) {
        node = { is: "asks", crux, ways: new Map() };
        put(node);
      }
      if (node.is !== "asks" || node.crux !== crux)
        throw new RangeError(`A computation asked for ${crux} where it asked for something else before.`);
      const { ways } = node;
      put = (made) => ways.set(reading, made);
      node = ways.get(reading) ?? null;
    }
    put({ is: "gives", value });
  }

  /** Every combination that is asked for, with what it gives; null when there are more than `most`. `readingsOf` gives
   *  the readings to try; a crux without any is answered with null. */
  all(readingsOf: (crux: string) => readonly string[], most: number): Leaf<T>[] | null {
    const leaves: Leaf<T>[] = [];
    const todo: ReadonlyMap<string, string | null>[] = [new Map()];
    for (let fixed = todo.pop(); fixed !== undefined; fixed = todo.pop()) {
      const given = fixed;
      const path = new Map<string, string | null>();
      const value = this.get((crux) => {
        const reading = given.has(crux) ? (given.get(crux) ?? null) : (readingsOf(crux)[0] ?? null);
        path.set(crux, reading);
        return reading;
      });
      leaves.push({ readings: path, value });
      if (leaves.length + todo.length > most) return null;
      // Each crux met for the first time on this path is tried otherwise too, those before it as they are.
      const before = new Map<string, string | null>();
      for (const [crux, reading] of path) {
        if (!given.has(crux))
          for (const other of readingsOf(crux).slice(1)) todo.push(new Map([...before, [crux, other]]));
        before.set(crux, reading);
      }
    }
    return leaves;
  }
}

export interface Leaf<T> {
  /** What was asked for, in the order it was asked. */
  readings: ReadonlyMap<string, string | null>;
  value: T;
}
