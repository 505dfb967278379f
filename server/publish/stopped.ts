/** server/publish/stopped.ts - sentences that stand in a row.
 *  May import: nothing. */

/** With a capital and a full stop, unless it ends a sentence already. */
export function stopped(words: string): string {
  const tidy = words.trim();
  const begun = tidy.charAt(0).toUpperCase() + tidy.slice(1);
  return /[.!?…]["”’)]?$/u.test(begun) ? begun : `${begun}.`;
}
