/** shared/decide/consistency.ts - does anything hold when only some members are kept?
 *  May import: siblings in shared/decide. Stages are run once for all questions: dropped rules only change which of the hits
 *  are looked at. Questions are counted, and past a limit none is answered. */
import { automatonOf, getsThrough } from "./automaton.ts";
import { type IndexedPuzzle, indexed } from "./indexed.ts";
import { type Layer, layersOf } from "./layers.ts";
import { enforcedWithout, type Member, membersOf } from "./members.ts";
import type { Pick, Puzzle } from "./puzzle.ts";
import { Runs } from "./runs.ts";
import { USUAL_LIMITS, type Values } from "./tally.ts";

/** The search gave up: what was found so far stands. */
export class LimitHit extends Error {}

export class Consistency {
  /** Each pick by itself, then stage by stage. */
  readonly groups: readonly (readonly Member[])[];
  readonly all: readonly Member[];
  /** How often it was asked whether something holds. */
  asked = 0;
  private readonly puzzle: IndexedPuzzle;
  private readonly runs: Runs;
  private readonly values: Values;
  private readonly layers = new Map<string, readonly Layer[]>();
  private readonly answers = new Map<string, boolean>();

  /** `target`: only assignments that take this reading are asked for. Throws RangeError for a broken puzzle, a pick or target
   *  that is not in it, or two picks of one crux; LimitHit where there are too many combinations to look at. */
  constructor(
    puzzle: Puzzle,
    target: Pick | null,
    picks: readonly Pick[],
    private limit: number,
  ) {
    this.puzzle = indexed(puzzle);
    this.runs = new Runs(this.puzzle);
    for (const [index, pick] of picks.entries()) {
      this.placeOf(pick);
      if (picks.findIndex(({ crux }) => crux === pick.crux) !== index) {
        throw new RangeError(`The crux ${pick.crux} is picked twice: a clash needs one pick of each.`);
      }
    }
    this.values = target ? this.narrowed(this.puzzle.values, target, false) : this.puzzle.values;
    const layers = this.layersFor([]);
    this.groups = membersOf(this.puzzle, picks, layers, this.runs);
    this.all = this.groups.flat();
  }

  /** Throws LimitHit past the limit. */
  holds(kept: readonly Member[]): boolean {
    const own = new Set(kept);
    const dropped = this.all.filter((member) => !own.has(member));
    const key = this.all.map((member) => (own.has(member) ? 1 : 0)).join("");
    const known = this.answers.get(key);
    if (known !== undefined) return known;
    if (this.asked >= this.limit) throw new LimitHit();
    this.asked += 1;
    const layers = this.layersFor(kept.flatMap((member) => (member.is === "pick" ? [member] : [])));
    const enforced = enforcedWithout(this.puzzle, dropped);
    const automaton = automatonOf(this.puzzle, layers, this.runs, USUAL_LIMITS.cells, enforced);
    if (!automaton) throw new LimitHit();
    const answer = getsThrough(automaton);
    this.answers.set(key, answer);
    return answer;
  }

  /** So many questions more. */
  allow(more: number): void {
    this.limit = this.asked + more;
  }

  private layersFor(picks: readonly Pick[]): readonly Layer[] {
    const key = JSON.stringify(picks.map(({ crux, reading }) => [crux, reading]));
    const known = this.layers.get(key);
    if (known) return known;
    const values = picks.reduce<Values>((some, pick) => this.narrowed(some, pick, true), this.values);
    const layers = layersOf(this.puzzle, values, USUAL_LIMITS.cells);
    if ("tooMany" in layers) throw new LimitHit();
    this.layers.set(key, layers);
    return layers;
  }

  /** `lapses`: the crux may also not arise. */
  private narrowed(values: Values, pick: Pick, lapses: boolean): Values {
    const { crux, value, none } = this.placeOf(pick);
    const kept = (values[crux] ?? []).filter((one) => one === value || (lapses && one === none));
    return values.with(crux, kept);
  }

  private placeOf({ crux, reading }: Pick): { crux: number; value: number; none: number } {
    const index = this.puzzle.indexOf.get(crux) ?? -1;
    const readings = this.puzzle.puzzle.cruxes[index]?.readings ?? [];
    const value = readings.indexOf(reading);
    if (value < 0) throw new RangeError(`The pick ${reading} of the crux ${crux} is not in the puzzle.`);
    return { crux: index, value, none: readings.length };
  }
}
