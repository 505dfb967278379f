/** shared/text/file-name.ts - a title as the name of a file.
 *  May import: nothing. */

/** Longest name, in UTF-16 units, without the ending that says what the file is. */
const LONGEST = 80;

/** "Of the circle about the well" as "of-the-circle-about-the-well": letters and digits without their marks, the rest as
 *  hyphens. `instead` where nothing is left. Never longer than 80 units, and no character is cut. */
export function fileName(title: string, instead = "paper"): string {
  const plain = title.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const hyphened = plain.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
  const cut = hyphened
    .slice(0, LONGEST)
    .replace(/[\ud800-\udbff]$/u, "")
    .replace(/-$/, "");
  return cut || instead;
}
