/** server/publish/stopped.ts - sentences that stand in a row.
 *  May import: nothing. */

/** With a capital and a full stop, unless it ends a sentence already. */
export function stopped(words: string): string {
  const tidy = words.trim();
  const begun = capital(tidy);
  return /[.!?…]["”’)]?$/u.test(begun) ? begun : `${begun}.`;
}

/** With a capital, for what begins a line. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
