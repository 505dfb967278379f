/** shared/ride/horse-order.ts - in which order a stage's figures and gaits come.
 *  May import: schema types, shared/hands, siblings in shared/ride. Keeps rule R21 (shared/ride/RULES.md). */
import type { ValueOf } from "../../schema/values.ts";
import { exactly } from "../hands/known.ts";
import { slotOf } from "../hands/known-act.ts";
import type { Drafted } from "./course.ts";
import { type DraftPlace, fractionOf } from "./cut-draft.ts";
import type { RiddenAct } from "./ride-context.ts";

export interface HorseOrder {
  /** Figures and gaits one after another. */
  sequence: RiddenAct[];
  /** Gaits that change at a place of the way: a fraction of it, or where something happens. */
  cuts: GaitCut[];
}

export interface GaitCut {
  act: RiddenAct;
  /** Null where the way does not come there. */
  placeOn: (drafted: readonly Drafted[]) => DraftPlace | null;
}

/** Where an act is that is said to be done when something happens; null where that names no place. */
export type PlaceOfWhen = (event: string, act: RiddenAct) => GaitCut["placeOn"] | null;

export const isRide = ({ known }: RiddenAct): boolean => known.verb === "ride";
export const isGait = ({ known }: RiddenAct): boolean => known.verb === "go at";

export function timingOf({ timing }: RiddenAct): ValueOf<"timing"> | null {
  return timing === null ? null : exactly(timing);
}

/** By the order of the text; what is timed before, after or with another act goes there. A gait said only after the
 *  figures is theirs, unless it is the halt or another was said before them. */
export function horseOrder(acts: readonly RiddenAct[], placeOfWhen: PlaceOfWhen = () => null): HorseOrder {
  const cuts: HorseOrder["cuts"] = [];
  const [front, middle, back]: [RiddenAct[], RiddenAct[], RiddenAct[]] = [[], [], []];
  const tied: { act: RiddenAct; to: string; later: boolean }[] = [];
  for (const act of acts) {
    if (!isRide(act) && !isGait(act)) continue;
    const timing = timingOf(act);
    const placeOn = isGait(act) ? gaitChangesAt(act, timing, placeOfWhen) : null;
    if (placeOn !== null) cuts.push({ act, placeOn });
    else if (timing?.is === "before" || (isGait(act) && timing?.is === "throughout")) front.push(act);
    else if (timing?.is === "after") back.push(act);
    else if (timing?.is === "with" || timing?.is === "after action")
      tied.push({ act, to: timing.action, later: timing.is === "after action" });
    else middle.push(act);
  }
  const sequence = [...front, ...leadingGait(middle), ...back];
  for (const { act, to, later } of tied) {
    const at = sequence.findIndex(({ id }) => id === to);
    // What it hangs on is an act of the hands, or not here: it stands where the text has it, at the end.
    sequence.splice(at === -1 ? sequence.length : at + (later ? 1 : 0), 0, act);
  }
  return { sequence, cuts };
}

function gaitChangesAt(
  act: RiddenAct,
  timing: ValueOf<"timing"> | null,
  placeOfWhen: PlaceOfWhen,
): GaitCut["placeOn"] | null {
  if (timing?.is === "when") return placeOfWhen(timing.event, act);
  const fraction = timing?.is === "at" ? [timing.over, timing.of] : timing?.is === "during" ? timing.from : null;
  if (fraction === null) return null;
  const [over = 0, of = 1] = fraction;
  return (drafted) => fractionOf(drafted, Math.max(0, Math.min(over, of)), Math.max(1, of));
}

function leadingGait(acts: readonly RiddenAct[]): RiddenAct[] {
  const first = acts.findIndex(isRide);
  if (first === -1) return [...acts];
  const last = acts.findLastIndex(isRide);
  const saidBefore = acts.slice(0, first).some(({ drill }) => !drill.inherited);
  const moves = (act: RiddenAct, index: number): boolean => index > last && !saidBefore && !halts(act);
  return [
    ...acts.slice(0, first),
    ...acts.filter(moves),
    ...acts.slice(first).filter((act, index) => !moves(act, index + first)),
  ];
}

export function halts(act: RiddenAct): boolean {
  const gait = slotOf(act.known, "gait", "gait");
  return gait !== null && exactly(gait) === "halt";
}

const AT_ONCE: ReadonlySet<string> = new Set(["keep", "do nothing", "look", "sit"]);

/** Whether an act of the hands needs a moment of its own; what only tells how things stand, or means nothing here, does not. */
export function takesTime(act: RiddenAct): boolean {
  return !act.idle && !AT_ONCE.has(act.known.verb) && timingOf(act)?.is !== "throughout";
}
