/** server/publish/figures/paper-ink.ts - the ink, faces and line widths of figures on paper.
 *  May import: nothing. Millimetres on the paper. A figure carries all of this on its shapes: it stands alone. */

export const INK = "#211c16";
export const SOFT = "#6b6154";
export const FIRM = "#9b8f7d";
export const RUBRIC = "#9e2a2b";
export const PAPER = "#ffffff";

/** All that was written. */
export const TEXT_FACE = "'Gentium Plus', Amiri, serif";
/** All that the program says. */
export const SAID_FACE = "'Source Sans 3', sans-serif";

/** How a line is broken by its warrant; dots are round ends of dashes without length. */
export const DASHES = { stated: null, implied: "2.4 1.3", supplied: "0 1.25", join: "0 1.25" } as const;
