/** shared/decide/quick-explain.ts - an irreducible part of something that cannot hold together.
 *  May import: nothing. The search halves what is left, as in U. Junker, “QuickXplain”, AAAI 2004: few questions where few
 *  of many items clash. */

/** A smallest part in the sense that it cannot hold and each proper part of it can; not the shortest of such parts. The
 *  items together must not hold; dropping some must never make less hold. Empty when nothing holds even without them. */
export function irreducible<Item>(items: readonly Item[], holds: (items: readonly Item[]) => boolean): Item[] {
  if (!holds([])) return [];
  return search([], false, items, holds);
}

function search<Item>(
  ground: readonly Item[],
  grown: boolean,
  items: readonly Item[],
  holds: (items: readonly Item[]) => boolean,
): Item[] {
  if (grown && !holds(ground)) return [];
  if (items.length === 1) return [...items];
  const middle = Math.ceil(items.length / 2);
  const [first, second] = [items.slice(0, middle), items.slice(middle)];
  const needed = search([...ground, ...first], first.length > 0, second, holds);
  return [...search([...ground, ...needed], needed.length > 0, first, holds), ...needed];
}
