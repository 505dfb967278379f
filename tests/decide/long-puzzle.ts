/** tests/decide/long-puzzle.ts - puzzles as long as one likes, drawn from a table that is the same every time. */
import type { Puzzle, Stage, Successor } from "../../shared/decide/puzzle.ts";
import { bars, goes, hash, plainCrux, puzzleOf } from "./puzzles.ts";

export interface LongPuzzle {
  cruxes: number;
  readings: number;
  stages: number;
  /** How many cruxes are in play at once, from 1. */
  inPlay: number;
  states: number;
  /** Of a thousand rows, how many break a rule. */
  barring: number;
  /** Of how many rows one leaves open which of two ways it goes; 0: none. */
  silentOneIn: number;
}

/** Each crux is touched at the beginning and at the end of its span and a few times between; spans overlap so that as many
 *  are in play as asked. Every row goes to one of the states. */
export function longPuzzle(size: LongPuzzle): Puzzle {
  const names = Array.from({ length: size.readings }, (_, reading) => `r${reading}`);
  const slots = size.cruxes + size.inPlay - 1;
  const spans = Array.from({ length: size.cruxes }, (_, crux) => ({
    crux: `k${crux}`,
    first: Math.floor((crux * size.stages) / slots),
    last: Math.floor(((crux + size.inPlay) * size.stages) / slots) - 1,
  }));
  const stages = Array.from({ length: size.stages }, (_, number): Stage => {
    const open = spans.filter(({ first, last }) => first <= number && number <= last);
    const ends = open.filter(({ first, last }) => first === number || last === number);
    const further = open[hash(`touched ${number}`) % Math.max(1, open.length)];
    const touches = [...new Set([...ends, ...(further ? [further] : [])].map(({ crux }) => crux))];
    return { id: `s${number}`, touches, run: rowsOf(size, number, touches) };
  });
  return puzzleOf(
    spans.map(({ crux }) => plainCrux(crux, names)),
    stages,
    { start: ["q0"] },
  );
}

function rowsOf(
  { states, barring, silentOneIn }: LongPuzzle,
  number: number,
  touches: readonly string[],
): Stage["run"] {
  return (state, readingOf) => {
    const draw = hash(`${number} ${state} ${touches.map(readingOf).join(" ")}`) >>> 7;
    const way: Successor = goes(`q${draw % states}`, ...(draw % 1000 < barring ? [bars("barred")] : []));
    const silent = silentOneIn > 0 && draw % silentOneIn === 0;
    return silent ? [way, goes(`q${(draw + 1) % states}`)] : [way];
  };
}
