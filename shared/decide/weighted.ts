/** shared/decide/weighted.ts - the count with every assignment weighted by the confidences in its readings.
 *  May import: siblings in shared/decide. Keeps rules N16-N17 (shared/decide/RULES.md). */
import { type Confidence, type ConfidenceRefusal, weightsOf } from "./confidences.ts";
import { indexed } from "./indexed.ts";
import type { Puzzle } from "./puzzle.ts";
import { type Limits, tallyOf, USUAL_LIMITS } from "./tally.ts";

/** Whole numbers over one denominator. They need not come to 1: what is ruled out, tied or barred is left out, and readings
 *  without confidences count 1 each. */
export interface WeightedCount {
  ok: true;
  denominator: bigint;
  holding: bigint;
  surelyHolding: bigint;
  all: bigint;
  /** Of every reading, in the order of the puzzle; of a ruled-out one 0. */
  shares: { crux: string; reading: string; holding: bigint; surelyHolding: bigint; all: bigint }[];
}

export interface TooMuchInPlay {
  ok: false;
  code: "too_much_in_play";
  sentence: string;
}

/** Throws RangeError for a broken puzzle (see checked.ts and runs.ts). */
export function weightedCount(
  puzzle: Puzzle,
  confidences: readonly Confidence[],
  { limits = USUAL_LIMITS }: { limits?: Limits } = {},
): WeightedCount | ConfidenceRefusal | TooMuchInPlay {
  const weights = weightsOf(puzzle, confidences);
  if (!weights.ok) return weights;
  const every = tallyOf(indexed({ ...puzzle, stages: [] }, weights.factors), limits);
  const tally = tallyOf(indexed(puzzle, weights.factors), limits);
  if (every.uncounted.length + tally.uncounted.length > 0) {
    const inPlay = Math.max(every.peaks.inPlay, tally.peaks.inPlay);
    return {
      ok: false,
      code: "too_much_in_play",
      sentence: `Up to ${inPlay} cruxes are in play at once, more than can be weighted within the limit. Adopt or rule out some readings first.`,
    };
  }
  return {
    ok: true,
    denominator: weights.denominator,
    holding: tally.holding,
    surelyHolding: tally.surelyHolding,
    all: every.holding,
    shares: puzzle.cruxes.flatMap(({ id, readings }, crux) =>
      readings.map((reading, value) => ({
        crux: id,
        reading,
        holding: tally.shares[crux]?.holding[value] ?? 0n,
        surelyHolding: tally.shares[crux]?.surelyHolding[value] ?? 0n,
        all: every.shares[crux]?.holding[value] ?? 0n,
      })),
    ),
  };
}
