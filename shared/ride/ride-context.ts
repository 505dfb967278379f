/** shared/ride/ride-context.ts - what the rules may look up about a ride: the rows, the drill, the acts as they are done.
 *  May import: types of schema and of shared rooms. Made by ride-exercise.ts, read by shared/ride/rules. */
import type { DrillAction, DrillElement } from "../../schema/drill.ts";
import type { Way } from "../../schema/guard.ts";
import type { Rows } from "../../schema/record.ts";
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import type { CompiledExercise } from "../drill/compile.ts";
import type { ExerciseRows } from "../drill/exercise-rows.ts";
import type { Choice, Settlement } from "../drill/settle.ts";
import type { Names } from "../drill/words.ts";
import type { HorseGait } from "../ground/gaits.ts";
import type { RidingGround } from "../ground/grounds.ts";
import type { Usual } from "../ground/usual.ts";
import type { KnownHold } from "../hands/apply-hold.ts";
import type { KnownAct } from "../hands/known-act.ts";
import type { Ridden } from "./ridden.ts";
import type { CarriedIn } from "./rules/carried-in.ts";

export type Rein = "as it is" | "mirror the world" | "on the other rein";

export interface RideOptions {
  /** Readings to take; other cruxes as adopted, else as left free, else the first that is not ruled out, supplied. */
  choice?: Choice;
  /** Readings to show of cruxes nobody settled, by crux, before the first by rank. */
  preferred?: ReadonlyMap<string, string>;
  /** Default: as the variant has it, else mounted. */
  way?: Way;
  /** Id of a variant of the exercise or the work. */
  variant?: string | null;
  rein?: Rein;
  /** Rides the elements of this role and those without one; the others are somebody else's. Default: all of them, one
   *  after another. */
  role?: string | null;
  /** When, in seconds of this ride, another rider does what the words say (ride-roles.ts). */
  elsewhere?: Elsewhere;
  /** Id of a kit of the work, whose horse is ridden. Default: no horse in particular. */
  kit?: string | null;
  /** What the horse was measured to do, before what its kit says and the published gaits. */
  gaitSpeeds?: readonly HorseGait[];
  /** Ridden on this ground instead of the exercise's own. */
  ground?: { ground: RidingGround; name: string };
  /** Usual values to use instead of those in shared/ground/usual.ts. */
  usual?: Partial<Usual>;
}

/** Null where the words name no other rider, or nothing that one ever does. */
export type Elsewhere = (event: string) => number | null;

/** One action as it is done in a stage: mirrored where the stage is. */
export interface RiddenAct {
  /** Id of the action; of a movement that is performed, of the movement's own action. */
  id: string;
  /** The action that performs the movement this one belongs to; null for an action of its own. */
  via: string | null;
  drill: DrillAction;
  known: KnownAct;
  timing: Known<ValueOf<"timing">> | null;
  /** In words, as it is done; what is quoted from the text is never changed. */
  words: string;
  mirrored: boolean;
  /** It has no meaning here, since on foot there are no reins: it is neither done nor judged. */
  idle: boolean;
}

export interface RideContext {
  /** Every row that was given, and those of the exercise laid out (`find`, `all`, `actionsOf`). */
  allRows: Rows;
  rows: ExerciseRows;
  names: Names;
  options: RideOptions;
  compiled: CompiledExercise;
  settlement: Settlement;
  /** Readings taken only because nothing is settled, by crux. */
  supplied: ReadonlyMap<string, string>;
  /** The acts of a stage in the order of the text; none for one that is not written out. */
  actsOf: (stage: number) => readonly RiddenAct[];
  act: (stage: number, action: string) => RiddenAct | null;
  /** The element of the drill with this id, of this exercise or of another that is done again. */
  element: (id: string) => DrillElement | null;
  /** A hold as it is used in a stage: mirrored where the stage is. */
  hold: (stage: number, id: string) => KnownHold | null;
  /** What was so before its first stage; absent: nothing. */
  carriedIn?: CarriedIn;
  /** The same ride with one crux read otherwise; its findings are empty. */
  rideUnder: (crux: string, reading: string) => { ridden: Ridden; context: RideContext };
}
