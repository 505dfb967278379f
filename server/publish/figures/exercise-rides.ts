/** server/publish/figures/exercise-rides.ts - the rides a plan of an exercise shows: one, or one of each role that rides.
 *  May import: schema types, shared/drill, shared/ride, siblings. What the rules find in them is not asked. */
import type { DrillElement } from "../../../schema/drill.ts";
import type { Rows } from "../../../schema/record.ts";
import { type ExerciseRows, exerciseRows } from "../../../shared/drill/exercise-rows.ts";
import type { RideOptions } from "../../../shared/ride/ride-context.ts";
import { type RideWithContext, rideWithContext } from "../../../shared/ride/ride-exercise.ts";
import { ridesOfRoles } from "../../../shared/ride/ride-roles.ts";
import { ridingRoles } from "../../../shared/ride/roles.ts";
import type { PlanRide } from "./plan-figure.ts";

/** `elements` of the drill that was compiled under the same options; `rows` of the exercise, where the caller has them. */
export function exerciseRides(
  allRows: Rows,
  exercise: string,
  options: RideOptions,
  elements: readonly DrillElement[],
  rows: ExerciseRows = exerciseRows(allRows, exercise),
): PlanRide[] {
  const roles = ridingRoles(elements);
  if (roles.length < 2) return [theOnlyRide(rideWithContext(allRows, exercise, options, rows).ridden)];
  const parts = roles.map((role) => ({ role, options }));
  return ridesTogether(ridesOfRoles(allRows, exercise, parts, rows), roles);
}

/** The rides of roles, in the order of the roles. */
export function ridesTogether(rides: readonly RideWithContext[], roles: readonly string[]): PlanRide[] {
  return rides.map(({ ridden: ride }, index) => ({
    ride,
    letter: String.fromCharCode("A".charCodeAt(0) + index),
    role: roles[index] ?? "",
    stages: { from: 0, to: ride.stages.length },
    starts: 0,
  }));
}

export function theOnlyRide(ride: PlanRide["ride"]): PlanRide {
  return { ride, letter: "", role: "", stages: { from: 0, to: ride.stages.length }, starts: 0 };
}

/** Each ride from its first stage that is wanted to its last; those with none are left out. */
export function ridesWithin(
  rides: readonly PlanRide[],
  wanted: (stage: PlanRide["ride"]["stages"][number]) => boolean,
): PlanRide[] {
  return rides.flatMap((one) => {
    const from = one.ride.stages.findIndex(wanted);
    return from < 0 ? [] : [{ ...one, stages: { from, to: one.ride.stages.findLastIndex(wanted) + 1 } }];
  });
}
