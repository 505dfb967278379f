/** shared/ride/rules/pull-up.ts - room to come from the halt to a gait, and from the gait to the halt.
 *  May import: shared/ground, types of shared/ride, siblings. Keeps rule V36 (shared/ride/rules/RULES.md). Metres, seconds.
 *  A ride is drawn with one speed a piece (G58), so that a gallop of three metres between two halts looks like any other:
 *  this says that it is none. */
import { inWords } from "../../ground/figures/figure.ts";
import type { Ridden, RiddenPiece, RiddenStage } from "../ridden.ts";
import { type Judgement, kept, type RideRule } from "./rule.ts";

/** Metres a second, each second: how fast a horse takes up a speed, or gives it up. A guess, on the side of the horse: it has a
 *  working canter stop within a stride, and the full gallop of 12.5 m/s within 20 m. */
export const SPEED_CHANGE = 4;

/** Metres in which a speed is taken up from the halt, or given up to it. */
export function roomFor(speed: number): number {
  return (speed * speed) / (2 * SPEED_CHANGE);
}

/** Pieces of one stage, one after another, that are ridden at one speed. */
interface Run {
  first: number;
  last: number;
  metres: number;
  piece: RiddenPiece;
  /** It begins, or ends, at a halt. Over the end of its stage nothing is looked at. */
  starts: boolean;
  stops: boolean;
}

function runsIn({ pieces, timed }: Ridden, { pieces: own }: RiddenStage): Run[] {
  const runs: Run[] = [];
  const stands = (index: number): boolean => pieces[index]?.gait === "halt";
  for (let index = own.from; index < own.to; index += 1) {
    const [piece, metres] = [pieces[index], timed.path.pieces[index]?.length ?? 0];
    if (piece === undefined || stands(index) || metres === 0) continue;
    const before = runs.at(-1);
    const stops = index + 1 < own.to && stands(index + 1);
    if (before !== undefined && before.last === index - 1 && before.piece.speed === piece.speed)
      Object.assign(before, { last: index, metres: before.metres + metres, stops });
    else runs.push({ first: index, last: index, metres, piece, starts: stands(index - 1), stops });
  }
  return runs;
}

function check(ridden: Ridden): Judgement[] {
  if (ridden.way === "on foot") return [];
  return ridden.stages.flatMap((stage, index): Judgement[] =>
    runsIn(ridden, stage).map(({ first, last, metres, piece, starts, stops }): Judgement => {
      const room = roomFor(piece.speed);
      const asks = (starts ? room : 0) + (stops ? room : 0);
      const ours = piece.gaitSupplied || ridden.pieces.slice(first, last + 1).every(({ joins }) => joins);
      if (ours || metres >= asks) return kept(index);
      const pace = piece.pace === null ? "" : `${piece.pace === "full speed" ? "full-speed" : piece.pace} `;
      const gait = `the ${pace}${piece.gait}, ${inWords(piece.speed)} m/s,`;
      const how = starts
        ? `from the halt to ${gait}${stops ? " and to the halt again," : ""}`
        : `from ${gait} to the halt`;
      return {
        verdict: "cannot tell",
        stage: index,
        about: "pull up",
        ...{ from: ridden.timed.times[first] ?? stage.from, to: ridden.timed.times[last + 1] ?? stage.to },
        ...{ timed: true, lasts: false },
        action: piece.action,
        quote: piece.action === null ? [] : [piece.action],
        is: `the horse comes ${how} within ${inWords(Math.round(metres * 10) / 10)} m, for which about ${inWords(Math.ceil(asks))} m would be wanted`,
        lift: "Either the way is longer, or there are slower gaits on it that the words leave out",
        look: true,
      };
    }),
  );
}

export const roomToPullUp: RideRule = {
  code: "room-to-pull-up",
  words: "none",
  sentence: "Between a halt and a fast gait there is room to take up the speed, and to pull up.",
  basis: "common practice",
  source: `Riding practice without a source. That a horse takes up or gives up ${SPEED_CHANGE} m/s each second is a guess. Never more than a question, and only within a step.`,
  severity: "notes",
  reach: "place",
  check,
};
