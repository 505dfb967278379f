/** shared/ride/mirror-ridden.ts - a ride in the mirrored world: x to -x, with ground, hands, threats, findings and words.
 *  May import: shared/ground, types of siblings. Keeps rules R11-R12 (shared/ride/RULES.md). Twice is the same ride again, to the
 *  byte. What is quoted from the text stays as it is. */
import { mirrorGround } from "../ground/grounds.ts";
import { mirrorPath } from "../ground/path.ts";
import type { ControlState } from "../hands/state.ts";
import { mirrorHour, swapped } from "./mirror-act.ts";
import { mirrorState } from "./mirror-state.ts";
import { mirrorWords } from "./mirror-words.ts";
import type { Finding, Lane, Ridden, RiddenStage, RiddenThreat } from "./ridden.ts";

export function mirrorRidden(ridden: Ridden): Ridden {
  const words = once((sentence: string): string => mirrorWords(sentence, ridden.quoted));
  const state = once(mirrorState);
  return {
    ...ridden,
    ground: mirrorGround(ridden.ground),
    stages: ridden.stages.map((stage) => mirrorStage(stage, words, state)),
    timed: { ...ridden.timed, path: mirrorPath(ridden.timed.path) },
    lanes: mirrorLanes(ridden.lanes, words),
    threats: ridden.threats.map(mirrorThreat),
    findings: ridden.findings.map((finding) => mirrorFinding(finding, words)),
    supplied: ridden.supplied.map(words),
  };
}

type Words = (sentence: string) => string;

/** One state stands in many stages, and one sentence in many spans: each is mirrored once. */
function once<T>(mirror: (value: T) => T): (value: T) => T {
  const made = new Map<T, T>();
  return (value) => {
    const held = made.get(value) ?? mirror(value);
    made.set(value, held);
    return held;
  };
}

function mirrorStage(stage: RiddenStage, words: Words, state: (of: ControlState) => ControlState): RiddenStage {
  return {
    ...stage,
    mirrored: !stage.mirrored,
    refusal: stage.refusal === null ? null : words(stage.refusal),
    refused: stage.refused.map(({ action, sentence }) => ({ action, sentence: words(sentence) })),
    notes: stage.notes.map(words),
    before: state(stage.before),
    instants: stage.instants.map((instant) => ({ ...instant, after: state(instant.after) })),
    after: state(stage.after),
  };
}

/** What the left hand did is in the right hand's lane; the lanes stay in their order. */
function mirrorLanes(lanes: readonly Lane[], words: Words): Lane[] {
  const spansOf = (key: string): Lane["spans"] => lanes.find((lane) => lane.key === swapped(key))?.spans ?? [];
  return lanes.map((lane) => ({
    ...lane,
    spans: spansOf(lane.key).map((span) => ({ ...span, words: words(span.words) })),
  }));
}

function mirrorThreat(threat: RiddenThreat): RiddenThreat {
  return {
    ...threat,
    hour: threat.hour === null ? null : mirrorHour(threat.hour),
    weaponSide: threat.weaponSide === null ? null : swapped(threat.weaponSide),
  };
}

function mirrorFinding(finding: Finding, words: Words): Finding {
  return { ...finding, sentence: words(finding.sentence) };
}
