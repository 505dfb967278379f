/** server/publish/write/docx/twips.ts - millimetres in twentieths of a point, as letters measure.
 *  May import: nothing. */

/** A whole number. */
export function twips(millimetres: number): number {
  return Math.round((millimetres * 1440) / 25.4);
}
