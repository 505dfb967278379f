/** server/publish/papers/part-rides.ts - an exercise as it is ridden under the readings of a paper: for its plan, and for what
 *  bars the ride.
 *  May import: schema types, shared/drill, shared/ride, server/publish, siblings. */
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
import { deadReadings, readingsInstead } from "./readings-drawn.ts";

export interface PartRides {
  /** One ride, or one of each role that rides, each waiting for what another does. */
  plan: PlanRide[];
  /** Readings taken only because nothing is settled, by crux. */
  supplied: ReadonlyMap<string, string>;
  /** Whether one of these is taken because the first cannot be ridden. */
  isInstead: boolean;
  /** What the rules bar in the one ride, or in that of each role by himself, where nobody has set it aside; looked for when
   *  it is first asked for. */
  barring: () => readonly Finding[];
  /** Open readings that cannot be ridden, whatever the others; counted when they are first asked for. */
  dead: () => ReadonlySet<string>;
}

/** `options`: those the exercise was compiled with. Of what nobody settled the first readings are ridden, unless they bar the
 *  ride: then the nearest that do not. */
export function rideCompiled(allRows: Rows, compiled: CompiledExercise, options: RideOptions): PartRides {
  const { drill, base } = compiled;
  const exercise = drill.exercise.id;
  const roles = ridingRoles(drill.elements);
  const rideAlone = (asked: RideOptions): RideWithContext[] =>
    (roles.length < 2 ? [asked] : roles.map((role) => ({ ...asked, role }))).map((one) =>
      rideWithContext(allRows, exercise, one, base.rows, compiled),
    );
  const first = rideAlone(options);
  const preferred = readingsInstead(allRows, compiled, options, first);
  const isInstead = preferred.size > 0;
  const taken = { ...options, preferred };
  const alone = isInstead ? rideAlone(taken) : first;
  const [only] = alone;
  const plan =
    roles.length < 2 && only !== undefined
      ? [theOnlyRide(only.ridden)]
      : ridesTogether(
          ridesOfRoles(
            allRows,
            exercise,
            roles.map((role) => ({ role, options: taken })),
            base.rows,
            alone,
          ),
          roles,
        );
  let barring: readonly Finding[] | null = null;
  let dead: ReadonlySet<string> | null = null;
  return {
    plan,
    supplied: only?.context.supplied ?? new Map(),
    isInstead,
    barring: () => {
      barring ??= alone.flatMap(({ ridden, context }) => findingsOf(ridden, context, { barring: true }));
      return barring;
    },
    dead: () => {
      dead ??= deadReadings(allRows, compiled, options);
      return dead;
    },
  };
}
