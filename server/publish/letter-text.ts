/** server/publish/letter-text.ts - a letter as plain text, in lines that a mail keeps as they are.
 *  May import: siblings. */
import type { LetterPart } from "./letter.ts";

/** Characters of a line. */
const WIDE = 76;
const IN = "   ";

/** Ends with a line break. */
export function letterText(parts: readonly LetterPart[]): string {
  return `${parts
    .flatMap(linesOf)
    .join("\n")
    .replace(/\n{3,}/g, "\n\n")
    .trim()}\n`;
}

function linesOf(part: LetterPart): string[] {
  switch (part.is) {
    case "to":
      return [`To ${part.words}`, ""];
    case "title":
      return [...wrapped(part.words, "", ""), ""];
    case "note":
      return [...wrapped(part.words, "", ""), ""];
    case "heading":
      return ["", part.words, "-".repeat(Math.min(WIDE, [...part.words].length)), ""];
    case "question": {
      const asked = part.asked === "" ? "" : ` (asked ${part.asked})`;
      return ["", ...wrapped(`${part.words}${asked}`, `${part.number}. `, IN), ""];
    }
    case "reference":
      return [`${IN}${part.words}`];
    case "said":
      return [...wrapped(`“${part.before}*${part.words}*${part.after}”`, IN, IN), ""];
    case "paragraph":
      return ["", ...wrapped(`${part.lead} ${part.words}`.trim(), IN, IN), ...(part.words === "" ? [] : [""])];
    case "reading":
      return wrapped(part.words === "" ? `${part.title}.` : `${part.title}. ${part.words}`, `${IN}- `, `${IN}  `);
  }
}

/** The words in lines; one that is longer than a line stands alone. */
function wrapped(words: string, first: string, others: string): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of words.split(" ").filter((piece) => piece !== "")) {
    if (!empty && [...line].length + 1 + [...word].length > WIDE) {
      lines.push(line);
      line = others;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
