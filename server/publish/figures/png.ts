/** server/publish/figures/png.ts - a drawing as a picture in dots, for letters and screens that take no drawing.
 *  May import: server/publish. Faces come from the font packages alone, so the same drawing gives the same bytes. */
import { Resvg } from "@resvg/resvg-js";
import { faces } from "../write/face-files.ts";
import { PAPER } from "./paper-ink.ts";

/** Twelve dots to the millimetre: 305 to the inch. */
const DOTS = 12;
/** No picture is wider than this, whatever is asked for. */
const WIDEST = 8000;

/** The drawing `millimetres` wide, on white. Throws when it is no SVG. */
export function pngOf(svg: string, millimetres: number): Uint8Array {
  const width = Math.min(WIDEST, Math.max(1, Math.round(millimetres * DOTS)));
  const font = {
    loadSystemFonts: false,
    fontFiles: faces().map(({ path }) => path),
    defaultFontFamily: "Source Sans 3",
  };
  return new Resvg(svg, { fitTo: { mode: "width", value: width }, background: PAPER, font }).render().asPng();
}
