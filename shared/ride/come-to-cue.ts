/** shared/ride/come-to-cue.ts - how a stage comes to what it waits for: on to a station that is named, or standing until
 *  another rider has done it.
 *  May import: shared/ground, shared/hands, siblings in shared/ride. Keeps rules R33, R35 (shared/ride/RULES.md). All of it
 *  is supplied; where the horse does not come there, the stage begins where it is. */
import { rideFigure } from "../ground/figures/ride-figure.ts";
import { arcAbout, type Piece, poseOn } from "../ground/piece.ts";
import { bearing, distance, samePose, settled, turned } from "../ground/plane.ts";
import { type GroundStation, placeOfStation } from "../ground/stations.ts";
import { footOn, trackOf } from "../ground/track.ts";
import type { ControlState } from "../hands/state.ts";
import { type Course, type Drafted, type Setting, standing } from "./course.ts";
import { metresOn, stationNamed } from "./event-meant.ts";
import { nameIn, readRide } from "./figure-ask.ts";
import { gaitOf } from "./gait-of.ts";
import { ROUND } from "./go-on.ts";
import { metresWords, secondsWords } from "./measured.ts";
import { isBeside, isThere, poseAtStation } from "./places.ts";
import type { PlannedStage } from "./planned.ts";
import type { RiddenAct } from "./ride-context.ts";
import { wayTo } from "./way-to.ts";

export interface CameToCue {
  drafted: Drafted[];
  notes: string[];
}

const NOTHING: CameToCue = { drafted: [], notes: [] };

/** The words of what a stage waits for; null where nothing is said, or it is not settled what. */
export function cueOf({ values }: Pick<PlannedStage, "values">): string | null {
  const held = values.find(({ slot }) => slot === "cue");
  return held !== undefined && held.standing !== "not settled" && typeof held.value === "string" ? held.value : null;
}

/** Moves the course's pose to where the stage begins. `act`: its first figure, null where it has none. */
export function comeToCue(
  setting: Setting,
  course: Course,
  plan: PlannedStage,
  stage: number,
  state: ControlState,
  act: RiddenAct | null,
): CameToCue {
  const cue = cueOf(plan);
  if (cue === null) return NOTHING;
  const event = setting.elsewhere?.(cue) ?? null;
  if (event !== null) return waits(course, stage, cue, event - course.seconds);
  const { ground } = setting.manege;
  const station = metresOn(cue) === 0 ? stationNamed(cue, ground, plan.mirrored) : null;
  // Where a ride begins is chosen with its cue in mind.
  if (station === null || course.drafted.length === 0 || isBeside(setting.manege, station, course.pose)) return NOTHING;
  const ride = act === null ? null : readRide(act, ground, course.pose, state);
  if (ride?.from) return NOTHING;

  const way =
    onTo(setting, course, station) ??
    (ride && wayTo(setting.manege, course.pose, poseAtStation(setting.manege, station, ride, false)));
  const last = way?.at(-1);
  if (way === null || last === undefined)
    return {
      drafted: [],
      notes: [`It is to begin when “${cue}”, and the horse does not come there as it goes: it begins where it is.`],
    };
  const notes: string[] = [];
  const before = course.drafted.at(-1)?.ridden;
  const { gait, pace, gaitSupplied, speed, strideLength } =
    before !== undefined && before.speed > 0 ? before : gaitOf(state, ride?.figure ?? null, setting.horse, notes);
  course.pose = settled(poseOn(last, 1));
  const metres = way.reduce((sum, { length }) => sum + length, 0);
  notes.push(`It is to begin when “${cue}”: the horse goes on to ${station.name}, ${metresWords(metres)}, supplied.`);
  const ridden = { stage, action: null, figure: null, joins: true, gait, pace, gaitSupplied, speed, strideLength };
  return { drafted: way.map((piece) => ({ piece, ridden })), notes };
}

function waits(course: Course, stage: number, cue: string, seconds: number): CameToCue {
  if (!(seconds > 0)) return NOTHING;
  const { piece, ridden } = standing(course.pose, seconds, stage, null);
  return {
    drafted: [{ piece, ridden: { ...ridden, joins: true } }],
    notes: [`It waits for “${cue}”, standing for ${secondsWords(seconds)}, supplied.`],
  };
}

/** Round the circle it is on, or along the track it is on, until it is there; null where that does not bring it there. */
function onTo({ manege }: Setting, course: Course, station: GroundStation): readonly Piece[] | null {
  const { ground, usual } = manege;
  const last = course.drafted.at(-1);
  if (last?.piece.is === "arc" && ROUND.has(last.ridden.figure)) {
    const place = placeOfStation(station, course.pose);
    const { centre, radius, sweep } = last.piece;
    if (distance(centre, place) > 0.001) {
      const [from, to] = [bearing(centre, course.pose), bearing(centre, place)];
      const turn = sweep > 0 ? turned(to, -from) : -turned(from, -to);
      const arc = turn === 0 ? null : arcAbout(centre, radius, poseOn(last.piece, 1).heading, turn);
      if (arc !== null && isBeside(manege, station, poseOn(arc, 1))) return [arc];
    }
  }
  for (const side of ["left", "right"] as const) {
    const foot = footOn(trackOf(ground, side, usual.cornerDiameter, usual.tolerance), course.pose);
    if (!samePose(foot.pose, course.pose, usual.tolerance)) continue;
    const along = rideFigure(manege, course.pose, { figure: "along the wall", side, toward: nameIn(ground, station) });
    if (along.ok && isThere(manege, station, along.path.end)) return along.path.pieces;
  }
  return null;
}
