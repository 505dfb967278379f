/** server/import/number-order.ts - which of the numbers at the starts of paragraphs number the paragraphs.
 *  May import: nothing. Lists inside a text and tables of contents begin with numbers too; what cites is the ascending
 *  chain with the best worth: next numbers count for it, gaps count less, leaps count against it (I12). O(n log n). */

/** A step larger than this is a leap. */
const LARGEST_STEP = 10;
/** A leap pays only where at least three numbers in order stand behind it. */
const LEAP_WORTH = -1.5;

const stepWorth = (step: number): number => (step === 1 ? 1 : 1 - step / 5);

/** The best chain that ends at or below a rank, for any rank: a Fenwick tree of maxima. */
class BestBelow {
  readonly #best: { worth: number; index: number }[];

  constructor(size: number) {
    this.#best = Array.from({ length: size + 1 }, () => ({ worth: Number.NEGATIVE_INFINITY, index: -1 }));
  }

  add(rank: number, worth: number, index: number): void {
    for (let at = rank + 1; at < this.#best.length; at += at & -at) {
      if (worth >= (this.#best[at]?.worth ?? 0)) this.#best[at] = { worth, index };
    }
  }

  /** Among ranks 0 to `rank`, the last not counted. */
  before(rank: number): { worth: number; index: number } {
    let found = { worth: Number.NEGATIVE_INFINITY, index: -1 };
    for (let at = rank; at > 0; at -= at & -at) {
      const here = this.#best[at];
      if (here !== undefined && here.worth > found.worth) found = here;
    }
    return found;
  }
}

/** Indexes into `numbers`, ascending, of those that number the paragraphs. Of equal chains to a number the later is taken. */
export const ascendingChain = (numbers: readonly number[]): number[] => {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const ranks = new Map(sorted.map((number, rank) => [number, rank]));
  const leaps = new BestBelow(sorted.length);
  const endingWith = new Map<number, { worth: number; index: number }>();
  const before: number[] = [];
  let best = { worth: Number.NEGATIVE_INFINITY, index: -1 };
  for (const [index, number] of numbers.entries()) {
    let worth = 0;
    let previous = -1;
    for (let step = 1; step <= LARGEST_STEP; step += 1) {
      const chain = endingWith.get(number - step);
      if (chain !== undefined && chain.worth + stepWorth(step) > worth) {
        worth = chain.worth + stepWorth(step);
        previous = chain.index;
      }
    }
    const rank = ranks.get(number) ?? 0;
    const far = leaps.before(rank);
    if (far.worth + LEAP_WORTH > worth) {
      worth = far.worth + LEAP_WORTH;
      previous = far.index;
    }
    before.push(previous);
    if (worth >= (endingWith.get(number)?.worth ?? 0)) endingWith.set(number, { worth, index });
    leaps.add(rank, worth, index);
    if (worth > best.worth) best = { worth, index };
  }
  const chain: number[] = [];
  for (let at = best.index; at >= 0; at = before[at] ?? -1) chain.push(at);
  return chain.reverse();
};
