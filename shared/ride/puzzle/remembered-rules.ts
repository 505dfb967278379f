/** shared/ride/puzzle/remembered-rules.ts - the rules that look back over several elements, judged as a ride goes on.
 *  May import: schema types, shared/ground, shared/ride/rules, siblings. Keeps rule P1 (shared/ride/puzzle/RULES.md). Only
 *  rules that bar are looked after: what nobody counts need not be remembered. */
import { distance, type Point } from "../../ground/plane.ts";
import type { ControlState } from "../../hands/state.ts";
import { handsOnIt, SAME_PLACE, sameHandsVerdict } from "../rules/remembered.ts";
import type { Began, HandsThen, Remembered } from "./remembered.ts";
import type { RiddenOn, Verdict } from "./ride-on.ts";
import type { StagePlan } from "./stage-plan.ts";

/** A demand over elements (null: from the first, to the last) that one of these rules is to check. */
export interface Demand {
  /** The advice that makes it. */
  id: string;
  from: string | null;
  to: string | null;
  rule: "same-hand" | "back-where-begun";
}

/** What of it concerns one element, under the readings it is ridden under. */
export interface Watched {
  bars: ReadonlySet<string>;
  /** Demands that are made under these readings and may begin at this element. */
  beginning: readonly Demand[];
  /** Demands that end at this element if they have begun. */
  ending: readonly Demand[];
  /** Demands to the end of the exercise. */
  toTheEnd: readonly string[];
  /** Elements that are done again later: how the hands were when they were first done is kept. */
  doneAgain: ReadonlySet<string>;
}

/** Stages of one element that are one time of what is done again; indices among the stages of the element. */
export interface Round {
  round: number;
  from: number;
  to: number;
}

/** As the rules take rounds: what is not written out parts them. */
export function roundsIn(stages: readonly StagePlan[]): Round[] {
  const rounds: Round[] = [];
  for (const [at, { plan }] of stages.entries()) {
    const last = rounds.at(-1);
    if (plan.is !== "again" || plan.round === 0) continue;
    if (last?.round === plan.round && last.to === at - 1) last.to = at;
    else rounds.push({ round: plan.round, from: at, to: at });
  }
  return rounds;
}

/** Where a verdict of these rules belongs. */
export interface PlacedVerdict extends Verdict {
  /** Elements at which it can be set aside: the one that is ridden, and the one whose actions are done. */
  at: readonly string[];
}

/** What is remembered after the stages of an element, and what the rules say of it. `ridden[i]` is stage i as ridden. */
export function lookBack(
  watched: Watched,
  stages: readonly StagePlan[],
  ridden: readonly RiddenOn[],
  held: Remembered,
): { held: Pick<Remembered, "firstHands" | "demands">; verdicts: PlacedVerdict[] } {
  const verdicts: PlacedVerdict[] = [];
  const say = (rule: string, at: readonly string[], verdict: "kept" | "broken" | "cannot tell"): void => {
    if (verdict !== "kept" && watched.bars.has(rule)) verdicts.push({ rule, at, verdict });
  };
  const toTheEnd = new Set(watched.toTheEnd);
  const firstHands = new Map(held.firstHands);
  const demands = new Map(held.demands);
  const rounds = roundsIn(stages);
  for (const [at, { plan }] of stages.entries()) {
    const one = ridden[at] as RiddenOn;
    const here = [plan.element, plan.source];
    const untold = plan.is === "untreated" || one.refused;
    if (at === 0)
      for (const { id } of watched.beginning)
        if (!demands.has(id))
          demands.set(id, { hands: handsOnIt(one.before), place: one.from, untold: false, last: [] });
    for (const [id, began] of demands)
      demands.set(id, { ...began, untold: began.untold || untold, last: toTheEnd.has(id) ? here : [] });
    const round = rounds.find(({ from }) => from === at);
    const first = firstHands.get(plan.source);
    if (round !== undefined && first !== undefined) say("again-fits", here, fits(first, one.before, plan.mirrored));
    if (watched.doneAgain.has(plan.source) && first === undefined)
      firstHands.set(plan.source, { on: handsOnIt(one.before), mirrored: plan.mirrored });
    const over = rounds.find(({ to }) => to === at);
    if (over !== undefined && rounds.some((other) => other.round === over.round + 1))
      say("back-where-begun", here, returned(startOf(over, stages, ridden), one.to));
    for (const demand of watched.ending) {
      const began = demands.get(demand.id);
      if (began === undefined || at !== (demand.to === null ? stages.length - 1 : 0)) continue;
      say(demand.rule, here, met(demand.rule, began, one.to, one.after.state));
      demands.delete(demand.id);
    }
  }
  // Where the last element is not ridden under these readings, the demand ended with the one before it.
  if (stages.length === 0)
    for (const { id, to, rule } of watched.ending) {
      const began = demands.get(id);
      if (began !== undefined && to === null) say(rule, began.last, met(rule, began, held.pose, held.state));
    }
  return { held: { firstHands, demands }, verdicts };
}

function fits(first: HandsThen, now: ControlState, mirrored: boolean) {
  return sameHandsVerdict(first.on, handsOnIt(now), mirrored !== first.mirrored);
}

function startOf(
  { from, to }: Round,
  stages: readonly StagePlan[],
  ridden: readonly RiddenOn[],
): Pick<Began, "place" | "untold"> {
  const some = ridden.slice(from, to + 1);
  const untold = some.some(({ refused }, index) => refused || stages[from + index]?.plan.is === "untreated");
  return { place: some[0]?.from ?? { x: 0, y: 0 }, untold };
}

function returned({ place, untold }: Pick<Began, "place" | "untold">, end: Point) {
  if (untold) return "cannot tell";
  return distance(place, end) <= SAME_PLACE ? "kept" : "broken";
}

function met(rule: Demand["rule"], began: Began, end: Point, state: ControlState) {
  if (rule === "back-where-begun") return returned(began, end);
  return sameHandsVerdict(began.hands, handsOnIt(state), false);
}
