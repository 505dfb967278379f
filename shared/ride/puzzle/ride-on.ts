/** shared/ride/puzzle/ride-on.ts - one stage ridden and judged from what is remembered of the stages before it.
 *  May import: schema types, shared/drill, shared/ground, shared/hands, shared/ride and its rules, siblings. Keeps rule P1
 *  (shared/ride/puzzle/RULES.md): what comes out is what the whole ride would say of this stage. */

import { pathOf } from "../../ground/path.ts";
import { poseOn } from "../../ground/piece.ts";
import type { Point, Pose } from "../../ground/plane.ts";
import type { ControlState } from "../../hands/state.ts";
import { Course, type Drafted, RIDE_TOLERANCE, type Setting, standing } from "../course.ts";
import { contextIn } from "../follow.ts";
import { stageOn } from "../one-stage.ts";
import type { Ridden, RiddenStage } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { rideStage, SECONDS_AN_ACT, type StagePath } from "../ride-stage.ts";
import { heldMoments } from "../rules/holds-in-force.ts";
import { windowsOf } from "../rules/moments.ts";
import { storyAfter } from "../rules/reins.ts";
import type { Judgement, RideRule, Seen } from "../rules/rule.ts";
import { threatsOf } from "../threats-of.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import { type Remembered, wayKeyOf } from "./remembered.ts";
import { looksAtThreats, type StagePlan } from "./stage-plan.ts";
import { StateTable } from "./state-table.ts";

/** What a rule says of a stage, where it is not kept; several of one rule and thing come once each. */
export interface Verdict {
  rule: string;
  verdict: "broken" | "cannot tell";
}

export interface RiddenOn {
  after: Remembered;
  /** Broken ones are told where they begin: what goes on from before is not told again. */
  verdicts: readonly Verdict[];
  /** Where the stage's own way begins, after what joins it, and where it ends. */
  from: Point;
  to: Point;
  /** A figure of it could not be ridden. */
  refused: boolean;
  before: ControlState;
}

interface LaidPath {
  path: StagePath;
  after: Pick<Remembered, "pose" | "sizes" | "began">;
  /** By the rules that look at nothing but the way. */
  judged: Map<RideRule, readonly Judgement[]>;
}

/** What was ridden before. It may be kept from one puzzle to the next as long as the key of the world is the same. */
export class RiddenBefore {
  readonly states = new StateTable();
  readonly ridden = new Map<string, Map<string, RiddenOn>>();
  readonly paths = new Map<string, Map<string, LaidPath>>();
}

/** Rides stages, each from each state once. */
export class StageRides {
  readonly #world: PuzzleWorld;
  readonly #before: RiddenBefore;

  constructor(world: PuzzleWorld, before: RiddenBefore) {
    this.#world = world;
    this.#before = before;
  }

  get states(): StateTable {
    return this.#before.states;
  }

  ride(stage: StagePlan, held: Remembered): RiddenOn {
    const known = tableOf(this.#before.ridden, stage.key);
    const name = this.states.nameOf(held);
    const found = known.get(name);
    if (found !== undefined) return found;
    const made = this.#rideAnew(stage, held);
    known.set(name, made);
    return made;
  }

  #rideAnew(stage: StagePlan, held: Remembered): RiddenOn {
    const { plan } = stage;
    const laid = this.#pathFor(stage, held);
    const course = courseFrom(held);
    const first = course.drafted.length;
    course.add(laid.path.drafted);
    const ridden = stageOn(course, plan, { path: laid.path, first, from: 0 }, held.state);
    const ride = this.#rideOf(stage, course, ridden);
    const context = this.#contextOf(stage, held);
    const moments = heldMoments(ride, context);
    const seen: Seen = { moments, windows: windowsOf(ride) };
    const judged = this.#world.rules.map((rule) => ({
      rule,
      judgements: onlyOnPath(rule)
        ? (laid.judged.get(rule) ?? keep(laid.judged, rule, rule.check(ride, context, seen)))
        : rule.check(ride, context, seen),
    }));
    const told = judged.map((one) => this.#told(one.rule, one.judgements, held));
    const untreated = plan.is === "untreated";
    const reins = untreated
      ? "not told"
      : moments.reduce((story, moment) => storyAfter(story, moment, context), held.carried.reins);
    const holds = untreated ? NO_HOLDS : (moments.at(-1)?.holds ?? held.carried.holds);
    const own = laid.path.drafted.slice(ridden.joined);
    return {
      after: {
        ...held,
        ...laid.after,
        state: ridden.after,
        last: laid.path.drafted.at(-1) ?? held.last,
        carried: { holds, reins },
        goingOn: new Set(told.flatMap(({ goingOn }) => goingOn)),
      },
      verdicts: told.flatMap(({ verdicts }) => verdicts),
      from: placeOf(own[0], 0, laid.after.pose),
      to: placeOf(own.at(-1), 1, laid.after.pose),
      refused: ridden.refused.length > 0,
      before: held.state,
    };
  }

  /** As listedBreaches tells them over the whole ride: what lasts is told where it begins. */
  #told(rule: RideRule, judgements: readonly Judgement[], held: Remembered) {
    const key = (about: string): string => `${rule.code} ${about}`;
    const before = [...held.goingOn].filter((one) => one.startsWith(`${rule.code} `));
    const breaches = judgements.flatMap((one) => (one.verdict === "kept" ? [] : [one]));
    const broken = breaches.filter(({ verdict }) => verdict === "broken");
    const fresh = broken.filter(({ about }) => !before.includes(key(about)));
    const verdicts: Verdict[] = [];
    if (fresh.length > 0) verdicts.push({ rule: rule.code, verdict: "broken" });
    if (breaches.some(({ verdict }) => verdict === "cannot tell"))
      verdicts.push({ rule: rule.code, verdict: "cannot tell" });
    const open = new Set(breaches.map(({ about }) => key(about)));
    const still = judgements.length === 0 ? before : before.filter((one) => open.has(one));
    const begun = fresh.filter(({ lasts }) => lasts).map(({ about }) => key(about));
    return { verdicts, goingOn: [...still, ...begun] };
  }

  #pathFor(stage: StagePlan, held: Remembered): LaidPath {
    const table = tableOf(this.#before.paths, stage.pathKey);
    const key = wayKeyOf(held);
    const found = table.get(key);
    if (found !== undefined) return found;
    const course = courseFrom(held);
    const setting: Setting = { manege: { ground: stage.ground, usual: this.#world.usual }, horse: [] };
    const path = rideStage(setting, course, stage.plan, 0, held.state);
    const made: LaidPath = {
      path,
      after: { pose: course.pose, sizes: course.sizes, began: course.began },
      judged: new Map(),
    };
    table.set(key, made);
    return made;
  }

  #rideOf({ plan, ground }: StagePlan, course: Course, stage: RiddenStage): Ridden {
    // A stage in which nothing is ridden still has a moment to be looked at.
    const alone = course.drafted.length === 0;
    const drafted = alone ? [standing(course.pose, SECONDS_AN_ACT, 0, null)] : course.drafted;
    const path = pathOf(
      drafted.map(({ piece }) => piece),
      RIDE_TOLERANCE,
    );
    const times = alone ? [0, SECONDS_AN_ACT] : course.times;
    return {
      exercise: "",
      title: "",
      way: this.#world.way,
      ground,
      groundName: "",
      groundSupplied: false,
      stages: [stage],
      timed: { path, times, duration: course.seconds },
      pieces: drafted.map(({ ridden }) => ridden),
      metres: 0,
      strides: null,
      lanes: [],
      threats: looksAtThreats(this.#world) ? threatsOf(plan, 0, stage) : [],
      findings: [],
      treated: "",
      supplied: [],
      quoted: [],
    };
  }

  #contextOf({ plan }: StagePlan, held: Remembered): RideContext {
    const acts = new Map(plan.acts.map((act) => [act.id, act]));
    const hands = contextIn(plan);
    const never = (): never => {
      throw new TypeError("A rule that looks at one stage asked for the whole ride, which is not there.");
    };
    return {
      ...this.#world.lookUps,
      settlement: plan.compiling.settlement,
      get compiled(): RideContext["compiled"] {
        return never();
      },
      actsOf: () => plan.acts,
      act: (_, action) => acts.get(action) ?? null,
      element: () => null,
      hold: (_, id) => hands.hold(id),
      carriedIn: held.carried,
      rideUnder: never,
    };
  }
}

const NO_HOLDS: Remembered["carried"]["holds"] = new Map();

function keep(table: Map<RideRule, readonly Judgement[]>, rule: RideRule, judgements: Judgement[]): Judgement[] {
  table.set(rule, judgements);
  return judgements;
}

const onlyOnPath = ({ reach }: RideRule): boolean => reach === "place";

function tableOf<T>(tables: Map<string, Map<string, T>>, key: string): Map<string, T> {
  const known = tables.get(key);
  if (known) return known;
  const made = new Map<string, T>();
  tables.set(key, made);
  return made;
}

/** A course that begins where the horse is, after the piece it was ridden on last. */
function courseFrom({ pose, last, sizes, began }: Remembered): Course {
  const course = new Course(pose);
  if (last !== null) {
    course.drafted.push({ ...last, ridden: { ...last.ridden, stage: -1 } });
    course.times.push(0);
  }
  for (const [id, metres] of sizes) course.sizes.set(id, metres);
  for (const [id, at] of began) course.began.set(id, at);
  return course;
}

/** The place at a part of a piece; where nothing is ridden, where the horse is. */
function placeOf(drafted: Drafted | undefined, part: number, pose: Pose): Point {
  const { x, y } = drafted === undefined ? pose : poseOn(drafted.piece, part);
  return { x, y };
}
