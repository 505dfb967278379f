/** client/ride/controls.tsx - play and pause, a step back or on, the scrub with the steps marked on it, speed, loop,
 *  follow; and the line that says what is being ridden. */
import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { clockNow, facts, gaitWords, spansNow, stage, stageIndex, stageName } from "./moment.ts";
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
import { numberShare, stepMarks } from "./step-marks.ts";
import { useWidth } from "./use-width.ts";

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
  if ((key === "," || key === ".") && (ownKeys === null || isButton))
    return () => goTo(seconds.value + (key === "." ? 1 : -1));
  return null;
}

function Scrub({ ride }: { ride: Ridden }) {
  const input = useRef<HTMLInputElement>(null);
  const line = useRef<HTMLDivElement>(null);
  const width = useWidth(line);
  const whole = lasts.value;
  useSignalEffect(() => {
    // The thumb is moved ten times a second at most: it is painted with its field.
    const at = (Math.round(seconds.value * 10) / 10).toFixed(1);
    if (input.current && input.current.value !== at) input.current.value = at;
  });
  return (
    <div class="scrub" ref={line}>
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
        {stepMarks(ride, numberShare(width), stageIndex.value, 0, whole).map(
          ({ stage: index, at, number, told, isNow }) => (
            <span key={index} class={isNow ? "now" : told ? "" : "tick"} style={{ left: `${at * 100}%` }}>
              {told && number}
            </span>
          ),
        )}
      </div>
    </div>
  );
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
      <p class="now-words">{nowWords(horse?.shows === "something" ? horse.words : "", gaitWords.value)}</p>
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
