/** shared/cite/locator.ts - a place in a source, as a person wrote it, in the terms of CSL.
 *  May import: nothing. Keeps rule C25 (shared/cite/RULES.md). Labels after the CSL 1.0.2 specification, appendix on locators. */

/** A locator with its label where the words begin with one that CSL knows; else the words as they are, after a comma. */
export type Locator = { locator: string; label: string } | { suffix: string } | Record<string, never>;

/** As they are abbreviated and written out; the sign of a section stands for itself. */
const LABELS: readonly (readonly [label: string, written: RegExp])[] = [
  ["page", /^(?:pp?\.|pages?)\s*/iu],
  ["folio", /^(?:ff?\.|fols?\.|folios?)\s*/iu],
  ["chapter", /^(?:chs?\.|chaps?\.|chapters?)\s*/iu],
  ["section", /^(?:§§?|secs?\.|sections?)\s*/iu],
  ["line", /^(?:ll?\.|lines?)\s*/iu],
  ["book", /^(?:bks?\.|books?)\s*/iu],
  ["column", /^(?:cols?\.|columns?)\s*/iu],
  ["figure", /^(?:figs?\.|figures?)\s*/iu],
  ["note", /^(?:nn?\.|notes?)\s*/iu],
  ["paragraph", /^(?:¶¶?|paras?\.|paragraphs?)\s*/iu],
  ["part", /^(?:pts?\.|parts?)\s*/iu],
  ["sub-verbo", /^(?:s\.\s?vv?\.)\s*/iu],
  ["verse", /^(?:vv\.|verses?)\s*/iu],
  ["volume", /^(?:vols?\.|volumes?)\s*/iu],
];

export function readLocator(where: string): Locator {
  const words = where.replace(/\s+/gu, " ").trim();
  if (words === "") return {};
  for (const [label, written] of LABELS) {
    const found = written.exec(words);
    const rest = found === null ? "" : words.slice(found[0].length);
    // A number, or for a dictionary a word: "note of the editor" is no locator.
    if (rest !== "" && (label === "sub-verbo" || /^[\d\p{L}]{0,3}\d|^[ivxlcdm]+\b/iu.test(rest))) {
      return { locator: rest, label };
    }
  }
  return /^\d/u.test(words) ? { locator: words, label: "page" } : { suffix: `, ${words}` };
}
