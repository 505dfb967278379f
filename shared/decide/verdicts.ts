/** shared/decide/verdicts.ts - what is said of readings: forced, possible, dead, ruled out; and which exclude each other.
 *  May import: siblings in shared/decide. Keeps rule N7 (shared/decide/RULES.md). */
import { parentsFirst } from "./assignments.ts";
import type { Pick, Puzzle } from "./puzzle.ts";

/** Forced: every assignment that holds and in which the crux arises takes it. Dead: none does. */
export type ReadingVerdict = "forced" | "possible" | "dead" | "ruled out";

/** One reading of one crux among the assignments. */
export interface ReadingShare {
  crux: string;
  reading: string;
  /** Assignments that take it and hold. A proportion of combinations, not a probability. */
  holding: bigint;
  surelyHolding: bigint;
  /** Assignments that take it. */
  all: bigint;
  verdict: ReadingVerdict;
}

/** Two readings of different cruxes, each possible by itself, never together. */
export interface ExcludedPair {
  first: Pick;
  second: Pick;
}

/** Of every reading, ruled out ones too, in the order of the puzzle. */
export function sharesOf(
  { cruxes }: Puzzle,
  found: (crux: number, value: number) => { holding: bigint; surelyHolding: bigint; all: bigint },
): ReadingShare[] {
  return cruxes.flatMap(({ id, readings, ruledOut }, crux) => {
    const counts = readings.map((_, value) => found(crux, value));
    const arising = counts.reduce((sum, { holding }) => sum + holding, 0n);
    return readings.map((reading, value): ReadingShare => {
      const own = counts[value] ?? { holding: 0n, surelyHolding: 0n, all: 0n };
      const verdict = ruledOut.includes(reading)
        ? "ruled out"
        : own.holding === 0n
          ? "dead"
          : own.holding === arising
            ? "forced"
            : "possible";
      return { crux: id, reading, ...own, verdict };
    });
  });
}

/** Of readings that are possible by themselves. A forced reading excludes nothing new. The first of a pair is of the crux
 *  that comes first, one that others arise under before those. */
export function excludedPairs(
  puzzle: Puzzle,
  shares: readonly ReadingShare[],
  together: (first: Pick, second: Pick) => boolean,
): ExcludedPair[] {
  const open = shares.filter(({ verdict }) => verdict === "possible");
  const order = new Map(parentsFirst(puzzle.cruxes).map(({ id }, index) => [id, index]));
  const place = ({ crux }: ReadingShare) => order.get(crux) ?? 0;
  return open.flatMap((first) =>
    open
      .filter((second) => place(first) < place(second) && !together(first, second))
      .map((second) => ({
        first: { crux: first.crux, reading: first.reading },
        second: { crux: second.crux, reading: second.reading },
      })),
  );
}
