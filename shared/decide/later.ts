/** shared/decide/later.ts - which readings still to come each cell can lead to, among assignments that hold.
 *  May import: siblings in shared/decide. Bits stand in words of 32, one array per word; there are as many words as cruxes
 *  still to come need. */

export type Later = readonly Uint32Array[];

/** Of each cell before an event where every cell leads to one cell after, or to none (-1). */
export function laterBefore(later: Later, to: Int32Array | null): Later {
  if (!to) return later;
  return later.map((word) => {
    const before = new Uint32Array(to.length);
    for (let cell = 0; cell < to.length; cell += 1) {
      const goal = to[cell] as number;
      if (goal >= 0) before[cell] = word[goal] as number;
    }
    return before;
  });
}

/** Of each cell before a crux enters: all that the cells after it can lead to, and the crux's own readings there.
 *  `alive` says which cells after lead to an assignment that holds, `bits` which bit each one's own reading has. */
export function laterBeforeEntering(
  later: Later,
  { from, before, alive, bits }: { from: Int32Array; before: number; alive: Uint8Array; bits: Uint16Array },
): Later {
  const top = bits.reduce((most, bit) => Math.max(most, bit), 0);
  const words = Math.max(later.length, (top >>> 5) + 1);
  return Array.from({ length: words }, (_, index) => {
    const word = later[index];
    const merged = new Uint32Array(before);
    for (let cell = 0; cell < from.length; cell += 1) {
      if (alive[cell] !== 1) continue;
      const bit = bits[cell % bits.length] as number;
      const own = bit >>> 5 === index ? 1 << (bit & 31) : 0;
      const goal = from[cell] as number;
      merged[goal] = (merged[goal] as number) | (word?.[cell] ?? 0) | own;
    }
    return merged;
  });
}
