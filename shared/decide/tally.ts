/** shared/decide/tally.ts - the counts of a puzzle by number, in one piece or in several.
 *  May import: siblings in shared/decide. Where too many combinations of readings would be in play at once, the crux that
 *  stays longest is held outside: the puzzle is counted once for each of its values, and the counts add up. Where even
 *  that is too much, parts stay uncounted and are named. */
import { type Automaton, automatonOf, getsThrough } from "./automaton.ts";
import { type Broken, brokenOf, sortedBroken } from "./broken.ts";
import { liveCells } from "./course.ts";
import type { IndexedPuzzle } from "./indexed.ts";
import { type Layer, layersOf } from "./layers.ts";
import { merged } from "./merged.ts";
import { Runs } from "./runs.ts";
import { mostInPlay, schedule } from "./schedule.ts";
import { type Swept, sweep } from "./sweep.ts";
import { Together } from "./together.ts";
import type { Trail } from "./trails.ts";

/** How much may be spent before the count gives bounds instead. */
export interface Limits {
  /** Cells of one frontier: combinations of readings in play times sets of states. */
  cells: number;
  /** Cells visited in all. */
  work: number;
}

/** The most cruxes in play at once, and the most sets of states that had to be kept apart at once. */
export interface Peaks {
  inPlay: number;
  states: number;
}

export interface Tally {
  holding: bigint;
  surelyHolding: bigint;
  /** By crux and value. */
  shares: Swept["shares"];
  together: Together;
  trails: Trail[];
  /** Where nothing holds in any part that was counted. */
  broken: Broken[];
  peaks: Peaks;
  /** Parts that were too large to count: the values each crux may take there. */
  uncounted: Values[];
}

/** The values that each crux may take. */
export type Values = readonly (readonly number[])[];

/** A few seconds, and a few hundred megabytes, at the most. */
export const USUAL_LIMITS: Limits = { cells: 400_000, work: 100_000_000 };

/** Of the cells of a frontier at most one in so many may be a combination: room for sets of states. */
const ROOM = 4;

/** `values` narrows what each crux may take; missing: all that the puzzle leaves. */
export function tallyOf(puzzle: IndexedPuzzle, limits: Limits, witnesses = 0, values: Values = puzzle.values): Tally {
  return new Tallying(puzzle, limits, witnesses, values).tally;
}

class Tallying {
  readonly tally: Tally;
  private readonly runs: Runs;
  private work = 0;

  constructor(
    private readonly puzzle: IndexedPuzzle,
    private readonly limits: Limits,
    private readonly witnesses: number,
    whole: Values,
  ) {
    this.runs = new Runs(puzzle);
    const events = schedule(puzzle, whole);
    const entering = events.flatMap((event) => (event.is === "enter" ? [event.crux] : []));
    this.tally = {
      holding: 0n,
      surelyHolding: 0n,
      shares: puzzle.radix.map((radix) => ({ holding: zeros(radix), surelyHolding: zeros(radix) })),
      together: new Together(puzzle, entering.reverse()),
      trails: [],
      broken: [],
      peaks: { inPlay: mostInPlay(events, whole), states: 0 },
      uncounted: [],
    };
    this.count(whole);
    this.tally.broken = this.tally.holding > 0n ? [] : sortedBroken(puzzle.puzzle, this.tally.broken);
  }

  private count(values: Values): void {
    const { cells, work } = this.limits;
    if (this.work >= work) {
      this.tally.uncounted.push(values);
      return;
    }
    const layered = layersOf(this.puzzle, values, Math.max(1, Math.floor(cells / ROOM)));
    if ("tooMany" in layered) {
      this.work += cells / ROOM;
      this.divide(values, layered.tooMany);
      return;
    }
    if (layered.some(({ after }) => after === 0)) return;
    const automaton = automatonOf(this.puzzle, layered, this.runs, cells);
    if (!automaton) {
      this.work += cells;
      this.divide(values, [...values.keys()]);
      return;
    }
    this.work += workOf(layered, automaton);
    this.add(values, layered, automaton);
  }

  /** Once for each value of the crux of those that stays in play longest. */
  private divide(values: Values, among: readonly number[]): void {
    const span = new Map<number, number>();
    for (const [at, event] of schedule(this.puzzle, values).entries()) {
      if (event.is !== "stage") span.set(event.crux, at - (span.get(event.crux) ?? 0));
    }
    const [longest] = among
      .filter((crux) => (values[crux]?.length ?? 0) > 1)
      .sort((a, b) => (span.get(b) ?? 0) - (span.get(a) ?? 0));
    if (longest === undefined) {
      this.tally.uncounted.push(values);
      return;
    }
    for (const value of values[longest] ?? []) this.count(values.with(longest, [value]));
  }

  private add(values: Values, layers: readonly Layer[], automaton: Automaton): void {
    const { tally, puzzle } = this;
    const through = getsThrough(automaton);
    const small = through ? merged(layers, automaton) : automaton;
    const cells = through ? liveCells(layers, small) : automaton.reached;
    const course = { puzzle, values, layers, automaton: small, cells };
    tally.peaks.states = Math.max(tally.peaks.states, small.nodes);
    if (!through) {
      if (tally.holding === 0n) tally.broken.push(...brokenOf(course));
      return;
    }
    const swept = sweep(course, tally.together, this.witnesses - tally.trails.length);
    tally.holding += swept.holding;
    tally.surelyHolding += swept.surelyHolding;
    tally.trails.push(...swept.trails);
    for (const [crux, share] of swept.shares.entries()) {
      for (const kind of ["holding", "surelyHolding"] as const) {
        const sums = tally.shares[crux]?.[kind] as bigint[];
        for (const [value, many] of share[kind].entries()) sums[value] = (sums[value] as bigint) + many;
      }
    }
  }
}

const zeros = (length: number): bigint[] => Array.from({ length }, () => 0n);

function workOf(layers: readonly Layer[], automaton: Automaton): number {
  let boundary = 0;
  return layers.reduce((sum, layer) => {
    if (layer.is === "stage") boundary += 1;
    return sum + layer.before * (automaton.surely[boundary]?.length ?? 0);
  }, 0);
}
