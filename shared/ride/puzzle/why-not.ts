/** shared/ride/puzzle/why-not.ts - why nothing holds, or why a reading is dead, in words of the text.
 *  May import: shared/decide, siblings. */
import type { Citation } from "../../../schema/drill.ts";
import { countByBruteForce } from "../../decide/brute-force.ts";
import type { Pick } from "../../decide/puzzle.ts";
import { askedPuzzle, type DecideAsk } from "./answer.ts";
import type { WeighedExercise } from "./weighed.ts";

/** A member of a clash: a reading that is taken, one rule at one step, one value the words state. */
export type Member =
  | { is: "pick"; crux: string; reading: string }
  | { is: "rule"; stage: string; rule: string }
  | { is: "stated"; stage: string; value: string };

export interface ToldMember {
  member: Member;
  words: string;
  quote: Citation[];
  element: string | null;
  crux: string | null;
  reading: string | null;
  rule: string | null;
}

export interface WhyNot {
  /** Sets that cannot hold together, each as small as it can be. */
  clashes: ToldMember[][];
  /** Whether these are all there are. */
  complete: boolean;
  /** Whether the first is proven to be a shortest. */
  shortest: boolean;
  /** A set to drop so that something holds; null where none was found. */
  mustGive: ToldMember[] | null;
  smallest: boolean;
  sentence: string;
}

/** `target` null: why nothing holds; else why this reading is dead. */
export function whyNot(weighed: WeighedExercise, ask: DecideAsk, target: Pick | null): WhyNot {
  const picks = target === null ? ask.picks : [...ask.picks.filter(({ crux }) => crux !== target.crux), target];
  const asked = { ...ask, picks };
  const whole = askedPuzzle(weighed, asked);
  let members: Member[] = [
    ...picks.map(({ crux, reading }): Member => ({ is: "pick", crux, reading })),
    ...countByBruteForce(whole).broken.map(({ stage, rule }): Member => ({ is: "rule", stage, rule })),
  ];
  const holds = (kept: readonly Member[]): boolean => {
    const rules = members.filter((one) => one.is === "rule" && !kept.includes(one)) as {
      stage: string;
      rule: string;
    }[];
    const left = kept.flatMap((one) => (one.is === "pick" ? [{ crux: one.crux, reading: one.reading }] : []));
    const narrowed = askedPuzzle(weighed, { ...asked, picks: left, without: [...ask.without, ...rules] });
    return countByBruteForce(narrowed).holding > 0n;
  };
  if (holds(members)) return { ...NONE, sentence: "Something holds: there is nothing in the way." };
  for (const member of [...members]) {
    const kept = members.filter((one) => one !== member);
    if (!holds(kept)) members = kept;
  }
  const clash = members.map((member) => told(weighed, member));
  return {
    ...NONE,
    clashes: [clash],
    sentence: `These cannot hold together: ${clash.map(({ words }) => words).join("; ")}.`,
  };
}

const NONE: WhyNot = { clashes: [], complete: false, shortest: false, mustGive: null, smallest: false, sentence: "" };

function told(weighed: WeighedExercise, member: Member): ToldMember {
  const nothing = { member, quote: [], element: null, crux: null, reading: null, rule: null };
  switch (member.is) {
    case "pick": {
      const crux = weighed.cruxes.find(({ id }) => id === member.crux);
      const reading = crux?.readings.find(({ id }) => id === member.reading);
      return {
        ...nothing,
        words: `“${crux?.title ?? ""}” read as “${reading?.title ?? ""}”`,
        quote: [],
        crux: member.crux,
        reading: member.reading,
      };
    }
    case "rule": {
      const stage = weighed.stages.find(({ id }) => id === member.stage);
      return {
        ...nothing,
        words: `${member.rule} at ${stage?.title ?? ""}`,
        element: stage?.element ?? null,
        rule: member.rule,
      };
    }
    case "stated":
      return { ...nothing, words: member.value };
  }
}
