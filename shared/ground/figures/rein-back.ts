/** shared/ground/figures/rein-back.ts - rein back and halt: what a horse does without going on.
 *  May import: siblings in shared/ground. Keeps rules G31-G36, G51 (shared/ground/RULES.md). */
import { halt, straight } from "../piece.ts";
import { beside, type Pose } from "../plane.ts";
import {
  checkSize,
  checkStart,
  type FigureNote,
  type FigureResult,
  finish,
  firstRefusal,
  inWords,
  type Manege,
  refuse,
  valueOr,
} from "./figure.ts";

/** Metres straight back, the horse's head where it was. */
export type ReinBackAsk = { readonly figure: "rein back"; readonly length?: number | null };
/** Seconds of standing. */
export type HaltAsk = { readonly figure: "halt"; readonly seconds?: number | null };

export function rideReinBack(manege: Manege, start: Pose, ask: ReinBackAsk): FigureResult {
  const asked = ask.length ?? null;
  const wrong = firstRefusal(checkStart(manege, start), asked === null ? null : checkSize("the rein back", asked, 3));
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const length = valueOr(asked, manege.usual.reinBack, "length", "how far the horse reins back", " m", notes);
  return finish(
    manege,
    `the rein back of ${inWords(length)} m`,
    [straight(start, beside(start, -length), true)],
    notes,
  );
}

export function rideHalt(manege: Manege, start: Pose, ask: HaltAsk): FigureResult {
  const wrong = checkStart(manege, start);
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const seconds = valueOr(ask.seconds, manege.usual.haltSeconds, "seconds", "how long the halt lasts", " s", notes);
  if (!(seconds > 0 && Number.isFinite(seconds)))
    return refuse(
      "not-a-count",
      `Some seconds above 0 were expected for the halt, but they are ${Number.isNaN(seconds) ? "not a number (NaN)" : seconds}. Say how long, or leave it out.`,
    );
  return finish(manege, "the halt", [halt(start, seconds)], notes);
}
