/** server/publish/write/pdf/fit.ts - the largest type with which a paper fits the pages wished for, in few trials.
 *  May import: siblings. What is filled grows with the square of the type, nearly: the first trial tells about where to try
 *  next. */

/** What a trial gave: how many pages, and how much of them is filled (1.5: all of one and half of another). */
export interface Trial {
  count: number;
  filled: number;
}

/** The trial with the first (largest) of `sizes` that takes no more pages than the first of `wishes`, else than the next;
 *  else the one that takes as few as the last size. Without wishes it is the first size. Throws RangeError for no sizes. */
export async function fitted<T extends Trial>(
  sizes: readonly number[],
  wishes: readonly number[],
  set: (at: number) => Promise<T>,
): Promise<T> {
  const last = sizes.length - 1;
  if (last < 0) throw new RangeError("There is at least one size to try.");
  const made = new Map<number, T>();
  const trial = async (at: number): Promise<T> => {
    const found = made.get(at) ?? (await set(at));
    made.set(at, found);
    return found;
  };
  const largest = await trial(0);
  const within = async (wish: number): Promise<T | null> => {
    if (largest.count <= wish) return largest;
    let at = likely(sizes, largest.filled, wish);
    // One that fits is gone up from, one that does not is gone down from; both end at the first that does not or does.
    while (at > 1 && (await trial(at)).count <= wish && (await trial(at - 1)).count <= wish) at -= 1;
    while (at <= last && (await trial(at)).count > wish) at += 1;
    return at <= last ? trial(at) : null;
  };
  for (const wish of wishes) {
    const found = await within(wish);
    if (found !== null) return found;
  }
  if (wishes.length === 0) return largest;
  // Where no wish can be met, small type would be no gain: the largest that takes as few pages as the smallest.
  const smallest = await trial(last);
  return (await within(smallest.count)) ?? smallest;
}

/** Index of the first size that should do, from 1; the last where none seems to. */
function likely(sizes: readonly number[], filled: number, wish: number): number {
  const [first = 1] = sizes;
  const size = first * Math.sqrt(wish / filled);
  const found = sizes.findIndex((one) => one <= size);
  return Math.max(1, found === -1 ? sizes.length - 1 : found);
}
