/** shared/ride/go-on.ts - what the horse does in a stage that has no figure: it stands, or goes on as it went.
 *  May import: shared/ground, shared/hands, siblings in shared/ride. Keeps rule R22 (shared/ride/RULES.md). All of it is
 *  supplied. */
import { reinOf } from "../ground/figures/figure.ts";
import { staysInside } from "../ground/figures/onto.ts";
import { rideFigure } from "../ground/figures/ride-figure.ts";
import { lengthOf } from "../ground/path.ts";
import { arcAbout, type Piece, poseOn } from "../ground/piece.ts";
import { mirrorPose, type Pose, samePose, settled } from "../ground/plane.ts";
import { footOn, trackOf } from "../ground/track.ts";
import { exactly } from "../hands/known.ts";
import type { ControlState } from "../hands/state.ts";
import { type Course, type Drafted, type Setting, standing } from "./course.ts";
import { gaitOf } from "./gait-of.ts";
import { secondsWords } from "./measured.ts";
import type { RiddenPiece } from "./ridden.ts";

/** Figures on whose circle a horse that goes on goes round again. */
export const ROUND: ReadonlySet<RiddenPiece["figure"]> = new Set(["circle", "volte", "part circle"]);

export function goOn(
  setting: Setting,
  course: Course,
  stage: number,
  state: ControlState,
  seconds: number,
  notes: string[],
): Drafted[] {
  const last = course.drafted.at(-1);
  const gait = exactly(state.gait);
  const stands = gait === null ? last === undefined || last.ridden.gait === "halt" : gait === "halt";
  if (stands) {
    notes.push("Where the horse stands and nothing says how long, an act of the hands takes 2 s, supplied.");
    return [standing(course.pose, seconds, stage, null)];
  }
  const {
    gait: called,
    pace,
    gaitSupplied,
    speed,
    strideLength,
  } = gait === null && last ? last.ridden : gaitOf(state, null, setting.horse, notes);
  const way = wayOn(setting, course, state, speed * seconds);
  if (way === null) {
    notes.push("Where the horse has no way on, it is shown standing, supplied.");
    return [standing(course.pose, seconds, stage, null)];
  }
  const going = way.metres / speed;
  const stops = way.metres < speed * seconds - WORTH_STANDING;
  notes.push(
    `Nothing is said of the horse: it goes on ${way.where} for ${secondsWords(stops ? going : seconds)}, supplied.`,
  );
  const end = poseOn(way.pieces[way.pieces.length - 1] as Piece, 1);
  course.pose = settled(end);
  const ridden: RiddenPiece = {
    stage,
    action: null,
    figure: way.figure,
    joins: false,
    gait: called,
    pace,
    gaitSupplied,
    speed,
    strideLength,
  };
  const gone = way.pieces.map((piece): Drafted => ({ piece, ridden }));
  if (!stops) return gone;
  notes.push("It comes straight to the wall, and nothing says to which side it turns: it is shown standing, supplied.");
  return [...gone, standing(course.pose, seconds - going, stage, null)];
}

/** `metres`: of the pieces; fewer than were asked for where it comes to the wall and no side is told. */
type WayOn = { pieces: readonly Piece[]; metres: number; where: string; figure: RiddenPiece["figure"] };

/** Metres: the rest of a way that is shorter is not stood. */
const WORTH_STANDING = 0.001;

/** Round the circle it is on, along the track it is on, straight on, or to the track. */
function wayOn({ manege }: Setting, course: Course, { rein }: ControlState, metres: number): WayOn | null {
  const { ground, usual } = manege;
  const last = course.drafted.at(-1);
  if (last?.piece.is === "arc" && ROUND.has(last.ridden.figure)) {
    const { centre, radius, sweep } = last.piece;
    const turn = (Math.sign(sweep) * metres * 18_000) / (Math.PI * radius);
    const pieces = [arcAbout(centre, radius, poseOn(last.piece, 1).heading, turn)];
    if (staysInside(manege, pieces))
      return { pieces, metres, where: "round the same circle", figure: last.ridden.figure };
  }
  for (const side of ["left", "right"] as const) {
    const foot = footOn(trackOf(ground, side, usual.cornerDiameter, usual.tolerance), course.pose);
    if (!samePose(foot.pose, course.pose, usual.tolerance)) continue;
    const along = rideFigure(manege, course.pose, { figure: "along the wall", side, length: metres });
    if (along.ok) return { pieces: along.path.pieces, metres, where: "along the track", figure: "along the wall" };
  }
  const ahead = rideFigure(manege, course.pose, { figure: "straight", length: metres });
  if (ahead.ok) return { pieces: ahead.path.pieces, metres, where: "straight on", figure: "straight" };
  // Toward the middle of the wall neither side is inside: left would be a side that nothing tells.
  const side = isOnMiddleLine(course.pose) ? exactly(rein) : reinOf(course.pose);
  if (side === null) {
    const upTo = rideFigure(manege, course.pose, { figure: "straight" });
    if (!upTo.ok) return null;
    const { pieces } = upTo.path;
    return { pieces, metres: lengthOf(upTo.path), where: "straight on", figure: "straight" };
  }
  const along = rideFigure(manege, course.pose, { figure: "along the wall", side, length: metres });
  return along.ok ? { pieces: along.path.pieces, metres, where: "along the track", figure: "along the wall" } : null;
}

/** Whether it heads along a line through the middle of the ground. */
function isOnMiddleLine(pose: Pose): boolean {
  return reinOf(pose) === reinOf(mirrorPose(pose));
}
