/** shared/ride/ridden.ts - an exercise as it is ridden: the words the rooms of riding share.
 *  May import: schema types, types of shared/ground, hands and drill. Seconds from the start of the ride, metres on the
 *  ground frame (design 4). Everything here is plain data; the Ride room draws it and the rules read it. */
import type { Citation, DrillElement } from "../../schema/drill.ts";
import type { Way } from "../../schema/guard.ts";
import type { RidingGround } from "../ground/grounds.ts";
import type { TimedPath } from "../ground/timed-path.ts";
import type { ControlState, Hand } from "../hands/state.ts";

export type Standing = DrillElement["standing"];

export interface Ridden {
  exercise: string;
  title: string;
  way: Way;
  ground: RidingGround;
  groundName: string;
  /** Why this ground: drawn for the exercise, or supplied for want of one. */
  groundSupplied: boolean;
  /** What is ridden, in order; agains unrolled. */
  stages: RiddenStage[];
  /** The whole ride. Its pieces are those the stages index into. */
  timed: TimedPath;
  metres: number;
  strides: number | null;
  lanes: Lane[];
  /** Opponents, by the stage that assumes them. */
  threats: RiddenThreat[];
  findings: Finding[];
  /** What part of the exercise this is, in words; "" when all of it. */
  treated: string;
  /** Figures, gaits and sizes that were supplied, each once, in words. */
  supplied: string[];
}

export interface RiddenStage {
  /** The element whose number is shown: for what is done again, the again. */
  element: string;
  /** The element whose actions are done; the same as `element` unless it is done again. */
  source: string;
  /** 0 for the first time; counts from 1 within an again. */
  round: number;
  mirrored: boolean;
  number: number | null;
  title: string;
  is: "step" | "again" | "untreated";
  from: number;
  to: number;
  /** Pieces of the path, half-open; a join comes first and is told apart. */
  pieces: { from: number; to: number };
  /** Pieces at the beginning of these that join it to the end of the one before, supplied. */
  joined: number;
  /** Why it could not be ridden as it says; it then takes no pieces. */
  refusal: string | null;
  before: ControlState;
  instants: Instant[];
  after: ControlState;
}

/** Actions that happen together, gains before losses, and the state after them. */
export interface Instant {
  seconds: number;
  /** Piece of the path it lies in; null where the horse does not move in the stage. */
  piece: number | null;
  /** False: the text does not say when; it lies somewhere in its stage, in this order. */
  timed: boolean;
  actions: string[];
  after: ControlState;
}

export interface Lane {
  /** "horse", a hand, an object's id, or "threat". */
  key: "horse" | "left hand" | "right hand" | "threat" | (string & {});
  name: string;
  spans: LaneSpan[];
}

export interface LaneSpan {
  from: number;
  to: number;
  words: string;
  standing: Standing;
  /** What the line shows: something, nothing (known to be so), or that the text does not say. */
  shows: "something" | "nothing" | "not said";
  stage: number;
  /** The actions behind it, for their words. */
  actions: string[];
}

export interface RiddenThreat {
  threat: string;
  name: string;
  stage: number;
  from: number;
  to: number;
  mount: "on foot" | "mounted" | null;
  /** Clock hour from the rider, where said. */
  hour: number | null;
  weaponSide: Hand | null;
}

export type Severity = "bars" | "warns" | "notes";
export type RuleReach = "instant" | "piece" | "place" | "remembered" | "kit" | "whole";

export interface Finding {
  /** The same for the same breach, however often it is computed: rule, stage and what it is about. */
  id: string;
  rule: string;
  severity: Severity;
  verdict: "broken" | "cannot tell";
  reach: RuleReach;
  stage: number;
  element: string;
  action: string | null;
  from: number;
  to: number;
  /** A colleague's sentences: what is in the way, what the words say, what would lift it. */
  sentence: string;
  citations: Citation[];
  /** Set aside here by a person, with the reason. */
  waived: string | null;
  /** The reading it comes from, and readings of the same crux under which it does not arise. */
  reading: {
    crux: string;
    cruxTitle: string;
    reading: string;
    readingTitle: string;
    lifting: { reading: string; title: string }[];
  } | null;
}
