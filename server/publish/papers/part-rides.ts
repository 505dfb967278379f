/** server/publish/papers/part-rides.ts - a part as it is ridden under the readings of the paper: for its plan, and for what bars
 *  the ride.
 *  May import: schema types, shared/ride, server/publish, siblings. To ride is the dearest thing a paper does: one part is ridden
 *  once, whoever asks. */
import type { RideOptions } from "../../../shared/ride/ride-context.ts";
import { type RideWithContext, rideWithContext } from "../../../shared/ride/ride-exercise.ts";
import { ridesOfRoles } from "../../../shared/ride/ride-roles.ts";
import { ridingRoles } from "../../../shared/ride/roles.ts";
import { ridesTogether, theOnlyRide } from "../figures/exercise-rides.ts";
import type { PlanRide } from "../figures/plan-figure.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";

export interface PartRides {
  /** One ride, or one of each role that rides, each waiting for what another does. */
  plan: PlanRide[];
  /** One ride, or that of each role by himself: as the rules see it. */
  alone: RideWithContext[];
}

export function ridesOf(context: PaperContext, built: BuiltPart): PartRides {
  const known = context.rides.get(built);
  if (known !== undefined) return known;
  const rides = ridden(context, built);
  context.rides.set(built, rides);
  return rides;
}

function ridden({ rows, ask }: PaperContext, { part, rows: own, whole }: BuiltPart): PartRides {
  const choice = ask.choice.filter(({ crux }) => own.cruxes.has(crux));
  // The way of the drill is that of the version, or the one that was asked for.
  const options: RideOptions = { choice, variant: part.variant, way: whole.way };
  const roles = ridingRoles(whole.elements);
  const ride = (asked: RideOptions): RideWithContext => rideWithContext(rows, part.exercise, asked, own);
  if (roles.length < 2) {
    const one = ride(options);
    return { plan: [theOnlyRide(one.ridden)], alone: [one] };
  }
  const alone = roles.map((role) => ride({ ...options, role }));
  const parts = roles.map((role) => ({ role, options }));
  return { plan: ridesTogether(ridesOfRoles(rows, part.exercise, parts, own, alone), roles), alone };
}
