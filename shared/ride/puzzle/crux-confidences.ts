/** shared/ride/puzzle/crux-confidences.ts - how sure people are of readings, as the weighted count takes it.
 *  May import: schema types, shared/decide, siblings. Keeps rule P14 (shared/ride/puzzle/RULES.md). Decimals as they were
 *  written, added without rounding. */
import type { Reading } from "../../../schema/crux.ts";
import { type Decimal, decimalOf, over, written } from "../../decide/decimal.ts";
import { type Confidence, weightedCount } from "../../decide/index.ts";
import type { Puzzle } from "../../decide/puzzle.ts";
import type { WeighedExercise } from "./weighed.ts";

/** Of readings that are not ruled out. What is no decimal is left out. */
export function sumOfConfidences(readings: readonly Pick<Reading, "status" | "confidence">[]): Decimal {
  return sum(readings.flatMap((one) => (one.status.is === "ruled out" ? [] : (one.confidence ?? []))));
}

function sum(decimals: readonly string[]): Decimal {
  const known = decimals.flatMap((one) => decimalOf(one) ?? []);
  const places = Math.max(0, ...known.map((one) => one.places));
  return { digits: known.reduce((total, one) => total + over(one, places), 0n), places };
}

export function isOverOne({ digits, places }: Decimal): boolean {
  return digits > 10n ** BigInt(places);
}

/** The count with each way of reading weighed by the confidences in its readings. */
export interface WeightedAnswer {
  /** Whole numbers over this one. */
  denominator: string;
  holding: string;
  all: string;
  /** Share of what holds where the crux arises, weighed so; 0 to 1, null where nothing does. */
  shares: { crux: string; reading: string; share: number | null }[];
}

/** Null where no confidences are given, or those of a crux cannot be taken together: some of its readings have none, or they
 *  come to more than 1. Which, stands among the problems. */
export function weightedAnswer({ cruxes, classes }: WeighedExercise, puzzle: Puzzle): WeightedAnswer | null {
  const confidences = cruxes.flatMap(({ id, readings }): Confidence[] => {
    const open = readings.filter(({ status }) => status !== "ruled out");
    if (open.length === 0 || open.some(({ confidence }) => confidence === null)) return [];
    return (classes.get(id) ?? []).flatMap(({ reading, members }) => {
      const own = open.filter((one) => members.includes(one.id));
      if (own.length === 0) return [];
      return [{ crux: id, reading, degree: written(sum(own.flatMap(({ confidence }) => confidence ?? []))) }];
    });
  });
  if (confidences.length === 0) return null;
  const weighted = weightedCount(puzzle, confidences);
  if (!weighted.ok) return null;
  const whole = new Map<string, bigint>();
  for (const { crux, holding } of weighted.shares) whole.set(crux, (whole.get(crux) ?? 0n) + holding);
  return {
    denominator: String(weighted.denominator),
    holding: String(weighted.holding),
    all: String(weighted.all),
    shares: weighted.shares.map(({ crux, reading, holding }) => ({
      crux,
      reading,
      share: ratio(holding, whole.get(crux) ?? 0n),
    })),
  };
}

/** To nine places; null of nothing. */
export function ratio(part: bigint, whole: bigint): number | null {
  return whole === 0n ? null : Number((part * 1_000_000_000n) / whole) / 1_000_000_000;
}
