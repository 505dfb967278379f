/** shared/ride/ride-stage.ts - one stage ridden: its figures from where the horse is, joined where the text leaves a gap.
 *  May import: schema types, shared/ground, shared/hands, siblings in shared/ride. Keeps rules R13-R22 (shared/ride/RULES.md).
 *  A figure that cannot be ridden is refused with its sentence; the horse stays where it is and the ride goes on. */
import type { FigureResult } from "../ground/figures/figure.ts";
import { rideFigure } from "../ground/figures/ride-figure.ts";
import { distance, mirrorPose, type Pose, settled, turnBetween } from "../ground/plane.ts";
import { applyAct, NO_CONTEXT } from "../hands/apply.ts";
import { exactly } from "../hands/known.ts";
import { slotOf } from "../hands/known-act.ts";
import type { ControlState } from "../hands/state.ts";
import { comeToCue } from "./come-to-cue.ts";
import { type Course, type Drafted, type Setting, standing } from "./course.ts";
import { cutAt, type DraftPlace } from "./cut-draft.ts";
import { eventMeant } from "./event-meant.ts";
import { type EventsOn, placeOfEvent } from "./event-place.ts";
import { askOf, endingForHalt, nameIn, onWords, type RideAct, readRide, withShortWay } from "./figure-ask.ts";
import { gaitOf, type PieceGait } from "./gait-of.ts";
import { goOn } from "./go-on.ts";
import { type GaitCut, halts, horseOrder, isGait, isRide, takesTime, timingOf } from "./horse-order.ts";
import { joinGait, manegeAt } from "./join-gait.ts";
import { metresWords } from "./measured.ts";
import { beginnings, isThere, placedByUs, poseAtStation, touchesTrack } from "./places.ts";
import type { PlannedStage } from "./planned.ts";
import type { RiddenStage } from "./ridden.ts";
import type { RiddenAct } from "./ride-context.ts";
import { withWayTo } from "./round-to.ts";
import { wayTo } from "./way-to.ts";

export interface StagePath {
  drafted: Drafted[];
  refused: RiddenStage["refused"];
  notes: string[];
  events: EventsOn;
}

/** Seconds for an act of the hands where nothing is ridden, and the least a stage lasts; supplied. */
export const SECONDS_AN_ACT = 2;

/** Lays the stage and moves the horse to its end. `state` is the control state before it. */
export function rideStage(
  setting: Setting,
  course: Course,
  plan: PlannedStage,
  stage: number,
  state: ControlState,
): StagePath {
  const laid: StagePath = { drafted: [], refused: [], notes: [], events: new Map() };
  if (plan.is === "untreated" || plan.refusal !== null) return laid;
  const { sequence, cuts } = horseOrder(plan.acts, (event, { mirrored }) => {
    const meant = eventMeant(event, setting.manege.ground, plan.acts, mirrored);
    return meant && ((drafted) => placeOfEvent(drafted, meant));
  });
  const rider = new StageRider(setting, course, plan, stage, state, laid);
  if (sequence.some(isRide)) for (const [at, act] of sequence.entries()) rider.do(act, sequence[at + 1] ?? null);
  else {
    for (const act of sequence) rider.learn(act);
    laid.drafted.push(...rider.withoutFigure());
  }
  for (const { act, placeOn } of inOrderOn(laid.drafted, cuts)) {
    rider.learn(act);
    const at = placeOn(laid.drafted) ?? WHOLE_WAY;
    if (laid.drafted.length > 0)
      laid.drafted = cutAt(laid.drafted, at, () => gaitOf(rider.state, null, setting.horse, laid.notes));
  }
  course.add(laid.drafted);
  return { ...laid, events: eventsOn(setting, plan, laid.drafted) };
}

function eventsOn({ manege, elsewhere }: Setting, { acts }: PlannedStage, drafted: readonly Drafted[]): EventsOn {
  const events = new Map<string, DraftPlace | { seconds: number }>();
  for (const act of acts) {
    const timing = timingOf(act);
    if (timing?.is !== "when" && timing?.is !== "until") continue;
    const seconds = elsewhere?.(timing.event) ?? null;
    const meant = seconds === null ? eventMeant(timing.event, manege.ground, acts, act.mirrored) : null;
    const at = seconds === null ? meant && placeOfEvent(drafted, meant) : { seconds };
    if (at !== null) events.set(act.id, at);
  }
  return events;
}

/** A gait that changes where the way does not come to is that of the whole way. */
const WHOLE_WAY: DraftPlace = { index: 0, part: 0 };

function inOrderOn(drafted: readonly Drafted[], cuts: readonly GaitCut[]): GaitCut[] {
  const placed = cuts.map((cut) => ({ cut, at: cut.placeOn(drafted) ?? WHOLE_WAY }));
  return placed.sort((a, b) => a.at.index - b.at.index || a.at.part - b.at.part).map(({ cut }) => cut);
}

/** Metres and hundredths of a degree within which the end of a run fits its start. */
const FITS = { distance: 1.5, heading: 2_000 };

function turnedBy(from: Pose, to: Pose): number {
  return Math.abs(turnBetween(from.heading, to.heading));
}

class StageRider {
  state: ControlState;
  #first = true;
  #cameToCue = false;
  readonly #setting: Setting;
  readonly #course: Course;
  readonly #plan: PlannedStage;
  readonly #stage: number;
  readonly #laid: StagePath;

  constructor(
    setting: Setting,
    course: Course,
    plan: PlannedStage,
    stage: number,
    state: ControlState,
    laid: StagePath,
  ) {
    this.#setting = setting;
    this.#course = course;
    this.#plan = plan;
    this.#stage = stage;
    this.#laid = laid;
    this.state = state;
  }

  /** What the act does to gait and rein; where the hands are is followed later. */
  learn(act: RiddenAct): void {
    this.state = applyAct(this.state, act.known, NO_CONTEXT);
  }

  /** `next`: what the horse does after it. */
  do(act: RiddenAct, next: RiddenAct | null): void {
    if (isGait(act)) {
      this.learn(act);
      // A halt said after the figures is where the horse stops.
      if (halts(act) && this.#laid.drafted.length > 0) this.#stand(act);
      return;
    }
    this.#comeToCue(act);
    const ride = readRide(act, this.#setting.manege.ground, this.#course.pose, this.state);
    if (ride === null) {
      this.#refuse(act.id, `What is ridden is not known: “${act.words}”. Say which figure it is.`);
    } else if (ride.figure === "halt") {
      this.#note(ride.notes);
      this.#stand(act);
    } else {
      const { ground } = this.#setting.manege;
      const halt = next !== null && isRide(next) ? readRide(next, ground, this.#course.pose, this.state) : null;
      this.#figure(withShortWay(endingForHalt(ride, halt, this.state, ground)));
    }
    this.learn(act);
  }

  /** What the stage waits for comes before its first figure. */
  #comeToCue(act: RiddenAct | null): void {
    if (this.#cameToCue) return;
    this.#cameToCue = true;
    const way = comeToCue(this.#setting, this.#course, this.#plan, this.#stage, this.state, act);
    this.#note(way.notes);
    this.#laid.drafted.push(...way.drafted);
  }

  #stand(act: RiddenAct): void {
    const seconds = SECONDS_AN_ACT * Math.max(1, handActs(this.#plan.acts, act));
    this.#note([`A halt lasts ${SECONDS_AN_ACT} s, or ${SECONDS_AN_ACT} s for each act of the hands in it; supplied.`]);
    this.#laid.drafted.push(standing(this.#course.pose, seconds, this.#stage, act.id));
  }

  #figure(ride: RideAct): void {
    const { horse } = this.#setting;
    this.#note(ride.notes);
    const gait = gaitOf(this.state, ride.figure, horse, this.#laid.notes);
    const manege = manegeAt(this.#setting.manege, gait.speed);
    const { ground, usual } = manege;
    this.#joinUp(ride, gait);
    const sized = this.#sameSize(ride);
    const ask = askOf(sized, ground);
    const toward = sized.toward === null ? null : nameIn(ground, sized.toward);
    const from = (pose: Pose): FigureResult =>
      toward === null ? rideFigure(manege, pose, ask) : withWayTo(manege, pose, ask, toward);
    let result = from(this.#course.pose);
    if (!result.ok && result.code === "does-not-fit" && placedByUs(ride)) {
      this.#placeElsewhere(ride, gait, from);
      result = from(this.#course.pose);
    }
    if (this.#first)
      this.#course.began.set(this.#plan.source, { pose: this.#course.pose, mirrored: this.#plan.mirrored });
    this.#first = false;
    if (!result.ok && result.code === "nothing-to-ride" && ride.on !== null && ride.toward !== null) {
      // It was to go to a place it has come to already, by a way of which we supplied the length.
      const where = onWords(ride.on, ride.toward);
      this.#note([`It was to go to ${where}: it is there already, or less than a horse’s length past it.`]);
      return;
    }
    if (!result.ok) {
      this.#refuse(ride.act.id, result.sentence);
      return;
    }
    this.#note(result.notes.map(({ sentence }) => sentence));
    const line = result.notes.find((note) => note.is === "supplied line" && note.from === 0);
    const oblique = ride.figure === "half volte" || ride.figure === "half volte reversed";
    const joins = line?.is === "supplied line" && !oblique ? line.pieces : 0;
    const joined = joinGait(gait, result.path.pieces.slice(0, joins), horse);
    this.#laid.drafted.push(
      ...result.path.pieces.map((piece, index): Drafted => {
        const isJoin = index < joins;
        const what = { stage: this.#stage, action: ride.act.id, figure: ride.figure, joins: isJoin };
        return { piece, ridden: { ...what, ...(isJoin ? joined : gait) } };
      }),
    );
    const last = result.path.pieces.at(-1);
    if (sized.about !== null && last?.is === "arc") this.#course.sizes.set(sized.about.id, last.radius * 2);
    this.#course.pose = settled(result.path.end);
    if (result.path.pieces.some((piece) => piece.is === "arc" && piece.radius < usual.leastRadius / 10))
      this.#note([`Some bend is tighter than ${metresWords(usual.leastRadius / 10)}.`]);
  }

  /** A figure whose place and size are ours to supply is not ridden through the wall: it is begun where it fits. */
  #placeElsewhere(ride: RideAct, gait: PieceGait, from: (pose: Pose) => FigureResult): void {
    const { manege } = this.#setting;
    const place = beginnings(manege, ride).find(
      ({ pose }) => from(pose).ok && wayTo(manege, this.#course.pose, pose) !== null,
    );
    if (place) this.#join(place.pose, `${place.where} where it fits`, ride.act.id, gait);
  }

  /** A circle about the same place with no size of its own is the circle last ridden there, if the horse is on it. */
  #sameSize(ride: RideAct): RideAct {
    if (ride.about === null || ride.size !== null) return ride;
    const size = this.#course.sizes.get(ride.about.id);
    const outline = ride.about.outline;
    if (size === undefined || outline.is !== "point") return ride;
    const away = distance(this.#course.pose, outline.at);
    if (Math.abs(away - size / 2) > 0.002) return ride;
    this.#note([
      `The text does not say the size of the circle about ${ride.about.name} again: it is the same, ${metresWords(size)} across.`,
    ]);
    return { ...ride, size };
  }

  /** The supplied line to where the figure sets out, where the horse is not there. */
  #joinUp(ride: RideAct, gait: PieceGait): void {
    const { manege } = this.#setting;
    const course = this.#course;
    const begin = course.drafted.length === 0 && this.#laid.drafted.length === 0;
    if (begin) return;
    if (ride.from !== null && ride.figure !== "change across") {
      const target = poseAtStation(manege, ride.from, ride, false);
      // A round figure at the wall has to begin along it: being at the place is not enough.
      const headed = !touchesTrack(ride) || turnedBy(course.pose, target) <= FITS.heading;
      if (headed && isThere(manege, ride.from, course.pose)) return;
      this.#join(target, ride.from.name, ride.act.id, gait);
      return;
    }
    const before = this.#first && this.#plan.beginsLike !== null ? course.began.get(this.#plan.beginsLike) : undefined;
    if (before === undefined) return;
    const target = before.mirrored === this.#plan.mirrored ? before.pose : mirrorPose(before.pose);
    if (distance(course.pose, target) <= FITS.distance && turnedBy(course.pose, target) <= FITS.heading) return;
    this.#join(target, "where it is to begin again", ride.act.id, gait);
  }

  #join(target: Pose, where: string, action: string, gait: PieceGait): void {
    const manege = manegeAt(this.#setting.manege, gait.speed);
    const join = wayTo(manege, this.#course.pose, target);
    if (join === null) {
      this.#refuse(
        action,
        `A way to ${where} was expected, but none stays on the ground. It goes on from where the horse is.`,
      );
      return;
    }
    if (join.length === 0) return;
    const length = join.reduce((sum, piece) => sum + piece.length, 0);
    this.#note([
      `The text does not say how the horse comes to ${where}: a line of ${metresWords(length)} is supplied.`,
    ]);
    const ridden = {
      stage: this.#stage,
      action: null,
      figure: null,
      joins: true,
      ...joinGait(gait, join, this.#setting.horse),
    };
    this.#laid.drafted.push(...join.map((piece) => ({ piece, ridden })));
    this.#course.pose = settled(target);
  }

  /** A stage in which nothing is ridden lasts as long as its acts, standing or going on as before. */
  withoutFigure(): Drafted[] {
    this.#comeToCue(null);
    const least = SECONDS_AN_ACT * Math.max(1, handActs(this.#plan.acts, null));
    const seconds = Math.max(least, this.#secondsToWait());
    return goOn(this.#setting, this.#course, this.#stage, this.state, seconds, this.#laid.notes);
  }

  /** Until what another rider does, where an act waits for it. */
  #secondsToWait(): number {
    const until = this.#plan.acts.flatMap(({ known }) => {
      const held = known.verb === "wait" ? slotOf(known, "until", "words") : null;
      const event = held === null ? null : exactly(held);
      return event === null ? [] : (this.#setting.elsewhere?.(event) ?? []);
    });
    return Math.max(0, ...until) - this.#course.seconds;
  }

  #note(sentences: readonly string[]): void {
    this.#laid.notes.push(...sentences);
  }

  #refuse(action: string, sentence: string): void {
    this.#laid.refused.push({ action, sentence });
  }
}

/** Acts of the hands that take time of their own, after an act (null: all of them). */
function handActs(acts: readonly RiddenAct[], after: RiddenAct | null): number {
  const from = after === null ? 0 : acts.indexOf(after) + 1;
  return acts.slice(from).filter((act) => !isRide(act) && !isGait(act) && !act.drill.inherited && takesTime(act))
    .length;
}
