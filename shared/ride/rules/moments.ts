/** shared/ride/rules/moments.ts - the states that surely stand for a while, and those that may stand on a piece.
 *  May import: shared/ground, shared/hands, shared/ride/ridden.ts. Keeps rules V6-V8 (shared/ride/rules/RULES.md).
 *  What is not timed lies anywhere in its stage: two such actions may be one movement of the hands, so the state between
 *  them need never have stood. Seconds from the start of the ride. */
import type { Arc, Piece, Turn } from "../../ground/piece.ts";
import type { ControlState, Hand } from "../../hands/state.ts";
import type { Ridden, RiddenPiece, RiddenStage } from "../ridden.ts";

/** A state after the actions of one instant. */
export interface Moment {
  stage: number;
  from: number;
  to: number;
  timed: boolean;
  actions: readonly string[];
  before: ControlState;
  state: ControlState;
  /** It surely stands for a while: it ends its stage, or the next actions come at a later moment that is known. */
  stands: boolean;
}

/** Seconds: two instants nearer than this are one. */
const AT_ONCE = 1e-6;

export function momentsIn(stage: RiddenStage, index: number): Moment[] {
  const { instants } = stage;
  return instants.map((instant, at) => {
    const next = instants[at + 1];
    const parted = instant.timed && next?.timed === true && next.seconds > instant.seconds + AT_ONCE;
    return {
      stage: index,
      from: instant.seconds,
      to: next === undefined ? stage.to : next.seconds,
      timed: instant.timed,
      actions: instant.actions,
      before: at === 0 ? stage.before : (instants[at - 1]?.after ?? stage.before),
      state: instant.after,
      stands: next === undefined || parted,
    };
  });
}

/** A part of one piece of the path, with every state that may stand there. */
export interface Window {
  stage: number;
  piece: Piece;
  /** What the piece is: its figure, gait and speed, and the action it belongs to. */
  ridden: RiddenPiece;
  from: number;
  to: number;
  /** The same as parts of the piece, 0 to 1. */
  parts: readonly [from: number, to: number];
  states: readonly ControlState[];
  /** Whether the states follow from what is timed, so that it is known when they stand. */
  timed: boolean;
}

/** The windows of a stage, without the pieces supplied to join it: what we drew ourselves is no fault of the text. */
function windowsIn(ridden: Ridden, index: number): Window[] {
  const stage = ridden.stages[index];
  if (stage === undefined || stage.is === "untreated") return [];
  const windows: Window[] = [];
  for (let at = stage.pieces.from; at < stage.pieces.to; at += 1) {
    const piece = ridden.timed.path.pieces[at];
    const what = ridden.pieces[at];
    const [from, to] = [ridden.timed.times[at], ridden.timed.times[at + 1]];
    if (piece === undefined || what === undefined || what.joins || from === undefined || to === undefined) continue;
    const partAt = (seconds: number): number => (to > from ? (seconds - from) / (to - from) : 0);
    for (const [start, end] of cuts(stage, from, to)) {
      const parts = [partAt(start), partAt(end)] as const;
      windows.push({ stage: index, piece, ridden: what, from: start, to: end, parts, ...statesFrom(stage, start) });
    }
  }
  return windows;
}

/** The windows of each stage, worked out once, when they are first asked for. */
export type Windows = (stage: number) => readonly Window[];

export function windowsOf(ridden: Ridden): Windows {
  const made: (readonly Window[])[] = [];
  return (stage) => {
    const held = made[stage] ?? windowsIn(ridden, stage);
    made[stage] = held;
    return held;
  };
}

/** The stretches between what is timed within from and to. */
function cuts({ instants }: RiddenStage, from: number, to: number): [number, number][] {
  const inside = instants
    .filter(({ timed, seconds }) => timed && seconds > from + AT_ONCE && seconds < to - AT_ONCE)
    .map(({ seconds }) => seconds);
  const ends = [from, ...new Set(inside), to];
  return ends.slice(1).map((end, at) => [ends[at] ?? from, end]);
}

/** Every state that may stand from `start` until the next thing that is timed. */
function statesFrom({ before, instants }: RiddenStage, start: number): { states: ControlState[]; timed: boolean } {
  const first = instants.findLastIndex(({ timed, seconds }) => timed && seconds <= start + AT_ONCE);
  const rest = instants.slice(first + 1);
  const next = rest.findIndex(({ timed }) => timed);
  const open = next === -1 ? rest : rest.slice(0, next);
  const standing = first === -1 ? before : (instants[first]?.after ?? before);
  return { states: [standing, ...open.map(({ after }) => after)], timed: open.length === 0 };
}

/** Hundredths of a degree: a line that bends by less than this is straight to the eye. A choice of this design. */
export const LEAST_BEND = 1_500;

/** The side the horse turns to on a piece; null where it does not turn. */
export function turnSide(piece: Piece): Hand | null {
  if (!isBend(piece) || Math.abs(piece.sweep) < LEAST_BEND) return null;
  return piece.sweep > 0 ? "left" : "right";
}

export function isBend(piece: Piece): piece is Arc | Turn {
  return piece.is === "arc" || piece.is === "turn";
}
