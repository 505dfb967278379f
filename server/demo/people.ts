/** server/demo/people.ts - the invented people who work on the invented book, and when they met.
 *  May import: nothing. */

export const TRANSLATOR = "Y. Varne";
export const EDITOR = "the editor";
/** She keeps the horses, and tries on foot and mounted what the others read. */
export const HORSES = "Ede Marrin";
/** Whoever wrote the second copy of the second part. */
export const COPYIST = "the copyist of C";
/** The day of the first sitting, and the day its questions were sent. */
export const SAT_ON = "2026-09-12";
export const ASKED_ON = "2026-09-14";
/** The day of the second sitting, and the day in the yard that followed it. */
export const SAT_AGAIN = "2026-09-26";
export const TRIED_ON = "2026-10-10";
