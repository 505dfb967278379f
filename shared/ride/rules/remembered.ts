/** shared/ride/rules/remembered.ts - the same hand as before, back where one began, done again from where it was begun.
 *  May import: schema types, shared/ground, shared/hands, types of shared/ride, siblings. Keeps rules V40-V42
 *  (shared/ride/rules/RULES.md). A demand over a range of steps (an advice) names the rule that is to check it; what is done
 *  again is checked without being asked. Metres. */
import { inWords } from "../../ground/figures/figure.ts";
import { distance, type Pose } from "../../ground/plane.ts";
import { USUAL_BODY } from "../../ground/riders.ts";
import { poseAtTime } from "../../ground/timed-path.ts";
import { mainObject, otherHand } from "../../hands/derived.ts";
import { isKnown, mayBe } from "../../hands/known.ts";
import { type ControlState, HANDS, type Hand, type Zone } from "../../hands/state.ts";
import type { Ridden, RiddenStage } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { type Judgement, kept, type RideRule, type Verdict, worst } from "./rule.ts";

/** Within a horse's length one is where one was. */
export const SAME_PLACE = USUAL_BODY.ahead + USUAL_BODY.behind;

interface Range {
  from: number;
  to: number;
  element: string;
}

/** The stages that a demand with this rule reaches over, the first time they are ridden. */
function demanded(ridden: Ridden, { compiled, rows }: RideContext, code: string): Range[] {
  return compiled.drill.elements.flatMap(({ id, is }) => {
    const row = is === "advice" ? rows.find("elements", id) : undefined;
    if (row?.is !== "advice" || row.rule === null || rows.find("rules", row.rule)?.code !== code) return [];
    const at = (element: string | null, open: number): number =>
      element === null ? open : ridden.stages.findIndex((stage) => stage.element === element);
    const [from, to] = [at(row.from, 0), at(row.to, ridden.stages.length - 1)];
    return from === -1 || to < from ? [] : [{ from, to, element: id }];
  });
}

/** Whether each hand is on the main object; null where that is not known. */
export type HandsOnIt = Readonly<Record<Hand, boolean | null>>;

/** Null where there is no main object. */
export function handsOnIt(state: ControlState): HandsOnIt | null {
  const main = mainObject(state);
  if (main === null) return null;
  const on = (hand: Hand): boolean | null => {
    if (!mayBe<Zone | null>(main.grip[hand], null)) return true;
    return isKnown<Zone | null>(main.grip[hand], null) ? false : null;
  };
  return { left: on("left"), right: on("right") };
}

/** Whether the hands that were on it are on it now, each as the other where it is done mirrored. */
export function sameHandsVerdict(then: HandsOnIt | null, now: HandsOnIt | null, mirrored: boolean): Verdict {
  if (then === null || now === null) return "cannot tell";
  return worst(
    HANDS.map((hand): Verdict => {
      const [before, after] = [then[hand], now[mirrored ? otherHand(hand) : hand]];
      if (before === null || after === null) return "cannot tell";
      return before === after ? "kept" : "broken";
    }),
  );
}

function place(ridden: Ridden, stage: number) {
  const { from = 0, to = 0 } = ridden.stages[stage] ?? {};
  return { stage, from: to, to: Math.max(from, to), timed: true, lasts: false, action: null, quote: [], look: true };
}

function checkSameHand(ridden: Ridden, context: RideContext): Judgement[] {
  return demanded(ridden, context, "same-hand").map(({ from, to, element }): Judgement => {
    const [first, last] = [ridden.stages[from], ridden.stages[to]];
    if (first === undefined || last === undefined) return kept(from);
    const verdict = sameHandsVerdict(handsOnIt(first.before), handsOnIt(last.after), false);
    if (verdict === "kept") return kept(to);
    const name = mainObject(last.after)?.object.name ?? "weapon";
    return {
      ...place(ridden, to),
      verdict,
      about: element,
      is:
        verdict === "broken"
          ? `the ${name} is to be in the same hand as before, but it has changed hands since ${stageWords(first)}`
          : `the ${name} is to be in the same hand as before, and it is not known which hand that was`,
      lift: "Either a change of hands is missing, or the words mean another moment",
    };
  });
}

export const sameHand: RideRule = {
  code: "same-hand",
  words: "says",
  sentence: "Where the text wants the same hand as before, it is the same hand.",
  basis: "the text",
  source: "Checked for every demand over steps (an advice) that names this rule.",
  severity: "warns",
  reach: "remembered",
  check: checkSameHand,
};

/** Pairs of stages whose end and beginning should be one place. */
function returns(ridden: Ridden, context: RideContext): { range: Range; about: string }[] {
  const asked = demanded(ridden, context, "back-where-begun").map((range) => ({ range, about: range.element }));
  const rounds = roundsOf(ridden).filter(({ round, element }) =>
    ridden.stages.some((stage) => stage.element === element && stage.round === round + 1),
  );
  return [...asked, ...rounds.map(({ element, from, to }) => ({ range: { from, to, element }, about: "round" }))];
}

interface Round {
  element: string;
  round: number;
  from: number;
  to: number;
}

/** Each time something is done again, with its stages. */
function roundsOf({ stages }: Ridden): Round[] {
  const rounds: Round[] = [];
  for (const [at, { element, round, is }] of stages.entries()) {
    const last = rounds.at(-1);
    if (is !== "again" || round === 0) continue;
    if (last?.element === element && last.round === round && last.to === at - 1) last.to = at;
    else rounds.push({ element, round, from: at, to: at });
  }
  return rounds;
}

function poseBefore(ridden: Ridden, stage: RiddenStage): Pose {
  const from = ridden.timed.times[stage.pieces.from + stage.joined] ?? stage.from;
  return poseAtTime(ridden.timed, from);
}

function checkReturn(ridden: Ridden, context: RideContext): Judgement[] {
  return returns(ridden, context).map(({ range: { from, to }, about }): Judgement => {
    const [first, last] = [ridden.stages[from], ridden.stages[to]];
    if (first === undefined || last === undefined) return kept(from);
    const away = distance(poseBefore(ridden, first), poseAtTime(ridden.timed, last.to));
    const untold = ridden.stages
      .slice(from, to + 1)
      .some(({ is, refused }) => is === "untreated" || refused.length > 0);
    if (away <= SAME_PLACE && !untold) return kept(to);
    return {
      ...place(ridden, to),
      verdict: untold ? "cannot tell" : "broken",
      look: !untold,
      about,
      is:
        about === "round"
          ? `it is done again from here, but here is ${inWords(away)} m from where it began`
          : `it is to end where it began, but it ends ${inWords(away)} m from there`,
      lift: "Either a figure is larger or longer than it was taken for, or a way back is not written down",
    };
  });
}

export const backWhereBegun: RideRule = {
  code: "back-where-begun",
  words: "says",
  sentence: "What is to end where it began ends there, and so does what is done several times.",
  basis: "the text",
  source: "Within a horse’s length. Checked for every demand that names this rule, and between the rounds of an again.",
  severity: "warns",
  reach: "remembered",
  check: checkReturn,
};

function checkAgainFits(ridden: Ridden): Judgement[] {
  return roundsOf(ridden).flatMap(({ from, round, element }): Judgement[] => {
    const again = ridden.stages[from];
    const first = ridden.stages.findIndex((stage) => stage.source === again?.source);
    const original = ridden.stages[first];
    if (again === undefined || original === undefined || first >= from) return [];
    const mirrored = again.mirrored !== original.mirrored;
    const verdict = sameHandsVerdict(handsOnIt(original.before), handsOnIt(again.before), mirrored);
    if (verdict === "kept") return [kept(from)];
    const name = mainObject(again.before)?.object.name ?? "weapon";
    return [
      {
        ...place(ridden, from),
        ...{ from: again.from, to: again.from, verdict, look: false },
        about: `${element} ${round}`,
        is: `${stageWords(original)} is done again${again.mirrored ? ", mirrored" : ""}, but the ${name} does not begin in the hand it should${again.mirrored ? ": the other one" : ""}`,
        lift: "Either the hands change before it, or the change is part of what is done again",
      },
    ];
  });
}

function stageWords({ number, title }: RiddenStage): string {
  return number === null ? `“${title}”` : `step ${number}`;
}

export const againFits: RideRule = {
  code: "again-fits",
  words: "says",
  sentence: "What is done again begins with the hands as they were the first time, mirrored where it is mirrored.",
  basis: "the text",
  source: "The text against itself.",
  severity: "warns",
  reach: "remembered",
  check: checkAgainFits,
};
