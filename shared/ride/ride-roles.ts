/** shared/ride/ride-roles.ts - an exercise of several roles, each rider's part ridden, waiting for what another does.
 *  May import: schema types, shared/ground, siblings in shared/ride. Keeps rules R34-R35 (shared/ride/RULES.md). Seconds of
 *  the common clock are those of a rider's own ride and when he begins. */
import type { Rows } from "../../schema/record.ts";
import { type ExerciseRows, exerciseRows } from "../drill/exercise-rows.ts";
import type { Drafted } from "./course.ts";
import { BEGINS, ENDS, eventMeant, isNamed } from "./event-meant.ts";
import { placeOfEvent } from "./event-place.ts";
import type { Ridden } from "./ridden.ts";
import type { RideOptions } from "./ride-context.ts";
import { type RideWithContext, rideWithContext, withFindings } from "./ride-exercise.ts";

export interface RolePart {
  /** Null: all elements, one after another. */
  role: string | null;
  options?: RideOptions;
  /** When he begins, in seconds of the common clock. */
  starts?: number;
}

/** Each part as it is ridden, in the order given, with what is found in it. Throws as `rideExercise`. */
export function rideRoles(rows: Rows, exercise: string, parts: readonly RolePart[]): Ridden[] {
  return ridesOfRoles(rows, exercise, parts).map(withFindings);
}

/** The same before the world is mirrored, and without findings. `own`: the rows of the exercise; `alone`: each part ridden
 *  without the others; where the caller has them. */
export function ridesOfRoles(
  rows: Rows,
  exercise: string,
  parts: readonly RolePart[],
  own: ExerciseRows = exerciseRows(rows, exercise),
  alone: readonly RideWithContext[] = parts.map(({ role, options }) =>
    rideWithContext(rows, exercise, { ...options, role }, own),
  ),
): RideWithContext[] {
  const rides = [...alone];
  // Who waits for one who waits himself is told anew when that one is; two who wait for each other are left after as
  // many rounds as there are riders.
  for (let round = 0; round < parts.length; round += 1) {
    let changed = false;
    for (const [index, { role, options, starts = 0 }] of parts.entries()) {
      let asked = false;
      const elsewhere = (event: string): number | null => {
        const other = otherIn(event, parts, index);
        const seconds = other === null ? null : momentIn(rides[other] as RideWithContext, event);
        if (other === null || seconds === null) return null;
        asked = true;
        return seconds + (parts[other]?.starts ?? 0) - starts;
      };
      const before = rides[index] as RideWithContext;
      const ride = rideWithContext(rows, exercise, { ...options, role, elsewhere }, own, before.context.compiled);
      if (!asked) continue;
      rides[index] = ride;
      if (!sameTimes(before.ridden, ride.ridden)) changed = true;
    }
    if (!changed) break;
  }
  return rides;
}

/** The one other rider whose role the words name; null for none and for two. */
function otherIn(event: string, parts: readonly RolePart[], own: number): number | null {
  const named = parts.flatMap(({ role }, index) =>
    role !== null && role !== parts[own]?.role && isNamed(event, role) ? [index] : [],
  );
  const [first, second] = named;
  return first === undefined || second !== undefined ? null : first;
}

function sameTimes(one: Ridden, other: Ridden): boolean {
  const { times } = other.timed;
  return one.timed.times.length === times.length && one.timed.times.every((time, index) => time === times[index]);
}

/** Seconds of his own ride at which a rider does what the words say; null where that is not found in it. */
function momentIn({ ridden, context }: RideWithContext, event: string): number | null {
  const { timed, pieces, stages, ground } = ridden;
  const drafted = timed.path.pieces.map((piece, index) => ({ piece, ridden: pieces[index] }) as Drafted);
  const acts = stages.flatMap((_, index) => context.actsOf(index));
  const meant = eventMeant(event, ground, acts, context.options.rein === "on the other rein");
  const at = meant === null ? null : placeOfEvent(drafted, meant);
  if (at !== null) {
    const [from = 0, to = 0] = [timed.times[at.index], timed.times[at.index + 1]];
    return from + (to - from) * at.part;
  }
  if (meant !== null) return null;
  const done = stages.flatMap(({ instants }, index) =>
    instants.filter(({ actions }) => actions.some((id) => saysOf(event, context.act(index, id)?.known.verb))),
  );
  if (done[0] !== undefined) return done[0].seconds;
  if (BEGINS.test(event)) return stages[0]?.from ?? null;
  return ENDS.test(event) ? timed.duration : null;
}

/** Whether the words speak of the act: "plants", "has lowered". */
function saysOf(event: string, verb: string | undefined): boolean {
  return verb !== undefined && new RegExp(`\\b${verb}(e?s|e?d)?\\b`, "i").test(event);
}
