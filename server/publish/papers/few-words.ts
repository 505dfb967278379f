/** server/publish/papers/few-words.ts - an act in as few words as it can be done by.
 *  May import: schema types and constants, shared/drill, server/publish. Nothing that is silent or not settled is left out. */
import { VERB_NAMES } from "../../../schema/act.ts";
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import { phraseAct } from "../../../shared/drill/act-words.ts";
import { plainWords } from "../act-pieces.ts";

/** The act said again by its own values, each as `shorten` gives it; null leaves a value out. */
export function saidAgain(action: DrillAction, shorten: (value: DrillValue) => string | null): DrillAction {
  const verb = VERB_NAMES.find((name) => name === action.verb);
  if (verb === undefined) return action;
  const values = action.values.flatMap((value) => {
    const text = shorten(value);
    return text === null ? [] : [{ ...value, text }];
  });
  const text = phraseAct(verb, (slot) => {
    const value = values.find((one) => one.slot === slot);
    if (value === undefined || SILENT.has(value.standing)) return null;
    // The column tells the hand.
    return slot === "hand" && value.text === `the ${action.part}` ? null : plainWords(value);
  });
  return { ...action, text, values };
}

const SILENT: ReadonlySet<string> = new Set(["not said", "not applicable"]);

/** For a sheet: sizes without their spread and without feet; what is done with or after another act of the step by that act's
 *  bare words. */
export function inFewWords(action: DrillAction, { actions }: Pick<DrillElement, "actions">): DrillAction {
  return saidAgain(action, (value) => {
    const other = value.slot === "timing" ? actions.find(({ id }) => id === otherAct(value)) : undefined;
    if (other !== undefined) return `${value.text.split(":")[0]} “${bare(other)}”`;
    return plainMeasures(value.text);
  });
}

/** "change the reins": the act with nothing but what it is done to. */
function bare(action: DrillAction): string {
  return saidAgain(action, (value) => (BARE.has(value.slot) ? value.text : null)).text;
}

const BARE: ReadonlySet<string> = new Set(["object", "figure", "turn", "gait", "movement", "hold", "on", "words"]);

/** The act that a timing names; null for one that names none. */
function otherAct({ value }: DrillValue): string | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return null;
  return typeof value.action === "string" ? value.action : null;
}

/** Lengths with their first number alone: "about 12.8 m". */
export function plainMeasures(text: string): string {
  return text.replace(SPREAD, "").replace(FEET, "");
}

/** "about 12.8 m, 1.6 m either way (42 ft)": what follows the first number. */
const SPREAD = /, [\d.]+ m either way/g;
const FEET = / \([\d.]+(?: to [\d.]+)? (?:ft|in)\)/g;
