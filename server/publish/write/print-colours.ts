/** server/publish/write/print-colours.ts - ink on paper, as letters name colours. The pages of PDF and HTML have the same.
 *  May import: nothing. Rubric is for numbers, references and what stands open, and nothing else. */

export const INK = "211C16";
export const SOFT = "6B6154";
/** Of lines that are seen and do not speak: the track of a plan, the line of what is stated. */
export const FIRM = "9B8F7D";
export const RULE = "CDBFA9";
export const RUBRIC = "9E2A2B";
