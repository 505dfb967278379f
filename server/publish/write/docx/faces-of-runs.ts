/** server/publish/write/docx/faces-of-runs.ts - which face is asked for, by script.
 *  May import: nothing. Arabic script is set in Amiri wherever it stands. */

export const PROGRAM_FACE = { ascii: "Source Sans 3", hAnsi: "Source Sans 3", cs: "Amiri", eastAsia: "Source Sans 3" };
export const WRITTEN_FACE = { ascii: "Gentium Plus", hAnsi: "Gentium Plus", cs: "Amiri", eastAsia: "Gentium Plus" };
