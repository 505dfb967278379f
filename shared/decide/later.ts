/** shared/decide/later.ts - which readings still to come each cell can lead to, among assignments that hold.
 *  May import: siblings in shared/decide. Bits stand in words of 32, one array per word; there are as many words as cruxes
 *  still to come need. */
import type { Link } from "./links.ts";

export type Later = readonly Uint32Array[];

/** Of each cell before an event, from those of the cells after. `bitOf` gives the bit of each value of a crux that enters. */
export function laterBefore(later: Later, link: Link, bitOf: (value: number) => number): Later {
  if (link.is === "enter") return merge(later, link, bitOf);
  const { to } = link;
  if (!to) return later;
  return later.map((word) => {
    const before = new Uint32Array(to.length);
    for (let cell = 0; cell < to.length; cell += 1) before[cell] = word[to[cell] as number] as number;
    return before;
  });
}

function merge(later: Later, { from, before, value }: Link & { is: "enter" }, bitOf: (value: number) => number): Later {
  const bits = Array.from({ length: value.reduce((most, one) => Math.max(most, one), 0) + 1 }, (_, one) => bitOf(one));
  const words = Math.max(later.length, (Math.max(...bits) >>> 5) + 1);
  return Array.from({ length: words }, (_, index) => {
    const word = later[index];
    const own = bits.map((bit) => (bit >>> 5 === index ? 1 << (bit & 31) : 0));
    const merged = new Uint32Array(before);
    for (let cell = 0; cell < from.length; cell += 1) {
      const goal = from[cell] as number;
      const further = word ? (word[cell] as number) : 0;
      merged[goal] = (merged[goal] as number) | further | (own[value[cell] as number] as number);
    }
    return merged;
  });
}
