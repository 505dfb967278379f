/** shared/ride/go-on.ts - what the horse does in a stage that has no figure: it stands, or goes on as it went.
 *  May import: shared/ground, shared/hands, siblings in shared/ride. Keeps rule R22 (shared/ride/RULES.md). All of it is
 *  supplied. */
import { staysInside } from "../ground/figures/onto.ts";
import { rideFigure } from "../ground/figures/ride-figure.ts";
import { arcAbout, type Piece, poseOn } from "../ground/piece.ts";
import { samePose, settled } from "../ground/plane.ts";
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
  const way = wayOn(setting, course, speed * seconds);
  if (way === null) {
    notes.push("Where the horse has no way on, it is shown standing, supplied.");
    return [standing(course.pose, seconds, stage, null)];
  }
  notes.push(`Nothing is said of the horse: it goes on ${way.where} for ${secondsWords(seconds)}, supplied.`);
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
  return way.pieces.map((piece) => ({ piece, ridden }));
}

type WayOn = { pieces: readonly Piece[]; where: string; figure: RiddenPiece["figure"] };

/** Round the circle it is on, along the track it is on, straight on, or to the track. */
function wayOn({ manege }: Setting, course: Course, metres: number): WayOn | null {
  const { ground, usual } = manege;
  const last = course.drafted.at(-1);
  if (last?.piece.is === "arc" && ROUND.has(last.ridden.figure)) {
    const { centre, radius, sweep } = last.piece;
    const turn = (Math.sign(sweep) * metres * 18_000) / (Math.PI * radius);
    const pieces = [arcAbout(centre, radius, poseOn(last.piece, 1).heading, turn)];
    if (staysInside(manege, pieces)) return { pieces, where: "round the same circle", figure: last.ridden.figure };
  }
  for (const side of ["left", "right"] as const) {
    const foot = footOn(trackOf(ground, side, usual.cornerDiameter, usual.tolerance), course.pose);
    if (!samePose(foot.pose, course.pose, usual.tolerance)) continue;
    const along = rideFigure(manege, course.pose, { figure: "along the wall", side, length: metres });
    if (along.ok) return { pieces: along.path.pieces, where: "along the track", figure: "along the wall" };
  }
  const ahead = rideFigure(manege, course.pose, { figure: "straight", length: metres });
  if (ahead.ok) return { pieces: ahead.path.pieces, where: "straight on", figure: "straight" };
  const along = rideFigure(manege, course.pose, { figure: "along the wall", length: metres });
  return along.ok ? { pieces: along.path.pieces, where: "along the track", figure: "along the wall" } : null;
}
