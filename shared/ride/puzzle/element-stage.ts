/** shared/ride/puzzle/element-stage.ts - one element as a stage of the puzzle: a state and readings in, states and hits out.
 *  May import: shared/decide, shared/ride, siblings. Keeps rules P1, P5 and P7 (shared/ride/puzzle/RULES.md). */
import type { Hit, ReadingOf, Stage, Successor } from "../../decide/puzzle.ts";
import { isRide } from "../horse-order.ts";
import { beginning } from "../ride-exercise.ts";
import type { ByReadings } from "./by-readings.ts";
import { type CompletedStage, completionsOf } from "./completions.ts";
import type { ElementPlan } from "./element-plans.ts";
import { perhapsRule } from "./perhaps-rule.ts";
import type { PuzzleWorld } from "./puzzle-world.ts";
import { onlyAsked, type ReadingsOf } from "./reading-table.ts";
import { forgetting, type Remembered, type StillRead } from "./remembered.ts";
import { lookBack, type PlacedVerdict, type Watched } from "./remembered-rules.ts";
import type { RiddenOn, StageRides, Verdict } from "./ride-on.ts";
import type { StagePlan } from "./stage-plan.ts";
import { withoutStated } from "./stated-values.ts";

export interface ElementStage {
  id: string;
  touches: readonly string[];
  stated: readonly string[];
  plans: ByReadings<ElementPlan>;
  /** For the first stage of an exercise: where it begins, whatever came before. */
  begins: ByReadings<Remembered> | null;
  watched: (readingOf: ReadingOf) => Watched;
  still: StillRead;
  /** Whether a person has set the rule aside at one of these elements. */
  waived: (rule: string, elements: readonly string[]) => boolean;
  completions: boolean;
  /** No element before it rides a figure, under any reading: to which side its first one turns tells where it begins. */
  first: boolean;
}

/** Where the last stage of an exercise leads: nothing is read any more. */
export const OVER = "over";

/** More ways through one element than this are not kept apart: the rest is ridden as the text leaves it. */
export const MOST_TRACKS = 32;

/** One way through the element, stage by stage. */
interface Track {
  held: Remembered;
  ridden: readonly RiddenOn[];
  stages: readonly StagePlan[];
  supplied: readonly string[];
}

export function elementStage(
  element: ElementStage,
  world: PuzzleWorld,
  rides: StageRides,
  readingsOf: ReadingsOf,
): Stage {
  const { id, touches, stated } = element;
  const { states } = rides;
  const asked = new Set(touches);
  const done = new Map<string, readonly Successor[]>();
  return {
    id,
    touches,
    ...(stated.length > 0 ? { stated } : {}),
    run: (state, reading, without) => {
      const readingOf = onlyAsked(reading, asked, readingsOf);
      const plan = element.plans.get(readingOf);
      const held = element.begins === null ? states.stateOf(state) : element.begins.get(readingOf);
      const from = element.begins === null ? state : states.nameOf(held);
      const watched = element.watched(readingOf);
      const dropped = stated.filter((value) => without?.has(value));
      const key = JSON.stringify([plan.key, from, watched.beginning.map((one) => one.id), dropped]);
      const known = done.get(key);
      if (known !== undefined) return known;
      const successors = through(element, plan, held, new Set(dropped), { world, rides, watched });
      done.set(key, successors);
      return successors;
    },
  };
}

interface Riding {
  world: PuzzleWorld;
  rides: StageRides;
  watched: Watched;
}

function through(
  element: ElementStage,
  plan: ElementPlan,
  held: Remembered,
  dropped: ReadonlySet<string>,
  riding: Riding,
): readonly Successor[] {
  const { world, rides } = riding;
  let tracks: Track[] = [{ held, ridden: [], stages: [], supplied: [] }];
  for (const stage of plan.stages) {
    const said = withoutStated(stage, dropped, world);
    const ways = said.flatMap((one): readonly CompletedStage[] =>
      element.completions && tracks.length * said.length < MOST_TRACKS
        ? completionsOf(one, world)
        : [{ stage: one, supplied: null }],
    );
    tracks = tracks.flatMap((track) =>
      ways.map((way): Track => {
        const begins = element.first && way.supplied !== null && !track.stages.some(hasFigure);
        const from = begins ? begunBy(way.stage, track.held, world) : track.held;
        const ridden = rides.ride(way.stage, from);
        return {
          held: ridden.after,
          ridden: [...track.ridden, ridden],
          stages: [...track.stages, way.stage],
          supplied: way.supplied === null ? track.supplied : [...track.supplied, way.supplied],
        };
      }),
    );
  }
  return distinct(tracks.flatMap((track) => successorsOf(element, track, riding)));
}

const hasFigure = ({ plan }: StagePlan): boolean => plan.acts.some(isRide);

/** Where it begins when the side of its first figure is supplied. */
function begunBy({ plan, ground }: StagePlan, held: Remembered, { usual }: PuzzleWorld): Remembered {
  if (held.last !== null || !plan.acts.some(isRide)) return held;
  return { ...held, pose: beginning({ ground, usual }, [plan], held.state).pose };
}

/** What is broken is broken in every completion. What cannot be told may be or not: two ways on to the same state. */
function successorsOf(element: ElementStage, { held, ridden, stages, supplied }: Track, riding: Riding): Successor[] {
  const { rides, watched } = riding;
  const looked = lookBack(watched, stages, ridden, held);
  const placed: PlacedVerdict[] = [
    ...ridden.flatMap(({ verdicts }, index) => {
      const plan = stages[index]?.plan;
      const at = plan === undefined ? [] : [plan.element, plan.source];
      return verdicts.map((one) => ({ ...one, at }));
    }),
    ...looked.verdicts,
  ];
  const counted = placed.filter(({ rule, at }) => !element.waived(rule, at));
  const rules = (verdict: Verdict["verdict"]): string[] =>
    [...new Set(counted.filter((one) => one.verdict === verdict).map(({ rule }) => rule))].sort();
  const after = { ...held, ...looked.held };
  const state = element.still.over ? OVER : rides.states.nameOf(forgetting(after, element.still));
  const words = supplied.length === 0 ? {} : { supplied: supplied.join("; ") };
  const broken = rules("broken");
  const perhaps = rules("cannot tell").filter((rule) => !broken.includes(rule));
  const hits = broken.map(barring);
  const surely: Successor = { state, hits, ...words };
  if (perhaps.length === 0) return [surely];
  return [surely, { state, hits: [...hits, ...perhaps.map((rule) => barring(perhapsRule(rule)))], ...words }];
}

const barring = (rule: string): Hit => ({ rule, bars: true });

/** Of several ways to one state with the same hits, the one that supplies least. */
function distinct(successors: readonly Successor[]): Successor[] {
  const kept = new Map<string, Successor>();
  for (const one of successors) {
    const key = JSON.stringify([one.state, one.hits]);
    const before = kept.get(key);
    if (before === undefined || (one.supplied ?? "").length < (before.supplied ?? "").length) kept.set(key, one);
  }
  return [...kept.values()];
}
