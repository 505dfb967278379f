/** client/ride/playing.ts - the moment that is shown, and what makes it go on: play, step, scrub, loop.
 *  `seconds` changes with every frame while playing. Components must not read it as they render; they read what is
 *  derived from it (moment.ts), or move one thing in an effect. */
import { batch, signal } from "@preact/signals";
import { moveOn } from "./gone-to.ts";
import { lasts, ridden } from "./riding.ts";
import { stageAtTime } from "./stage-at-time.ts";

export const seconds = signal(0);
export const playing = signal(false);
export const SPEEDS = [0.5, 1, 2] as const;
export const speed = signal<(typeof SPEEDS)[number]>(1);
/** Whether playing stays within the step it is in. */
export const looping = signal(false);
/** Whether the plan keeps the horse in its middle. */
export const following = signal(false);
/** A stage that was stepped to: it is shown even where it takes no time of its own. */
export const heldStage = signal<number | null>(null);

const reduced = window.matchMedia("(prefers-reduced-motion: reduce)");
/** Whether the reader asked for less motion: playing then goes from moment to moment instead of gliding. */
export const lessMotion = signal(reduced.matches);
reduced.addEventListener("change", (event) => {
  lessMotion.value = event.matches;
});

/** A longer pause between two frames (the window was hidden) does not jump the ride ahead. */
const LONGEST_FRAME = 0.1;
let loopOver: { from: number; to: number } | null = null;
/** Where the ride has come to, which with less motion runs ahead of the moment that is shown. */
let come = 0;
let last = 0;
let asked = 0;

/** Stops, and shows a moment; with `stage`, that stage even where others begin at the same time. */
export function goTo(moment: number, stage: number | null = null): void {
  pause();
  batch(() => {
    moveOn();
    seconds.value = Math.min(Math.max(0, moment), lasts.value);
    heldStage.value = stage;
  });
}

export function goToStage(index: number): void {
  const stage = ridden.value?.stages[index];
  if (stage) goTo(stage.from, index);
}

/** The stage before or after the one that is shown; back first goes to the beginning of this one. */
export function step(by: 1 | -1): void {
  const stages = ridden.value?.stages ?? [];
  const now = currentStage();
  const begun = stages[now];
  if (begun === undefined) return;
  const within = by < 0 && seconds.value > begun.from + 0.5;
  goToStage(Math.min(Math.max(0, within ? now : now + by), stages.length - 1));
}

export function currentStage(): number {
  const stages = ridden.value?.stages ?? [];
  const held = heldStage.value === null ? undefined : stages[heldStage.value];
  // Under another reading the stage that was stepped to may lie elsewhere, or not be there at all.
  const isThere = held !== undefined && held.from <= seconds.value && seconds.value <= held.to;
  return isThere ? (heldStage.value ?? 0) : stageAtTime(stages, seconds.value);
}

export function play(): void {
  const ride = ridden.value;
  if (ride === null || lasts.value === 0 || playing.value) return;
  const stage = ride.stages[currentStage()];
  loopOver = looping.value && stage !== undefined && stage.to > stage.from ? stage : null;
  batch(() => {
    if (seconds.value >= lasts.value - 1e-3) seconds.value = loopOver?.from ?? 0;
    moveOn();
    heldStage.value = null;
    playing.value = true;
  });
  come = seconds.value;
  last = performance.now();
  asked = requestAnimationFrame(frame);
}

export function pause(): void {
  cancelAnimationFrame(asked);
  playing.value = false;
}

export const playOrPause = () => (playing.value ? pause() : play());

/** Stays in the step that is shown now, or no longer. */
export function loop(on: boolean): void {
  looping.value = on;
  const stage = ridden.value?.stages[currentStage()];
  loopOver = on && stage !== undefined && stage.to > stage.from ? stage : null;
}

function frame(now: number): void {
  const ride = ridden.value;
  if (ride === null) {
    pause();
    return;
  }
  const passed = Math.min(LONGEST_FRAME, Math.max(0, (now - last) / 1000)) * speed.value;
  last = now;
  come += passed;
  if (loopOver !== null && come >= loopOver.to) come = loopOver.from;
  if (come >= lasts.value) {
    seconds.value = lasts.value;
    pause();
    return;
  }
  seconds.value = lessMotion.value ? momentBefore(come) : come;
  asked = requestAnimationFrame(frame);
}

/** The last moment at which something changes: the beginning of a stage, or an instant. */
function momentBefore(time: number): number {
  let found = 0;
  for (const stage of ridden.value?.stages ?? []) {
    if (stage.from > time) break;
    found = Math.max(found, stage.from);
    for (const instant of stage.instants) if (instant.seconds <= time) found = Math.max(found, instant.seconds);
  }
  return found;
}
