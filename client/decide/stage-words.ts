/** client/decide/stage-words.ts - stages and rules of the count as they are called. */
import { computed } from "@preact/signals";
import { ruleTable } from "../../shared/ride/rules/index.ts";
import { all, one } from "../state/rows.ts";
import { laid, openExercises } from "./answers.ts";

const stages = computed(() => new Map((laid.value?.stages ?? []).map((stage) => [stage.id, stage])));
const rules = computed(() => new Map(ruleTable(all("rules")).map((rule) => [rule.code, rule])));

/** "step 3, The turn"; with several exercises open, of which. */
export function stageWords(id: string): string {
  const stage = stages.value.get(id);
  if (stage === undefined) return "a step no longer there";
  const named = stage.number === null ? stage.title || "a part without a number" : `step ${stage.number}`;
  const title = stage.number !== null && stage.title ? `, ${stage.title}` : "";
  const of = openExercises.value.length > 1 ? ` of “${one("exercises", stage.exercise)?.title ?? ""}”` : "";
  return `${named}${title}${of}`;
}

/** The rule as it is written, with its stop. */
export function ruleSentence(code: string): string {
  const sentence = rules.value.get(code)?.sentence ?? code;
  return /[.!?]$/.test(sentence) ? sentence : `${sentence}.`;
}

/** The weaker a rule's basis, the sooner one looks at the picture without it. */
const BY_STRENGTH = ["the user", "common practice", "published source", "the text"] as const;

export function weakestFirst<T extends { rule: string }>(members: readonly T[]): T[] {
  const strength = ({ rule }: T) => {
    const basis = rules.value.get(rule)?.basis;
    return basis === undefined ? 0 : BY_STRENGTH.indexOf(basis);
  };
  return [...members].sort((a, b) => strength(a) - strength(b));
}

export const basisOf = (code: string): string => rules.value.get(code)?.basis ?? "";
export const elementOf = (stage: string) => stages.value.get(stage) ?? null;
