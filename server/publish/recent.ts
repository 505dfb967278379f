/** server/publish/recent.ts - the values that were asked for last, by their keys.
 *  May import: nothing. */

/** Holds `most` values; past that, the one goes that was longest not asked for. */
export class Recent<T> {
  readonly #values = new Map<string, { value: T }>();

  constructor(readonly most: number) {}

  /** The value under the key; made, and held, where there is none. */
  get(key: string, make: () => T): T {
    const held = this.#values.get(key) ?? { value: make() };
    this.#values.delete(key);
    this.#values.set(key, held);
    for (const oldest of this.#values.keys()) {
      if (this.#values.size <= this.most) break;
      this.#values.delete(oldest);
    }
    return held.value;
  }
}
