/** server/import/number-order.ts - which of the numbers at the starts of paragraphs number the paragraphs.
 *  May import: nothing. Lists inside a text and tables of contents begin with numbers too; what cites is the longest
 *  ascending chain, without single numbers far from their neighbours (I12). O(n log n). */

/** A step larger than this is a leap, and a number alone between two leaps is none of the chain. */
const LARGEST_STEP = 10;

/** Indexes into `numbers`, ascending, of those that number the paragraphs. Of equal numbers the latest is taken. */
export const ascendingChain = (numbers: readonly number[]): number[] => {
  // ends[k]: index of the smallest number that ends a chain of k + 1 numbers, so far.
  const ends: number[] = [];
  const before: number[] = [];
  for (const [index, number] of numbers.entries()) {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((numbers[ends[middle] ?? 0] ?? 0) < number) low = middle + 1;
      else high = middle;
    }
    before.push(low === 0 ? -1 : (ends[low - 1] ?? -1));
    ends[low] = index;
  }
  const chain: number[] = [];
  for (let at = ends.at(-1) ?? -1; at >= 0; at = before[at] ?? -1) chain.push(at);
  return withoutLoners(chain.reverse(), numbers);
};

const withoutLoners = (chain: readonly number[], numbers: readonly number[]): number[] => {
  const runs: number[][] = [];
  for (const index of chain) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const step = last === undefined ? Number.POSITIVE_INFINITY : (numbers[index] ?? 0) - (numbers[last] ?? 0);
    if (run !== undefined && step <= LARGEST_STEP) run.push(index);
    else runs.push([index]);
  }
  const longest = Math.max(0, ...runs.map((run) => run.length));
  return longest < 3 ? [...chain] : runs.filter((run) => run.length > 1).flat();
};
