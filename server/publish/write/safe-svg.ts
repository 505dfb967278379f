/** server/publish/write/safe-svg.ts - a drawing as it may stand within a page: read anew, and only what draws is kept.
 *  May import: saxes, server/publish, the room above. A drawing comes of our own figures, but a page must not rest on that:
 *  nothing that runs, loads or reaches out of the drawing goes through. */
import { SaxesParser } from "saxes";
import { escaped, Markup } from "../markup.ts";

/** What draws. Anything else is left out with all that is in it. */
const DRAWN = new Set(
  "svg g path rect circle ellipse line polyline polygon text tspan title desc defs clipPath mask pattern linearGradient radialGradient stop marker use image".split(
    " ",
  ),
);
/** Attributes that neither run nor load; `href` and `style` are looked at apart. */
const PLAIN =
  /^(?:aria-[a-z]+|role|lang|class|id|d|x|y|x1|y1|x2|y2|cx|cy|r|rx|ry|dx|dy|fx|fy|width|height|points|transform|viewBox|preserveAspectRatio|offset|rotate|refX|refY|orient|marker[A-Z][A-Za-z]*|pattern[A-Z][A-Za-z]*|gradient[A-Z][A-Za-z]*|mask[A-Z][A-Za-z]*|clipPathUnits|spreadMethod|textLength|lengthAdjust|(?:fill|stroke|font|stop|clip|text|dominant|alignment|baseline|letter|word|paint|marker|vector|shape)(?:-[a-z]+)*|opacity|color|mask|direction|unicode-bidi|writing-mode|visibility|display)$/;

export interface DrawingFacts {
  /** Put before every name in the drawing, so that two drawings on a page do not share one. */
  prefix: string;
  /** Said to who cannot see it. */
  alternative: string;
  /** Millimetres. */
  width: number;
}

/** Throws RangeError for what is no SVG. */
export function safeSvg(svg: string, facts: DrawingFacts): Markup {
  const parser = new SaxesParser({ xmlns: false, fragment: false });
  const out: string[] = [];
  let left = 0;
  let depth = 0;
  parser.on("error", (error) => {
    throw new RangeError(`A figure is not a drawing: ${error.message}`);
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (depth === 0 && name !== "svg") throw new RangeError(`A figure begins with <${name}> and is no SVG.`);
    depth += 1;
    if (left > 0 || !DRAWN.has(name) || (depth === 1 ? false : name === "svg")) left += 1;
    else
      out.push(
        `<${name}${depth === 1 ? rootAttributes(attributes, facts) : ""}${safeAttributes(attributes, facts.prefix, depth === 1)}>`,
      );
  });
  parser.on("text", (text) => {
    if (left === 0) out.push(escaped(text));
  });
  parser.on("closetag", ({ name }) => {
    depth -= 1;
    if (left > 0) left -= 1;
    else out.push(`</${name}>`);
  });
  parser.write(svg).close();
  return new Markup(out.join(""));
}

const ON_THE_ROOT = new Set(["width", "height", "role", "aria-label", "aria-labelledby", "class", "id"]);

function rootAttributes(attributes: Record<string, string>, { alternative, width }: DrawingFacts): string {
  const box =
    attributes.viewBox === undefined ? ` viewBox="0 0 ${size(attributes.width)} ${size(attributes.height)}"` : "";
  return ` xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(alternative)}" width="${width}mm"${box}`;
}

function size(length: string | undefined): number {
  const number = Number.parseFloat(length ?? "");
  return Number.isFinite(number) ? number : 100;
}

function safeAttributes(attributes: Record<string, string>, prefix: string, root: boolean): string {
  return Object.entries(attributes)
    .flatMap(([name, value]) => {
      if (root && ON_THE_ROOT.has(name)) return [];
      const kept = safeValue(name, value, prefix);
      return kept === null ? [] : [` ${name}="${escaped(kept)}"`];
    })
    .join("");
}

function safeValue(name: string, value: string, prefix: string): string | null {
  if (name === "id") return prefix + value;
  if (name === "href" || name === "xlink:href") {
    if (value.startsWith("#")) return `#${prefix}${value.slice(1)}`;
    return /^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/=]*$/.test(value) ? value : null;
  }
  if (!PLAIN.test(name)) return null;
  if (!/url\s*\(/i.test(value)) return value;
  const inside = /^url\(#([A-Za-z][\w.-]*)\)$/.exec(value.trim());
  return inside === null ? null : `url(#${prefix}${inside[1]})`;
}
