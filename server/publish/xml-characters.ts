/** server/publish/xml-characters.ts - words as XML 1.0 can hold them.
 *  May import: nothing. */

/** What XML has no way to write: most control characters, halves of a pair, and two points that are no characters. */
const NOT_XML = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** Each such character becomes U+FFFD, so that offsets stay as they are. */
export function xmlCharacters(words: string): string {
  return words.replace(NOT_XML, "\uFFFD");
}
