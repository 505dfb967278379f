/** shared/text/correction.ts - how one wording is put right by another, as a slip says it: with the fewest words.
 *  May import: nothing. Keeps rules T34 and T35 (shared/text/RULES.md). */

export type Correction =
  | { do: "read"; was: string; now: string }
  | { do: "strike out"; was: string }
  /** `after`: the words it follows; "" at the beginning. */
  | { do: "add"; now: string; after: string };

/** Words that are kept for the reader to find an addition by. */
const WORDS_BEFORE = 4;

/** What a person is told who holds `was` and should read `now`. Only the words that differ are named, whole words; where
 *  they stand in the line more than once, or the wordings share little, the whole line is. "" for either is a line that is
 *  new, or goes. */
export function correctionOf(was: string, now: string): Correction {
  if (was === "") return { do: "add", now, after: "" };
  if (now === "") return { do: "strike out", was };
  const [olds, news] = [was.split(" "), now.split(" ")];
  let head = 0;
  while (head < Math.min(olds.length, news.length) && olds[head] === news[head]) head += 1;
  let tail = 0;
  const most = Math.min(olds.length, news.length) - head;
  while (tail < most && olds.at(-1 - tail) === news.at(-1 - tail)) tail += 1;
  const gone = olds.slice(head, olds.length - tail).join(" ");
  const come = news.slice(head, news.length - tail).join(" ");
  const shared = head + tail;
  const whole = { do: "read", was, now } as const;
  if (shared < Math.max(olds.length, news.length) / 3) return whole;
  if (gone === "") {
    const after = olds.slice(Math.max(0, head - WORDS_BEFORE), head).join(" ");
    return isOnce(was, after) || after === "" ? { do: "add", now: come, after } : whole;
  }
  if (!isOnce(was, gone)) return whole;
  return come === "" ? { do: "strike out", was: gone } : { do: "read", was: gone, now: come };
}

function isOnce(line: string, words: string): boolean {
  const padded = ` ${line} `;
  const first = padded.indexOf(` ${words} `);
  return first !== -1 && padded.indexOf(` ${words} `, first + 1) === -1;
}

/** The line as it reads once the correction is made; null where the words it names are not in it. */
export function corrected(line: string, correction: Correction): string | null {
  const padded = ` ${line} `;
  switch (correction.do) {
    case "add": {
      const { now, after } = correction;
      if (after === "") return `${now} ${line}`.trim();
      return padded.includes(` ${after} `) ? padded.replace(` ${after} `, () => ` ${after} ${now} `).trim() : null;
    }
    case "strike out":
      return padded.includes(` ${correction.was} `) ? padded.replace(` ${correction.was} `, " ").trim() : null;
    case "read": {
      const { was, now } = correction;
      return padded.includes(` ${was} `) ? padded.replace(` ${was} `, () => ` ${now} `).trim() : null;
    }
  }
}
