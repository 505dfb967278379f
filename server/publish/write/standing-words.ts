/** server/publish/write/standing-words.ts - words every form of a paper brings along by itself.
 *  May import: nothing. */

export const ENDNOTES_TITLE = "Notes";
export const SILENT_WORDS = "the text does not say";
export const NOTHING_WORDS = "nothing is done";
