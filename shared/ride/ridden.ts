/** shared/ride/ridden.ts - an exercise as it is ridden: the words the rooms of riding share.
 *  May import: schema types, types of shared/ground, hands and drill. Seconds from the start of the ride, metres on the
 *  ground frame (design 4). Everything here is plain data; the Ride room draws it and the rules read it. */
import type { Citation, DrillElement } from "../../schema/drill.ts";
import type { Way } from "../../schema/guard.ts";
import type { ValueOf } from "../../schema/values.ts";
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
  /** What each piece of the path is, one entry a piece. */
  pieces: RiddenPiece[];
  metres: number;
  /** Not rounded; null where the stride of some gait that is ridden is not published. */
  strides: number | null;
  lanes: Lane[];
  /** Opponents, by the stage that assumes them. */
  threats: RiddenThreat[];
  findings: Finding[];
  /** What part of the exercise this is, in words; "" when all of it. */
  treated: string;
  /** Figures, gaits and sizes that were supplied, each once, in words. */
  supplied: string[];
  /** Names and words of the text that speak of sides or hours: they stay as they are in the mirrored world. */
  quoted: string[];
}

/** A piece of the path with what it belongs to. */
export interface RiddenPiece {
  stage: number;
  /** The `ride` action it belongs to; null for what is supplied (a line that joins, a way that goes on, standing). */
  action: string | null;
  figure: ValueOf<"figure"> | null;
  /** A supplied line that joins: drawn dotted. */
  joins: boolean;
  /** "walk" on foot; "halt" where it stands. */
  gait: ValueOf<"gait">;
  pace: ValueOf<"pace"> | null;
  /** The text names no gait for it. */
  gaitSupplied: boolean;
  /** Metres a second; 0 while standing. */
  speed: number;
  strideLength: number | null;
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
  /** Why a figure could not be ridden as it says: the first such sentence. That figure takes no pieces. */
  refusal: string | null;
  /** The `ride` actions that were refused, with their sentences. */
  refused: { action: string | null; sentence: string }[];
  /** What was supplied for this stage, in words; all of it is also in `Ridden.supplied`. */
  notes: string[];
  /** Stations that have no partner declared where it is ridden on the other rein; it is ridden to the station itself. */
  withoutPartner: string[];
  before: ControlState;
  instants: Instant[];
  after: ControlState;
}

/** Actions that happen together, gains before losses, and the state after them. */
export interface Instant {
  seconds: number;
  /** Piece of the whole path it lies in; null while the horse stands. */
  piece: number | null;
  /** False: the text does not say when; it lies somewhere in its stage, in this order. */
  timed: boolean;
  /** Ids of the actions in the order they are done; of a movement that is performed, its own actions. */
  actions: string[];
  after: ControlState;
}

export interface Lane {
  /** "horse" (figures), "gait", "lead", a hand, an object's id, or "threat"; in the order they are shown. */
  key: "horse" | "gait" | "lead" | "left hand" | "right hand" | "threat" | (string & {});
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
  /** No span reaches over the end of its stage. */
  stage: number;
  /** The actions behind it, for their words; they may lie in an earlier stage. */
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
