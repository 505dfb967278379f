/** shared/drill/standing-instructions.ts - what holds throughout, inherited by every step, and how an exercise begins: printed
 *  once at the head. May import: schema types, siblings in shared/drill. Keeps rules D4 and D10 (shared/drill/RULES.md). */
import type { Drill } from "../../schema/drill.ts";
import type { Action, Standing } from "../../schema/exercise.ts";
import type { Slot } from "../../schema/slot.ts";
import { citationsOf } from "./citations.ts";
import { type CompiledAction, compileAction, OWN } from "./compile-action.ts";
import type { Compiling, CompilingBase } from "./resolve-slot.ts";
import type { OnlyUnder } from "./settle.ts";

/** An action that steps inherit, with the title of its instruction. */
export interface Inherited {
  action: Action;
  from: string;
  exercise: string | null;
  /** As every step inherits it, where nothing of it hangs on the step; null where it is compiled for each. */
  everywhere: CompiledAction | null;
}

/** The standing things of the drill whose guard does not fail. */
export function standingOf(compiling: Compiling): { printed: Drill["standing"]; inherited: Inherited[] } {
  const { rows } = compiling;
  const printed = presentIn(compiling).map((standing) => ({
    id: standing.id,
    is: standing.is,
    title: standing.title,
    text: wordsOf(compiling, standing),
    standing: standing.existence.warrant,
    citations: citationsOf(rows, "standings", standing.id, standing.existence),
  }));
  return { printed, inherited: inheritedOf(compiling) };
}

/** What steps inherit, for whoever needs no more of it. */
export function inheritedOf(compiling: Compiling): Inherited[] {
  const inherited = instructed(compiling).flatMap(({ action, from, exercise }) => {
    if (isBeforeAll(action)) return [];
    const origin = { ...OWN, inheritedFrom: from };
    const everywhere = hangsOnStep(action) ? null : compileAction(compiling, action, origin);
    return [{ action, from, exercise, everywhere }];
  });
  return withoutOverridden(inherited);
}

/** How an exercise begins: what is timed before it, and what holds throughout and says how things stand. The work's
 *  instructions come before those of the exercise. */
export function openingOf(compiling: Compiling): CompiledAction[] {
  const opening = instructed(compiling).filter(({ action }) => isBeforeAll(action) || STANDS.has(action.act.verb));
  return withoutOverridden(opening).flatMap(
    ({ action, from }) => compileAction(compiling, action, { ...OWN, inheritedFrom: from }) ?? [],
  );
}

/** Of an instruction, *before* means before the exercise, since it stands outside all steps. */
function isBeforeAll({ timing }: Action): boolean {
  return timing?.is === "said" && timing.value.is === "before";
}

/** Acts that may be told twice, at the beginning and in the first step, and say no more than once. */
const STANDS: ReadonlySet<Action["act"]["verb"]> = new Set([
  "keep",
  "carry",
  "hold",
  "rest",
  "go at",
  "place rein hand",
  "lay reins",
]);

type Instructed = Pick<Inherited, "action" | "from" | "exercise">;

/** Under the conditions of the instruction and of the action both. */
function instructed(compiling: Compiling): Instructed[] {
  return presentIn(compiling).flatMap(({ id, guard, title, exercise }) =>
    compiling.rows
      .actionsOf(id)
      .map((own) => ({ action: { ...own, guard: [...guard, ...own.guard] }, from: title, exercise })),
  );
}

function presentIn({ rows, settlement }: CompilingBase): Standing[] {
  return rows.standings.filter((standing) => settlement.judge(standing.guard, null).truth !== "no");
}

/** Whether it can be another thing at another step: by its guard, a crux with an exception, or a hold or movement that
 *  may have one. */
function hangsOnStep({ guard, act, timing, purpose, threat }: Action): boolean {
  const slots = [...Object.values(act.slots as Record<string, Slot<unknown> | undefined>), timing, purpose, threat];
  return (
    guard.length > 0 || act.verb === "hold" || act.verb === "perform" || slots.some((slot) => slot?.is === "in crux")
  );
}

function wordsOf(compiling: Compiling, standing: Standing): string {
  const acts = compiling.rows
    .actionsOf(standing.id)
    .flatMap((action) => actWordsOf(compileAction(compiling, action, OWN)));
  return [acts.join("; "), standing.note].filter((part) => part !== "").join(". ");
}

/** Outside the columns of a sheet the hand is said. */
function actWordsOf(compiled: CompiledAction | null): string[] {
  if (compiled === null) return [];
  const { part, text } = compiled.drill;
  return [part.endsWith(" hand") ? `${text}, with the ${part}` : text];
}

/** An instruction of the exercise takes the place of one of the work that says the same kind of thing. */
function withoutOverridden<T extends Instructed>(inherited: readonly T[]): T[] {
  const own = inherited.filter(({ exercise }) => exercise !== null);
  return inherited.filter(
    ({ action, exercise }) =>
      exercise !== null || !own.some((other) => other.action.guard.length === 0 && sameConcern(other.action, action)),
  );
}

/** Whether one action takes the place of another: the same verb, and neither names another hand, object or part. */
export function sameConcern(first: Action, second: Action): boolean {
  if (first.act.verb !== second.act.verb) return false;
  const slots = [first, second].map(({ act }) => act.slots as Record<string, Slot<unknown> | undefined>);
  return ["hand", "object", "who"].every((name) => {
    const [a, b] = slots.map((held) => held[name]);
    return a?.is !== "said" || b?.is !== "said" || a.value === b.value;
  });
}

/** How far a step's own actions leave room for an inherited one: all (null), none, or under some readings only. */
export function roomFor(
  inherited: Action,
  own: readonly { action: Action; onlyUnder: readonly OnlyUnder[] }[],
  readingsOf: (crux: string) => string[],
): { fits: boolean; onlyUnder: OnlyUnder[] } {
  const rivals = own.filter(({ action }) => sameConcern(action, inherited));
  if (rivals.some(({ onlyUnder }) => onlyUnder.length === 0)) return { fits: false, onlyUnder: [] };
  const left = rivals.flatMap(({ onlyUnder: [first, second] }) => {
    // Where several cruxes decide together, no list of readings says when it is left; it is then shown as it is.
    if (!first || second) return [];
    return [{ crux: first.crux, readings: readingsOf(first.crux).filter((id) => !first.readings.includes(id)) }];
  });
  return { fits: left.every(({ readings }) => readings.length > 0), onlyUnder: left };
}
