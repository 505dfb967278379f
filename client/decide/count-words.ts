/** client/decide/count-words.ts - a count in sentences.
 *  May import: types of shared/ride. Counts are whole numbers as decimal strings, however large. */
import type { AnsweredReading, DecideAnswer } from "../../shared/ride/puzzle/index.ts";

/** "1,024". */
export function grouped(count: string): string {
  return count.replace(/\B(?=(\d{3})+$)/g, ",");
}

/** "Of 216 ways to read it, 12 can be ridden; 4 surely." */
export function countSentence({ exact, holding, holdingUpper, surely, all }: DecideAnswer): string {
  const of = all === "1" ? "There is one way to read it" : `Of ${grouped(all)} ways to read it`;
  if (all === "0") return "There is no way to read it: what is ruled out or required leaves none.";
  if (!exact) {
    const sure = surely === "0" ? "" : `; surely at least ${grouped(surely)}`;
    return `${of}, at least ${grouped(holding)} and at most ${grouped(holdingUpper)} can be ridden${sure}.`;
  }
  if (all === "1")
    return `${of}, and it ${holding === "0" ? "cannot" : surely === "1" ? "can surely" : "can"} be ridden.`;
  if (holding === "0") return `${of}, none can be ridden.`;
  return `${of}, ${ridden(holding, all)}; ${surelyWords(surely, holding)}.`;
}

function ridden(holding: string, all: string): string {
  return holding === all ? "all can be ridden" : `${grouped(holding)} can be ridden`;
}

function surelyWords(surely: string, holding: string): string {
  if (surely === "0") return "none surely";
  return surely === holding ? "surely so" : `${grouped(surely)} surely`;
}

/** Combinations of open readings that are no way to read it; "" where there are none, or the count is not exact. */
export function leftOutSentence({ exact, shares, all }: DecideAnswer): string {
  const open = new Map<string, Set<string>>();
  for (const { crux, reading, sameAs, verdict } of shares) {
    if (verdict === "ruled out") continue;
    open.set(crux, (open.get(crux) ?? new Set()).add(sameAs ?? reading));
  }
  const combinations = [...open.values()].reduce((product, { size }) => product * BigInt(size), 1n);
  const leftOut = combinations - BigInt(all);
  if (!exact || leftOut <= 0n) return "";
  return `Of ${grouped(String(combinations))} combinations of readings, ${grouped(String(leftOut))} ${leftOut === 1n ? "is" : "are"} left out because readings require or exclude each other, or do not arise.`;
}

/** Ways that hold and in which the crux arises: what the shares of its readings are shares of. */
export function wholeOf(readings: readonly AnsweredReading[]): bigint {
  return readings.reduce((sum, { holding, sameAs }) => (sameAs === null ? sum + BigInt(holding) : sum), 0n);
}

/** "8 of 12"; "" where nothing holds. */
export function shareWords({ holding }: AnsweredReading, whole: bigint): string {
  return whole === 0n ? "" : `${grouped(holding)} of ${grouped(String(whole))}`;
}

/** "one way", "12 ways". */
export function ways(count: string): string {
  if (count === "0") return "no way";
  return count === "1" ? "one way" : `${grouped(count)} ways`;
}
