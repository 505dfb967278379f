/** shared/decide/bounded.ts - what can be said where not everything could be counted.
 *  May import: siblings in shared/decide. Keeps rule N10 (shared/decide/RULES.md). What was counted bounds from below. From
 *  above: that with all assignments of the parts left out, or what holds in a loosened puzzle, whichever is less. Dead,
 *  forced and excluded are said only where the loosened puzzle proves them. */
import type { Count } from "./brute-force.ts";
import { indexed } from "./indexed.ts";
import { loosenedToFit } from "./loosened.ts";
import type { Puzzle } from "./puzzle.ts";
import { type Limits, type Tally, tallyOf, type Values } from "./tally.ts";
import { excludedPairs, type ReadingShare, sharesOf } from "./verdicts.ts";

/** Both inclusive. */
export interface Bounds {
  lower: bigint;
  upper: bigint;
}

export interface Bounded {
  exact: false;
  /** Why it is not exact, in words. */
  why: string;
  holding: Bounds;
  surelyHolding: Bounds;
  all: Bounds;
  /** Counts are of the part that was counted, and so lower bounds. Dead and forced are said only where proven. */
  shares: ReadingShare[];
  excludedPairs: Count["excludedPairs"];
  /** Empty: what broke is not known where not everything was looked at. */
  broken: Count["broken"];
}

/** `every` is the tally without stages. */
export function bounded(puzzle: Puzzle, every: Tally, tally: Tally, limits: Limits): Bounded {
  const loose = looseTally(puzzle, limits);
  const all = {
    lower: every.holding,
    upper: every.holding + every.uncounted.reduce((sum, part) => sum + sizeOf(part), 0n),
  };
  const rest = tally.uncounted.reduce((sum, part) => sum + most(puzzle, part, limits), 0n);
  const holding = { lower: tally.holding, upper: least(all.upper, tally.holding + rest, loose?.holding) };
  const surely =
    tally.surelyHolding > (loose?.surelyHolding ?? 0n) ? tally.surelyHolding : (loose?.surelyHolding ?? 0n);
  const shares = provenShares(puzzle, every, tally, loose);
  const found = new Set(
    shares.filter((share) => share.holding > 0n).map(({ crux, reading }) => JSON.stringify([crux, reading])),
  );
  const pairs = loose ? excludedPairs(puzzle, shares, (a, b) => loose.together.pair(a, b)) : [];
  return {
    exact: false,
    why: why(tally),
    holding: { lower: holding.lower > surely ? holding.lower : surely, upper: holding.upper },
    surelyHolding: { lower: surely, upper: least(holding.upper, tally.surelyHolding + rest) },
    all,
    shares,
    excludedPairs: pairs.filter((pair) =>
      [pair.first, pair.second].every(({ crux, reading }) => found.has(JSON.stringify([crux, reading]))),
    ),
    broken: [],
  };
}

/** What a tally, and one without stages, found of each value. */
export function sharesFrom(every: Tally, tally: Tally) {
  return (crux: number, value: number): { holding: bigint; surelyHolding: bigint; all: bigint } => ({
    holding: tally.shares[crux]?.holding[value] ?? 0n,
    surelyHolding: tally.shares[crux]?.surelyHolding[value] ?? 0n,
    all: every.shares[crux]?.holding[value] ?? 0n,
  });
}

/** Fewer combinations leave more room for sets of states, which grow where readings are not known. */
function looseTally(puzzle: Puzzle, limits: Limits): Tally | null {
  for (const room of [8, 64, 512]) {
    const loose = loosenedToFit(puzzle, Math.max(1, Math.floor(limits.cells / room)));
    const tally = loose && tallyOf(loose, { ...limits, work: limits.work / 4 });
    if (tally?.uncounted.length === 0) return tally;
  }
  return null;
}

function provenShares(puzzle: Puzzle, every: Tally, tally: Tally, loose: Tally | null): ReadingShare[] {
  const found = sharesFrom(every, tally);
  const proven =
    loose &&
    sharesOf(puzzle, (crux, value) => ({ ...found(crux, value), holding: loose.shares[crux]?.holding[value] ?? 0n }));
  return sharesOf(puzzle, found).map((share, index): ReadingShare => {
    if (share.verdict === "ruled out") return share;
    const verdict = proven?.[index]?.verdict;
    // Forced among all that may hold, and met in what was counted.
    const unheard = share.all === 0n && every.uncounted.length === 0;
    if (unheard) return { ...share, verdict: "dead" };
    if (verdict === "dead" || (verdict === "forced" && share.holding > 0n)) return { ...share, verdict };
    return { ...share, verdict: "possible" };
  });
}

/** At most so many assignments are in a part. */
function most(puzzle: Puzzle, part: Values, limits: Limits): bigint {
  const every = tallyOf(indexed({ ...puzzle, stages: [] }), limits, 0, part);
  return every.uncounted.length === 0 ? every.holding : sizeOf(part);
}

function sizeOf(part: Values): bigint {
  return part.reduce((product, values) => product * BigInt(values.length), 1n);
}

function least(first: bigint, ...others: readonly (bigint | undefined)[]): bigint {
  return others.reduce<bigint>((lowest, one) => (one !== undefined && one < lowest ? one : lowest), first);
}

function why({ peaks, uncounted }: Tally): string {
  const cruxes = peaks.inPlay === 1 ? "1 crux is" : `${peaks.inPlay} cruxes are`;
  const parts = uncounted.length === 1 ? "1 part is" : `${uncounted.length} parts are`;
  return `An exact count would go past the limit: up to ${cruxes} in play at once. ${parts} not counted, so the lower bound is what was counted and the upper bound takes the rest as open.`;
}
