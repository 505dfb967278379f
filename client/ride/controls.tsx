/** client/ride/controls.tsx - play and pause, a step back or on, the scrub with the steps marked on it, speed, loop,
 *  follow; and the line that says what is being ridden. */
import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { clockNow, facts, gaitWords, spansNow, stage, stageName } from "./moment.ts";
import {
  following,
  goTo,
  lessMotion,
  loop,
  looping,
  playing,
  playOrPause,
  SPEEDS,
  seconds,
  speed,
  step,
} from "./playing.ts";
import { lasts } from "./riding.ts";
import { savePlan } from "./save-plan.ts";

/** Things that have keys of their own: while one of them has the focus, the keys of the room are theirs. */
const TYPED_INTO = "input, select, textarea, button, a, summary, [contenteditable], dialog";

export function Controls({ ride }: { ride: Ridden }) {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || document.querySelector("dialog[open]")) return;
      const target = event.target instanceof Element ? event.target : null;
      const ownKeys = target?.closest(TYPED_INTO) ?? null;
      const does = ridingKey(event.key, ownKeys);
      if (does === null) return;
      event.preventDefault();
      does();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);
  return (
    <div class="controls">
      <div class="transport">
        <div class="play row">
          <button type="button" onClick={() => step(-1)} aria-label="Back a step" aria-keyshortcuts="ArrowLeft">
            ‹ back
          </button>
          <button type="button" class="chief go" onClick={playOrPause} aria-keyshortcuts="Space">
            {playing.value ? "pause" : "play"}
          </button>
          <button
            type="button"
            onClick={() => step(1)}
            disabled={stage.value === ride.stages.at(-1)}
            aria-label="On a step"
            aria-keyshortcuts="ArrowRight"
          >
            on ›
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => savePlan(ride)}
            title="Saves the plan at this moment as an SVG file"
          >
            save this moment as SVG
          </button>
          <span class="time">
            <b>{clockNow.value}</b> of {clockTime(lasts.value)}
          </span>
        </div>
        <Scrub ride={ride} />
      </div>
      <div class="row ways-of-seeing">
        <fieldset class="speeds">
          <legend class="label">Speed</legend>
          {SPEEDS.map((option) => (
            <label key={option}>
              <input
                type="radio"
                name="speed"
                checked={speed.value === option}
                onChange={() => (speed.value = option)}
              />{" "}
              {option === 0.5 ? "half" : option === 1 ? "full" : "double"}
            </label>
          ))}
        </fieldset>
        <label>
          <input type="checkbox" checked={looping.value} onChange={(event) => loop(event.currentTarget.checked)} /> loop
          this step
        </label>
        <label>
          <input
            type="checkbox"
            checked={following.value}
            onChange={(event) => (following.value = event.currentTarget.checked)}
          />{" "}
          follow the horse
        </label>
      </div>
      {lessMotion.value && (
        <p class="meta">Less motion is asked for on this machine: playing goes from moment to moment.</p>
      )}
    </div>
  );
}

/** What a key does in this room; null where it is left alone. Space presses buttons; arrows belong to fields. */
function ridingKey(key: string, ownKeys: Element | null): (() => void) | null {
  const isButton = ownKeys?.matches("button, a, summary") === true;
  if (key === " " && ownKeys === null) return playOrPause;
  if (key === "ArrowLeft" && (ownKeys === null || isButton)) return () => step(-1);
  if (key === "ArrowRight" && (ownKeys === null || isButton)) return () => step(1);
  return null;
}

function Scrub({ ride }: { ride: Ridden }) {
  const input = useRef<HTMLInputElement>(null);
  const whole = lasts.value;
  useSignalEffect(() => {
    // The thumb is moved ten times a second at most: it is painted with its field.
    const at = (Math.round(seconds.value * 10) / 10).toFixed(1);
    if (input.current && input.current.value !== at) input.current.value = at;
  });
  return (
    <div class="scrub">
      <input
        ref={input}
        type="range"
        min="0"
        max={whole.toFixed(1)}
        step="0.1"
        aria-label="Moment of the ride"
        aria-valuetext={`${clockNow.value}, ${stage.value ? stageName(stage.value) : ""}`}
        onInput={(event) => goTo(Number(event.currentTarget.value))}
      />
      <div class="marks" aria-hidden="true">
        {stageMarks(ride, 0.035, 0, whole).map(({ key, at, label }) => (
          <span key={key} style={{ left: `${at * 100}%` }}>
            {label}
          </span>
        ))}
      </div>
    </div>
  );
}

/** Numbers where steps begin, as a share of the ride; what is done again has its number once. A number that would lie on
 *  the one before joins it, and one that is not `apart` (a share of the ride) from it is left out. */
export function stageMarks(
  ride: Ridden,
  apart: number,
  from = 0,
  to = ride.timed.duration,
): { key: number; at: number; label: string }[] {
  const marks: { key: number; at: number; label: string }[] = [];
  let before: number | null = null;
  for (const [key, { from: begins, number }] of ride.stages.entries()) {
    const at = to > from ? (begins - from) / (to - from) : 0;
    if (number === null || number === before || at < 0 || at >= 1) continue;
    before = number;
    const last = marks.at(-1);
    if (last && at - last.at < 0.005) last.label += ` ${number}`;
    else if (!last || at - last.at > apart) marks.push({ key, at, label: String(number) });
  }
  return marks;
}

/** What is ridden now, and the figures worked out for it, each with its basis for whoever points at it. */
export function NowLine() {
  const horse = spansNow.value[0];
  const now = stage.value;
  return (
    <div class="now-line">
      <p class="now-step">
        {now === null ? "" : <b>{stageName(now)}</b>}
        {now?.mirrored && <span class="meta"> · mirrored</span>}
      </p>
      <p>{nowWords(horse?.shows === "something" ? horse.words : "", gaitWords.value)}</p>
      <ul class="facts meta">
        {facts.value.map((fact) => (
          <li key={fact.basis} title={`Worked out: ${fact.basis}`}>
            {fact.words}
          </li>
        ))}
      </ul>
      {now?.refused.map((refused) => (
        <p key={refused.sentence} class="notice">
          {refused.sentence}
        </p>
      ))}
    </div>
  );
}

/** What the horse does and how it goes; where it stands, that is said once. */
function nowWords(horse: string, gait: string): string {
  const stands = gait === "halt" && horse !== "";
  return [horse, stands ? "" : gait].filter((words) => words !== "").join(", ");
}

/** Says the step when it changes by stepping or scrubbing; while it plays it is silent. */
export function SpokenStep() {
  const now = stage.value;
  const horse = spansNow.value[0]?.words ?? "";
  const last = useRef("");
  if (!playing.value && now !== null) last.current = `${stageName(now)}. ${horse}`;
  return (
    <p class="spoken" aria-live="polite">
      {last.current}
    </p>
  );
}
