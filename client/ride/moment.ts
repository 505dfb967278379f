/** client/ride/moment.ts - what is happening at the moment that is shown. Each of these changes only when something
 *  changes in the ride, not with every frame, so components may read them as they render. */
import { computed } from "@preact/signals";
import type { Citation } from "../../schema/drill.ts";
import { leanDegrees, secondsPerLap } from "../../shared/ground/lean.ts";
import type { Pose } from "../../shared/ground/plane.ts";
import { momentOf, poseAtTime } from "../../shared/ground/timed-path.ts";
import { type HandsFigure, handsFigure } from "../../shared/hands/figure.ts";
import { exactly } from "../../shared/hands/known.ts";
import type { ControlState } from "../../shared/hands/state.ts";
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { LaneSpan, Ridden, RiddenStage } from "../../shared/ride/ridden.ts";
import { chosenFinding } from "./gone-to.ts";
import { currentStage, seconds } from "./playing.ts";
import { beside, citationsOf, ridden } from "./riding.ts";
import { stageAtTime } from "./stage-at-time.ts";

export const stageIndex = computed(currentStage);
export const stage = computed<RiddenStage | null>(() => ridden.value?.stages[stageIndex.value] ?? null);

/** The state at a moment of a stage: after the last instant that has come, else as the stage found it. */
export function stateIn(now: RiddenStage, at: number): ControlState {
  return now.instants.findLast((instant) => instant.seconds <= at)?.after ?? now.before;
}

const state = computed(() => stage.value && stateIn(stage.value, seconds.value));
export const figure = computed<HandsFigure | null>(() => state.value && handsFigure(state.value));
export const onFoot = computed(() => ridden.value?.way === "on foot");

const besideState = computed(() => {
  const now = beside.value?.stages[stageAtTime(beside.value.stages, seconds.value)];
  return now ? stateIn(now, seconds.value) : null;
});
/** The same for the reading that is ridden beside. */
export const besideFigure = computed(() => besideState.value && handsFigure(besideState.value));

/** The piece of the path that is ridden; null in a stage that takes none. */
const piece = computed<number | null>(() => {
  const [ride, now] = [ridden.value, stage.value];
  if (ride === null || now === null || now.pieces.from === now.pieces.to) return null;
  const { index } = momentOf(ride.timed, seconds.value);
  return Math.min(Math.max(index, now.pieces.from), now.pieces.to - 1);
});

/** Figures of the moment that are worked out from the path, in words; each with what it rests on. */
export interface Fact {
  words: string;
  basis: string;
}
export const facts = computed<Fact[]>(() => {
  const [ride, at] = [ridden.value, piece.value];
  const line = at === null ? undefined : ride?.timed.path.pieces[at];
  const speed = at === null ? 0 : (ride?.pieces[at]?.speed ?? 0);
  if (line === undefined || line.length === 0 || speed === 0) return [];
  const pace: Fact = { words: `${speed.toFixed(1)} m/s`, basis: "the speed of the gait; its source is listed below" };
  if (line.is !== "arc") return [pace];
  const lean = {
    words: `lean ${leanDegrees(speed, line.radius).toFixed(0)}°`,
    basis: "tan of the lean = v² / (g × r)",
  };
  return [
    { words: `${metres(line.radius * 2)} m across`, basis: "the radius of the line that is ridden" },
    pace,
    ...(ride?.way === "mounted" ? [lean] : []),
    { words: `${secondsPerLap(speed, line.radius * 2).toFixed(1)} s a lap`, basis: "π × the diameter, at this speed" },
  ];
});

/** Gait and lead as far as they are known. */
export const gaitWords = computed(() => {
  const now = state.value;
  if (now === null || now.way === "on foot") return "";
  const [gait, pace, lead] = [exactly(now.gait), exactly(now.pace), exactly(now.lead)];
  const led = lead === null ? "" : `, ${lead} lead`;
  return gait === null ? "gait not known" : `${pace ? `${pace} ` : ""}${gait}${led}`;
});

type Spans = readonly (LaneSpan | null)[];

/** Spans of all lanes at the moment, by lane; the same list while they are the same. */
export const spansNow = spansOf(ridden);
/** The same for the reading that is ridden beside. */
export const besideSpansNow = spansOf(beside);

function spansOf(ride: { readonly value: Ridden | null }) {
  let last: Spans = [];
  return computed<Spans>(() => {
    const now = spansAt(ride.value);
    const same = now.length === last.length && now.every((span, index) => span === last[index]);
    if (!same) last = now;
    return last;
  });
}

function spansAt(ride: Ridden | null): Spans {
  const at = seconds.value;
  return (ride?.lanes ?? []).map(
    ({ spans }) =>
      spans.find((span) => span.from <= at && at < span.to) ?? spans.findLast((span) => span.from <= at) ?? null,
  );
}

/** Actions that are being done: those of the last instant of the stage, and what the horse does on this piece. */
const acting = computed(() => {
  const [now, at] = [stage.value, seconds.value];
  if (now === null) return "";
  const last = now.instants.findLast((instant) => instant.seconds <= at);
  const ridingIt = piece.value === null ? null : (ridden.value?.pieces[piece.value]?.action ?? null);
  return [...new Set([...(last?.actions ?? []), ...(ridingIt === null ? [] : [ridingIt])])].join(" ");
});

/** Where the finding that was gone to begins on the ground. */
export const foundPose = computed<Pose | null>(() =>
  chosenFinding.value && ridden.value ? poseAtTime(ridden.value.timed, chosenFinding.value.from) : null,
);

export interface Lit {
  /** Words of the whole step. */
  step: Citation[];
  /** Words of what is done just now, or of the finding that was gone to. */
  now: Citation[];
  finding: boolean;
}
export const lit = computed<Lit>(() => {
  const [now, finding, known] = [stage.value, chosenFinding.value, citationsOf.value];
  const own = now === null ? [] : (known.element(now.source) ?? []);
  const step = own.length > 0 || now === null ? own : (known.element(now.element) ?? []);
  if (finding !== null) return { step, now: finding.citations, finding: true };
  return { step, now: acting.value.split(" ").flatMap((id) => known.action(id) ?? []), finding: false };
});

export const clockNow = computed(() => clockTime(seconds.value));

/** At most two places, none that say nothing: 12.8, 20. */
export function metres(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 2 : 1)));
}

/** "Step 3, The turn", or what else the stage is. */
export function stageName(of: RiddenStage): string {
  const title = of.title || (of.is === "untreated" ? "not yet written out" : "");
  if (of.number === null) return title || "between steps";
  const again = of.round > 1 ? `, time ${of.round}` : "";
  return `Step ${of.number}${again}${title ? `, ${title}` : ""}`;
}
