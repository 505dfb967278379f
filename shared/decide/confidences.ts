/** shared/decide/confidences.ts - confidences in readings as exact numbers to weight assignments with.
 *  May import: siblings in shared/decide. Keeps rules N16-N17 (shared/decide/RULES.md). Degrees are decimals as people write
 *  them, and stay exact: whole numbers over one denominator. */
import { type Decimal, decimalOf, gcd, over, written } from "./decimal.ts";
import type { Factor } from "./indexed.ts";
import type { Pick, Puzzle, PuzzleCrux } from "./puzzle.ts";

/** How sure one is of a reading, from above 0 to 1; `given`: in case another crux is read so. */
export interface Confidence {
  crux: string;
  reading: string;
  /** A decimal such as "0.6" or "1". */
  degree: string;
  given?: Pick;
}

export type ConfidenceCode =
  | "confidence_unknown"
  | "confidence_not_decimal"
  | "confidence_zero"
  | "confidence_over_one"
  | "confidence_twice"
  | "confidence_missing"
  | "confidence_given_itself"
  | "confidence_given_several";

export interface ConfidenceRefusal {
  ok: false;
  code: ConfidenceCode;
  sentence: string;
  /** Where. */
  crux: string;
}

/** Weights for the count; a weight of `denominator` overall is one. */
export interface Weights {
  ok: true;
  factors: Factor[];
  denominator: bigint;
}

/** Cruxes without confidences weigh nothing: each of their readings counts 1. */
export function weightsOf(puzzle: Puzzle, confidences: readonly Confidence[]): Weights | ConfidenceRefusal {
  const weights: Weights = { ok: true, factors: [], denominator: 1n };
  const cruxes = [...new Set(confidences.map(({ crux }) => crux))];
  for (const id of cruxes) {
    const crux = puzzle.cruxes.findIndex((one) => one.id === id);
    const lines = linesOf(
      puzzle,
      id,
      confidences.filter((one) => one.crux === id),
    );
    if ("code" in lines) return lines;
    const { factor, denominator } = factorOf(puzzle, crux, lines);
    weights.factors.push(factor);
    weights.denominator *= denominator;
  }
  return weights;
}

interface Lines {
  /** The crux that confidences may depend on, or null. */
  given: PuzzleCrux | null;
  /** By reading of that crux, or null for those without a condition: by reading, the degree. */
  contexts: Map<string | null, Map<string, Decimal>>;
}

function linesOf(puzzle: Puzzle, id: string, own: readonly Confidence[]): Lines | ConfidenceRefusal {
  const refuse = (code: ConfidenceCode, sentence: string): ConfidenceRefusal => ({
    ok: false,
    code,
    sentence,
    crux: id,
  });
  const find = (name: string) => puzzle.cruxes.find((one) => one.id === name);
  const crux = find(id);
  if (!crux)
    return refuse("confidence_unknown", `A confidence is given for ${id}, which is no crux here. Take it away.`);
  const others = [...new Set(own.flatMap((one) => (one.given ? [one.given.crux] : [])))];
  const [first, second] = others;
  if (others.includes(id)) {
    return refuse(
      "confidence_given_itself",
      `A confidence at ${id} depends on ${id} itself. Name another crux, or none.`,
    );
  }
  if (second !== undefined) {
    return refuse(
      "confidence_given_several",
      `Confidences at ${id} depend on ${first} and on ${second}. Let them depend on one crux.`,
    );
  }
  const contexts: Lines["contexts"] = new Map();
  for (const { reading, degree, given } of own) {
    const where = `the reading ${reading} of ${id}${given ? `, given ${given.reading} at ${given.crux}` : ""}`;
    if (!crux.readings.includes(reading) || (given && !find(given.crux)?.readings.includes(given.reading))) {
      return refuse("confidence_unknown", `A confidence is given for ${where}, which is not there. Take it away.`);
    }
    const decimal = decimalOf(degree);
    if (!decimal) {
      return refuse(
        "confidence_not_decimal",
        `The confidence in ${where} is “${degree}”. Write a decimal such as 0.6.`,
      );
    }
    if (decimal.digits === 0n) {
      return refuse("confidence_zero", `The confidence in ${where} is 0. Rule the reading out instead.`);
    }
    const context = contexts.get(given?.reading ?? null) ?? new Map<string, Decimal>();
    if (context.has(reading)) {
      return refuse("confidence_twice", `Two confidences are given for ${where}. Keep one.`);
    }
    contexts.set(given?.reading ?? null, context.set(reading, decimal));
  }
  const condition = first === undefined ? null : (find(first) ?? null);
  return faultOf(crux, condition, contexts, refuse) ?? { given: condition, contexts };
}

function faultOf(
  crux: PuzzleCrux,
  given: PuzzleCrux | null,
  contexts: Lines["contexts"],
  refuse: (code: ConfidenceCode, sentence: string) => ConfidenceRefusal,
): ConfidenceRefusal | null {
  for (const [context, degrees] of contexts) {
    const where = `${crux.id}${context === null ? "" : `, given ${context} at ${given?.id}`}`;
    const places = Math.max(...[...degrees.values()].map((one) => one.places));
    const sum = [...degrees.values()].reduce((total, one) => total + over(one, places), 0n);
    if (sum > 10n ** BigInt(places)) {
      const terms = [...degrees.values()].map(written).join(" + ");
      return refuse(
        "confidence_over_one",
        `The confidences at ${where} come to more than 1: ${terms}. Lower one of them.`,
      );
    }
  }
  const open = (one: PuzzleCrux) => one.readings.filter((reading) => !one.ruledOut.includes(reading));
  const needed = given && !contexts.has(null) ? open(given) : [...contexts.keys()];
  for (const context of needed) {
    const missing = open(crux).find((reading) => !contexts.get(context)?.has(reading));
    if (missing === undefined) continue;
    const where = context === null ? "" : `, given ${context} at ${given?.id}`;
    return refuse(
      "confidence_missing",
      `The reading ${missing} of ${crux.id} has no confidence${where}, though others have. Give it one, or none to any.`,
    );
  }
  return null;
}

function factorOf(puzzle: Puzzle, crux: number, { given, contexts }: Lines): { factor: Factor; denominator: bigint } {
  const decimals = [...contexts.values()].flatMap((degrees) => [...degrees.values()]);
  const places = Math.max(...decimals.map((one) => one.places));
  const common = decimals.reduce((divisor, one) => gcd(divisor, over(one, places)), 10n ** BigInt(places));
  const denominator = 10n ** BigInt(places) / common;
  const readings = puzzle.cruxes[crux]?.readings ?? [];
  const weight = (context: string | null, value: number): bigint => {
    const decimal = (contexts.get(context) ?? contexts.get(null))?.get(readings[value] ?? "");
    // A crux that does not arise, and one nothing is said of, weigh 1.
    return decimal ? over(decimal, places) / common : denominator;
  };
  if (!given) {
    return {
      factor: { scope: [crux], weightOf: (values) => weight(null, values[0] as number) },
      denominator,
    };
  }
  const other = puzzle.cruxes.indexOf(given);
  const weightOf = (values: ArrayLike<number>) =>
    weight(given.readings[values[1] as number] ?? null, values[0] as number);
  return { factor: { scope: [crux, other], weightOf }, denominator };
}
