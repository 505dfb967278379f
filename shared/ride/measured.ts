/** shared/ride/measured.ts - one length to ride from what the text gives: exact, a range, or about so much.
 *  May import: schema types, shared/drill. Metres. */
import type { Measure } from "../../schema/values.ts";
import { lengthWords } from "../drill/measure-words.ts";

/** The middle of what is given; `note` says that it was taken, null where it is exact. */
export function measured(length: Measure): { metres: number; note: string | null } {
  if (length.is === "exact") return { metres: length.of, note: null };
  const metres = length.is === "range" ? (length.from + length.to) / 2 : length.of;
  return { metres, note: `${lengthWords(length)}: ridden as ${metresWords(metres)}` };
}

/** "12.8 m": no more than two digits after the point. */
export function metresWords(metres: number): string {
  return `${Number(metres.toFixed(2))} m`;
}

export function secondsWords(seconds: number): string {
  return `${Number(seconds.toFixed(1))} s`;
}
