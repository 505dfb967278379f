/** shared/cite/reference-forms.ts - how the kinds of reference are told apart when they are read, and so what a writer
 *  has to mark. May import: nothing. Keeps rules C1-C4 (shared/cite/RULES.md).
 *  All forms are for text tidied by `tidyReference`. */

/** Groups: the siglum or empty, the label, the place. f., ff., fol., fols. and the words written out. A page label is no
 *  siglum: "p. f7" is the page f7. */
export const FOLIO_FORM = /^(?:(?!pp?\. )([^,;§]+?) )?(f{1,2}|foll?|fols|folios?|folia)(?:\. ?| )?(?=\d)(.+)$/iu;

/** Groups: what is paged or empty, the label, the place. p., pp. and the words written out. Nor is it what is paged. */
export const PAGE_FORM = /^(?:(?!pp?\. )([^,;§]+?) )?(?:(pp?)(?:\. ?| |(?=\d))|(pages?) )([^ .].*)$/iu;

/** A leaf with its side but no "f.": neither a folio nor a section is guessed. */
export const BARE_FOLIO = /^\d+ ?(?:r|v)[a-d]?(?![\p{L}\p{N}])/u;

/** "and following": a place without an end. */
export const FOLLOWING_FORM = /\d(?:[rv][a-d]?)? ?ff?\.?$/iu;

/** Names of sections: no white space and none of the signs that part levels, lines, ranges and lists. */
export const SECTION_NAME = /^[^\s.,;:§¶-]+$/u;

/** One space for white space of any kind and length, a hyphen for every dash, none of them beside a hyphen. */
export function tidyReference(text: string): string {
  return text
    .replace(/\s+/gu, " ")
    .replace(/ ?[-\u2010-\u2015\u2212] ?/gu, "-")
    .trim();
}
