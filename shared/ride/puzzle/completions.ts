/** shared/ride/puzzle/completions.ts - a stage with what the text does not say said one way or another.
 *  May import: schema types, shared/drill, shared/hands, shared/ride, siblings. Keeps rule P7 (shared/ride/puzzle/RULES.md).
 *  Only what has a small domain written down: which hand takes, to which side it turns, on which lead. */
import type { Known } from "../../../schema/slot.ts";
import { neededSlots } from "../../drill/slot-labels.ts";
import { exactly, known } from "../../hands/known.ts";
import { knownWords } from "../plan.ts";
import type { RiddenAct } from "../ride-context.ts";
import { type StagePlan, type Surroundings, stagePlanOf } from "./stage-plan.ts";

export interface CompletedStage {
  stage: StagePlan;
  /** What is supplied, in words; null where nothing had to be. */
  supplied: string | null;
}

/** Ways to complete one stage, at most; what is silent beyond that stays open. */
export const MOST_WAYS = 8;

const SIDES = ["left", "right"] as const;

/** The stage itself where the text leaves nothing of the kind open. */
export function completionsOf(stage: StagePlan, around: Surroundings): readonly CompletedStage[] {
  const open = stage.plan.acts.flatMap((act, index) => openSlots(act, around.bars).map((slot) => ({ index, slot })));
  let ways: CompletedStage[] = [{ stage, supplied: null }];
  for (const { index, slot } of open) {
    if (ways.length * SIDES.length > MOST_WAYS) break;
    ways = ways.flatMap((way) => SIDES.map((side) => completed(way, index, slot, side, around)));
  }
  return ways;
}

type OpenSlot = "hand" | "turn" | "lead";

function openSlots({ known: said, drill, idle }: RiddenAct, bars: ReadonlySet<string>): OpenSlot[] {
  if (idle) return [];
  const value = (slot: string): unknown => {
    const held = said.slots[slot];
    return held === undefined ? undefined : (exactly(held) ?? undefined);
  };
  const needed = neededSlots(said.verb, value).filter((slot) => said.slots[slot] === undefined);
  // Who keeps or lets go is told by who has it; who takes is told by nothing.
  const takes = said.verb === "take" || said.verb === "pick up";
  return [
    ...(takes && needed.includes("hand") ? (["hand"] as const) : []),
    ...(said.verb === "ride" && needed.includes("turn") ? (["turn"] as const) : []),
    ...(said.verb === "go at" && needed.includes("lead") && bars.has("lead-bend") && !drill.inherited
      ? (["lead"] as const)
      : []),
  ];
}

function completed(
  { stage, supplied }: CompletedStage,
  index: number,
  slot: OpenSlot,
  side: "left" | "right",
  around: Surroundings,
): CompletedStage {
  const { plan, ground } = stage;
  const act = plan.acts[index] as RiddenAct;
  const value: Known<unknown> = known(slot === "turn" ? { to: side, viewpoint: "rider" } : side);
  const filled = { ...act, known: { ...act.known, slots: { ...act.known.slots, [slot]: value } } };
  const words = `${knownWords(act.known, plan.compiling.names)}: ${WORDS[slot](side)}`;
  return {
    stage: stagePlanOf({ ...plan, acts: plan.acts.map((one, at) => (at === index ? filled : one)) }, ground, around),
    supplied: supplied === null ? words : `${supplied}; ${words}`,
  };
}

const WORDS: Record<OpenSlot, (side: string) => string> = {
  hand: (side) => `with the ${side} hand`,
  turn: (side) => `to the ${side}`,
  lead: (side) => `on the ${side} lead`,
};
