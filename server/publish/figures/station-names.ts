/** server/publish/figures/station-names.ts - how large a name is on paper, and where it breaks.
 *  May import: nothing. Widths are estimates from the faces: wide enough to keep words apart. */

export interface Name {
  lines: readonly string[];
  width: number;
  height: number;
}

/** Widths of letters as shares of the height of the type. */
const LETTER = 0.41;
const DIGIT = 0.52;
const WIDE = 1;
const SPACE = 0.25;
const LINE = 1.08;
const MOST_LINES = 3;
const LONGEST_WORD = 24;

/** So wide is a line of words at a height of type. */
export function widthOfWords(words: string, height: number): number {
  let width = 0;
  for (const letter of words) {
    if (/\s/u.test(letter)) width += SPACE;
    else if (/\p{M}/u.test(letter)) width += 0;
    else if (/[\d–]/u.test(letter)) width += DIGIT;
    else width += /[\u2E80-\uFFDC]|\p{Extended_Pictographic}|[MWm@]/u.test(letter) ? WIDE * 0.85 : LETTER;
  }
  return width * height;
}

/** A name in at most three lines of about `most` millimetres; what is longer ends in three dots. */
export function nameOf(name: string, height: number, most: number): Name {
  const words = name.trim().replace(/\s+/gu, " ").split(" ").map(short);
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    if (last !== undefined && widthOfWords(`${last} ${word}`, height) <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  if (lines.length > MOST_LINES) {
    lines.length = MOST_LINES;
    lines[MOST_LINES - 1] = `${lines[MOST_LINES - 1]} …`;
  }
  return {
    lines,
    width: Math.max(...lines.map((line) => widthOfWords(line, height))),
    height: lines.length * height * LINE,
  };
}

function short(word: string): string {
  const letters = [...word];
  return letters.length > LONGEST_WORD ? `${letters.slice(0, LONGEST_WORD - 1).join("")}…` : word;
}

/** Baselines of the lines about the middle of the name. */
export function baselines({ lines }: Name, middle: number, height: number): number[] {
  const first = middle - ((lines.length - 1) * height * LINE) / 2 + height * 0.33;
  return lines.map((_, index) => first + index * height * LINE);
}
