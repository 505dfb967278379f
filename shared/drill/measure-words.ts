/** shared/drill/measure-words.ts - lengths, angles and weights in words, as people who ride say them.
 *  May import: schema types. Lengths come in metres, angles in degrees, weights in kilograms. */
import type { Measure } from "../../schema/values.ts";

const METRES_PER_INCH = 0.0254;
const METRES_PER_FOOT = 0.3048;

/** "about 10 m (33 ft)", "0.15 m (6 in)", "8 to 10 m (26 to 33 ft)". */
export function lengthWords(length: Measure): string {
  const least = Math.min(...ends(length).map(Math.abs));
  const [perUnit, unit] = least < 1 ? [METRES_PER_INCH, "in"] : [METRES_PER_FOOT, "ft"];
  const other = ends(length).map((metres) => plain(metres / perUnit, 0));
  return `${measured(length, "m", 2)} (${[...new Set(other)].join(" to ")} ${unit})`;
}

/** "45°", "about 45°". */
export function angleWords(angle: Measure): string {
  return measured(angle, "°", 1);
}

export function massWords(mass: Measure): string {
  return measured(mass, "kg", 2);
}

function ends(measure: Measure): number[] {
  return measure.is === "range" ? [measure.from, measure.to] : [measure.of];
}

function measured(measure: Measure, unit: string, digits: number): string {
  const space = unit === "°" ? "" : " ";
  const number = (value: number) => plain(value, digits);
  switch (measure.is) {
    case "exact":
      return `${number(measure.of)}${space}${unit}`;
    case "range":
      return `${number(measure.from)} to ${number(measure.to)}${space}${unit}`;
    case "about": {
      const spread = measure.spread === 0 ? "" : `, ${number(measure.spread)}${space}${unit} either way`;
      return `about ${number(measure.of)}${space}${unit}${spread}`;
    }
  }
}

/** Without zeros at the end; a value too small for the digits keeps two that count, so that it never reads as nothing. */
function plain(value: number, digits: number): string {
  const rounded = Number(value.toFixed(digits));
  return String(rounded === 0 && value !== 0 ? Number(value.toPrecision(2)) : rounded);
}
