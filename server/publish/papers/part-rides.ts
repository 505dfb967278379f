/** server/publish/papers/part-rides.ts - an exercise as it is ridden under the readings of a paper: for its plan, and for what
 *  bars the ride.
 *  May import: schema types, shared/drill, shared/ride, server/publish. */
import type { Rows } from "../../../schema/record.ts";
import type { CompiledExercise } from "../../../shared/drill/compile.ts";
import type { Finding } from "../../../shared/ride/ridden.ts";
import type { RideOptions } from "../../../shared/ride/ride-context.ts";
import { type RideWithContext, rideWithContext } from "../../../shared/ride/ride-exercise.ts";
import { ridesOfRoles } from "../../../shared/ride/ride-roles.ts";
import { ridingRoles } from "../../../shared/ride/roles.ts";
import { findingsOf } from "../../../shared/ride/rules/index.ts";
import { ridesTogether, theOnlyRide } from "../figures/exercise-rides.ts";
import type { PlanRide } from "../figures/plan-figure.ts";

export interface PartRides {
  /** One ride, or one of each role that rides, each waiting for what another does. */
  plan: PlanRide[];
  /** Readings taken only because nothing is settled, by crux. */
  supplied: ReadonlyMap<string, string>;
  /** What the rules bar in the one ride, or in that of each role by himself, where nobody has set it aside; looked for when
   *  it is first asked for. */
  barring: () => readonly Finding[];
}

/** `options`: those the exercise was compiled with. */
export function rideCompiled(allRows: Rows, compiled: CompiledExercise, options: RideOptions): PartRides {
  const { drill, base } = compiled;
  const exercise = drill.exercise.id;
  const roles = ridingRoles(drill.elements);
  const ride = (asked: RideOptions): RideWithContext => rideWithContext(allRows, exercise, asked, base.rows, compiled);
  if (roles.length < 2) {
    const one = ride(options);
    return withBarring([theOnlyRide(one.ridden)], [one]);
  }
  const alone = roles.map((role) => ride({ ...options, role }));
  const parts = roles.map((role) => ({ role, options }));
  return withBarring(ridesTogether(ridesOfRoles(allRows, exercise, parts, base.rows, alone), roles), alone);
}

function withBarring(plan: PlanRide[], alone: readonly RideWithContext[]): PartRides {
  let barring: readonly Finding[] | null = null;
  return {
    plan,
    supplied: alone[0]?.context.supplied ?? new Map(),
    barring: () => {
      barring ??= alone.flatMap(({ ridden, context }) => findingsOf(ridden, context, { barring: true }));
      return barring;
    },
  };
}
