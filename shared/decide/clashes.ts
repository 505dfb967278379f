/** shared/decide/clashes.ts - what cannot hold together, and what must give.
 *  May import: siblings in shared/decide. Keeps rules N11-N13 (shared/decide/RULES.md). The clashes and the sets that undo
 *  them all are searched for together: a set with a member of every clash found so far either lets something hold, or
 *  shows a new clash. When every such set has been tried, there are no more clashes. After R. Reiter, “A theory of
 *  diagnosis from first principles”, Artificial Intelligence 32 (1987). */
import { Consistency, LimitHit } from "./consistency.ts";
import type { Member } from "./members.ts";
import type { Pick, Puzzle } from "./puzzle.ts";
import { irreducible } from "./quick-explain.ts";

export interface ClashOptions {
  /** Picks that may be dropped, at most one of each crux. The puzzle itself must not be narrowed to them. */
  picks?: readonly Pick[];
  /** How many clashes to look for, and how often to ask whether something holds. */
  limits?: ClashLimits;
}

export interface ClashLimits {
  clashes: number;
  checks: number;
}

export interface Clashes {
  /** Shortest first. Each cannot hold, and each proper part of it can. None when something holds. One that is empty:
   *  nothing holds whatever is dropped; ties, conditions and what is ruled out alone exclude it. */
  clashes: Member[][];
  /** There are no others. */
  complete: boolean;
  /** No clash is shorter than the first: proven. */
  shortest: boolean;
  /** How often it was asked whether something holds. */
  searched: number;
}

export const USUAL_CLASH_LIMITS: ClashLimits = { clashes: 12, checks: 600 };

/** `target` null: why nothing holds; else: why nothing holds that takes this reading. Throws RangeError for a broken puzzle,
 *  a pick or target that is not in it, or two picks of one crux. */
export function clashes(puzzle: Puzzle, target: Pick | null, options: ClashOptions = {}): Clashes {
  const { limits = USUAL_CLASH_LIMITS, picks = [] } = options;
  const found: Member[][] = [];
  const consistency = unlessLimited(() => new Consistency(puzzle, target, picks, limits.checks));
  const complete = consistency && unlessLimited(() => collect(consistency, found, limits.clashes));
  found.sort((a, b) => a.length - b.length);
  return {
    clashes: found,
    complete: complete === true,
    shortest: found.length > 0 && (complete === true || found[0]?.length === 1),
    searched: consistency?.asked ?? 0,
  };
}

/** A set of members to drop so that something holds (that takes the target, if there is one); `smallest` when no set with
 *  fewer members does, proven. Empty when something holds already. Null when nothing holds whatever is dropped, or when
 *  there is too much in play to look. Throws as `clashes` does. */
export function whatMustGive(
  puzzle: Puzzle,
  options: ClashOptions & { target?: Pick | null } = {},
): { drop: Member[]; smallest: boolean } | null {
  const { limits = USUAL_CLASH_LIMITS, picks = [], target = null } = options;
  const consistency = unlessLimited(() => new Consistency(puzzle, target, picks, limits.checks));
  if (!consistency) return null;
  const found = unlessLimited(() => ({ drop: firstGiven(consistency) }));
  if (found) return found.drop && { drop: found.drop, smallest: true };
  consistency.allow(consistency.all.length + consistency.groups.length);
  const drop = unlessLimited(() => noneTooMany(consistency));
  return drop && { drop, smallest: false };
}

/** Null when the limit was hit. */
function unlessLimited<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof LimitHit) return null;
    throw error;
  }
}

/** Whether all clashes were found. */
function collect(consistency: Consistency, found: Member[][], most: number): boolean {
  for (const step of diagnose(consistency)) {
    if ("drop" in step) continue;
    if (found.length >= most) return false;
    found.push(step.clash);
  }
  return true;
}

function firstGiven(consistency: Consistency): Member[] | null {
  for (const step of diagnose(consistency)) if ("drop" in step) return step.drop;
  return null;
}

/** Clashes as they are found, each once, and sets to drop, smallest first. */
function* diagnose(consistency: Consistency): Generator<{ clash: Member[] } | { drop: Member[] }> {
  const found: Member[][] = [];
  const enough: ReadonlySet<Member>[] = [];
  const seen = new Set<string>();
  const queue: ReadonlySet<Member>[] = [new Set()];
  for (let dropped = queue.shift(); dropped; dropped = queue.shift()) {
    const gone = dropped;
    const key = consistency.all.map((member) => (gone.has(member) ? 1 : 0)).join("");
    if (seen.has(key) || enough.some((set) => [...set].every((member) => gone.has(member)))) continue;
    seen.add(key);
    let clash = found.find((members) => !members.some((member) => gone.has(member)));
    if (!clash && consistency.holds(consistency.all.filter((member) => !gone.has(member)))) {
      enough.push(gone);
      yield { drop: [...gone] };
      continue;
    }
    if (!clash) {
      clash = clashWithout(consistency, gone);
      found.push(clash);
      yield { clash };
    }
    for (const member of clash) queue.push(new Set([...gone, member]));
  }
}

/** First the groups that clash, then what clashes inside them. */
function clashWithout(consistency: Consistency, gone: ReadonlySet<Member>): Member[] {
  const left = consistency.groups
    .map((group) => group.filter((member) => !gone.has(member)))
    .filter(({ length }) => length > 0);
  const clashing = irreducible(left, (some) => consistency.holds(some.flat()));
  return irreducible(clashing.flat(), (some) => consistency.holds(some));
}

/** Members are kept one after another as long as something holds: none of the others could be kept too, but another order
 *  might have kept more. Null when nothing holds whatever is dropped. */
function noneTooMany(consistency: Consistency): Member[] | null {
  if (!consistency.holds([])) return null;
  let kept: Member[] = [];
  for (const group of consistency.groups) {
    if (consistency.holds([...kept, ...group])) kept = [...kept, ...group];
    else for (const member of group) if (consistency.holds([...kept, member])) kept = [...kept, member];
  }
  return consistency.all.filter((member) => !kept.includes(member));
}
