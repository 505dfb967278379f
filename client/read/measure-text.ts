/** client/read/measure-text.ts - lengths, angles, weights and outlines as they are typed: "about 10 m", "8 to 10 ft".
 *  Kept in metres, degrees, kilograms, whole millimetres. */
import type { Measure, ValueOf } from "../../schema/values.ts";

export type MeasureKind = "length" | "angle" | "mass";

/** What one of a unit is, in the unit that is kept. The first of each is the one taken when none is typed. */
const UNITS: Record<MeasureKind, Readonly<Record<string, number>>> = {
  length: { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254, yd: 0.9144, hands: 0.1016 },
  angle: { "°": 1, deg: 1, degrees: 1 },
  mass: { kg: 1, g: 0.001, lb: 0.45359237 },
};
export const MEASURE_HINTS: Record<MeasureKind, string> = {
  length: "about 10 m",
  angle: "45°",
  mass: "1.5 kg",
};

/** The measure, or a sentence that says what was expected. */
export function readMeasure(kind: MeasureKind, typed: string): Measure | string {
  const number = String.raw`([-−]?\d+(?:[.,]\d+)?)`;
  const unit = String.raw`\s*((?!to\b)[a-z°]*)\.?`;
  const pattern = new RegExp(`^(about |c\\.? ?|~ ?)?${number}${unit}(?:\\s*(to|-|–|±)\\s*${number}${unit})?$`, "i");
  const found = typed.trim().replace(/\s+/g, " ").match(pattern);
  const units = UNITS[kind];
  const wanted = `Expected a number and its unit, as “${MEASURE_HINTS[kind]}” or “8 to 10”; units are ${Object.keys(units).join(", ")}.`;
  if (found === null) return wanted;
  const [, about, first = "", firstUnit = "", joined, second = "", secondUnit = ""] = found;
  const [usual = ""] = Object.keys(units);
  const factorOf = (name: string) => units[name.toLowerCase().replace(/^(hand|foot|feet|inch|metre)e?s?$/, longUnit)];
  const last = factorOf(secondUnit || firstUnit || usual);
  const factor = factorOf(firstUnit || secondUnit || usual);
  if (factor === undefined || last === undefined) return wanted;
  const value = kept(first, factor);
  if (joined === "±") return { is: "about", of: value, spread: Math.abs(kept(second, last)) };
  if (joined !== undefined) {
    const ends = [value, kept(second, last)].sort((a, b) => a - b);
    return { is: "range", from: ends[0] ?? value, to: ends[1] ?? value };
  }
  return about ? { is: "about", of: value, spread: 0 } : { is: "exact", of: value };
}

function longUnit(_whole: string, name: string): string {
  const longs: Record<string, string> = { hand: "hands", foot: "ft", feet: "ft", inch: "in", metre: "m" };
  return longs[name.toLowerCase()] ?? name;
}

/** Six decimals hold a micrometre; more would be noise of the conversion. */
const kept = (digits: string, factor: number) =>
  Number((Number(digits.replace(",", ".").replace("−", "-")) * factor).toFixed(6));

/** As `readMeasure` takes it. */
export function measureText(kind: MeasureKind, measure: Measure): string {
  const unit = kind === "angle" ? "°" : ` ${Object.keys(UNITS[kind])[0] ?? ""}`;
  switch (measure.is) {
    case "exact":
      return `${measure.of}${unit}`;
    case "range":
      return `${measure.from} to ${measure.to}${unit}`;
    case "about":
      return measure.spread === 0 ? `about ${measure.of}${unit}` : `${measure.of} ± ${measure.spread}${unit}`;
  }
}

/** Points "x y" in metres with semicolons between: one is a point, two a line, three or more an area. */
export function readOutline(typed: string): ValueOf<"outline"> | string {
  const points = typed.split(";").map((pair) => {
    const numbers = pair
      .trim()
      .replace("−", "-")
      .split(/[\s,]+/)
      .map(Number);
    const [x = Number.NaN, y = Number.NaN] = numbers;
    return numbers.length === 2 && Number.isFinite(x) && Number.isFinite(y)
      ? { x: Math.round(x * 1000), y: Math.round(y * 1000) }
      : null;
  });
  const [first, second, ...others] = points;
  if (!first || points.includes(null)) {
    return "Expected places as “x y” in metres from the centre, with semicolons between: 0 20; 5 20.";
  }
  if (!second) return { is: "point", at: first };
  if (others.length === 0) return { is: "line", from: first, to: second };
  return { is: "area", corners: points.filter((point) => point !== null) };
}

export function outlineText(outline: ValueOf<"outline">): string {
  const points =
    outline.is === "point" ? [outline.at] : outline.is === "line" ? [outline.from, outline.to] : outline.corners;
  return points.map(({ x, y }) => `${x / 1000} ${y / 1000}`).join("; ");
}

/** "twice", "3", "until he is at the gate". */
export function readCount(typed: string): ValueOf<"count"> | string {
  const text = typed.trim();
  const until = text.match(/^until (.+)$/is);
  if (until?.[1]) return { is: "until", event: until[1] };
  const number = COUNTS[text.toLowerCase()] ?? Number(text.replace(/ ?times?$/i, "").replace(",", "."));
  if (Number.isFinite(number) && number > 0 && number <= 10_000) return { is: "times", n: number };
  return "Expected how often, as “twice”, “3” or “until he is at the gate”.";
}

const COUNTS: Record<string, number> = {
  once: 1,
  twice: 2,
  thrice: 3,
  "three times": 3,
  "four times": 4,
  "five times": 5,
};
