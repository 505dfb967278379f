/** server/publish/write/language-tag.ts - the parts of a BCP 47 tag that files for print know, and which way words run.
 *  May import: nothing. */

export interface LanguageTag {
  /** Two or three small letters. */
  language: string;
  /** Two capitals; null where the tag has none. */
  region: string | null;
}

/** Null for an empty or unreadable tag. A script ("grc-Latn") is read over: the letters tell it. */
export function languageTag(tag: string | null): LanguageTag | null {
  const parts = /^([a-z]{2,3})(?:-[a-z]{4})?(?:-([a-z]{2}))?(?:-[a-z0-9]+)*$/iu.exec(tag ?? "");
  if (parts === null) return null;
  return { language: (parts[1] ?? "").toLowerCase(), region: parts[2]?.toUpperCase() ?? null };
}

/** Letters of scripts that run from right to left. */
const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
const LETTER = /\p{L}/u;

/** Whether the first letter of the words runs from right to left; false where there is none. */
export function runsRightToLeft(text: string): boolean {
  const letter = LETTER.exec(text)?.[0];
  return letter !== undefined && RIGHT_TO_LEFT.test(letter);
}
