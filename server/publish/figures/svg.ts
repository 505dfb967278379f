/** server/publish/figures/svg.ts - a drawing as one SVG that stands alone: sized in millimetres, nothing to load or run.
 *  May import: server/publish. Numbers are rounded, so that the same drawing gives the same bytes anywhere. */
import type { Markup } from "../markup.ts";
import { element, type XmlAttributes, type XmlContent } from "../xml.ts";

/** A drawing of so many millimetres; its own unit is the millimetre. */
export interface Drawing {
  width: number;
  height: number;
  /** What it shows, for who cannot see it. */
  alternative: string;
  shapes: readonly Markup[];
}

export function svgOf({ width, height, alternative, shapes }: Drawing): string {
  const [across, down] = [rounded(width), rounded(height)];
  const attributes = {
    xmlns: "http://www.w3.org/2000/svg",
    width: `${across}mm`,
    height: `${down}mm`,
    viewBox: `0 0 ${across} ${down}`,
    role: "img",
    "aria-label": alternative,
  };
  return element("svg", attributes, [element("title", {}, alternative), ...shapes]).text;
}

/** An element of the drawing; numbers are rounded. */
export function shape(name: string, attributes: XmlAttributes, content: XmlContent = null): Markup {
  const rounding = Object.entries(attributes).map(
    ([key, value]) => [key, typeof value === "number" ? rounded(value) : value] as const,
  );
  return element(name, Object.fromEntries(rounding), content);
}

/** To the thousandth, without a minus before nothing. */
export function rounded(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
