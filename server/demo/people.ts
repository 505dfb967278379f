/** server/demo/people.ts - the two invented people who work on the invented book, and when they sat together.
 *  May import: nothing. */

export const TRANSLATOR = "Y. Varne";
export const EDITOR = "the editor";
/** The day of the one sitting so far, and the day its questions were sent. */
export const SAT_ON = "2026-09-12";
export const ASKED_ON = "2026-09-14";
