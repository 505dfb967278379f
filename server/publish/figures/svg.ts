/** server/publish/figures/svg.ts - a drawing as one SVG that stands alone: sized in millimetres, nothing to load or run.
 *  May import: server/publish. Numbers are rounded, so that the same drawing gives the same bytes anywhere. */
import { html, type Markup, type Piece } from "../markup.ts";
import { xmlCharacters } from "../xml-characters.ts";

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
  const says = xmlCharacters(alternative);
  return html`<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}" role="img" aria-label="${says}"><title>${says}</title>${shapes}</svg>`
    .text;
}

/** Attributes in the order given; null and undefined ones are left out. */
export type Attributes = Readonly<Record<string, string | number | null | undefined>>;

/** An element of the drawing. */
export function shape(name: string, attributes: Attributes, content: Piece = null): Markup {
  const listed = Object.entries(attributes).flatMap(([key, value]) =>
    value === null || value === undefined
      ? []
      : [html` ${key}="${typeof value === "number" ? rounded(value) : xmlCharacters(value)}"`],
  );
  const tag = html`${name}`;
  if (content === null) return html`<${tag}${listed}/>`;
  const inner = typeof content === "string" ? xmlCharacters(content) : content;
  return html`<${tag}${listed}>${inner}</${tag}>`;
}

/** To the thousandth, without a minus before nothing. */
export function rounded(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
