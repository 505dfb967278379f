/** shared/decide/puzzle.ts - choices and stages, without knowing what they are about.
 *  May import: nothing. Keeps rules N1-N7 (shared/decide/RULES.md). Everything is named by strings; a puzzle is pure data
 *  and total functions, so that any counter (brute force, a faster walk, a solver from outside) takes the same one. */

/** These readings of another crux. */
export interface ReadIn {
  crux: string;
  readings: readonly string[];
}

export interface PuzzleCrux {
  id: string;
  /** Every reading it can be given, ruled out ones too. */
  readings: readonly string[];
  /** Readings that leave the count. */
  ruledOut: readonly string[];
  /** It arises when all of these are read so; empty: always. Never in a circle. */
  arisesWhen: readonly ReadIn[];
}

/** A reading that cannot be taken without, or together with, what `of` names. A crux that does not arise has none of
 *  its readings: to require it fails, to exclude it holds. */
export interface Tie {
  crux: string;
  reading: string;
  of: ReadIn;
}

/** A rule that was broken on the way into a state; only barring ones decide whether an assignment holds. */
export interface Hit {
  rule: string;
  bars: boolean;
}

/** One way a stage can go. What is not said makes several; each is one completion. */
export interface Successor {
  state: string;
  hits: readonly Hit[];
  /** What this completion supplies, in words; shown with a witness. */
  supplied?: string;
}

/** The reading of a crux this stage touches; null when the crux does not arise. Throws RangeError for a crux that is
 *  not among those touched: what a stage may look at must be known beforehand. */
export type ReadingOf = (crux: string) => string | null;

export interface Stage {
  id: string;
  /** Cruxes `run` may ask for. */
  touches: readonly string[];
  /** Values said here that a search for clashes may take as not said; missing: none. */
  stated?: readonly string[];
  /** Total: every state goes on, at least one way. A state without a way on is a broken puzzle and throws. Of `without`,
   *  those among `stated` are taken as not said (missing: all are said). That may add ways on and take hits away, never
   *  the other way round: dropping only ever enlarges. The same arguments always give the same answer. */
  run: (state: string, readingOf: ReadingOf, without?: ReadonlySet<string>) => readonly Successor[];
}

export interface Puzzle {
  cruxes: readonly PuzzleCrux[];
  requires: readonly Tie[];
  excludes: readonly Tie[];
  /** The states it may begin in; several where the beginning is not said. */
  start: readonly string[];
  stages: readonly Stage[];
}

/** One reading of one crux. */
export interface Pick {
  crux: string;
  reading: string;
}

/** A reading for every crux that arises; cruxes that do not arise are missing. */
export type Assignment = ReadonlyMap<string, string>;
