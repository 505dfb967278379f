/** shared/text/words-diff.ts - what changed between two wordings, word by word.
 *  May import: diff. Keeps rules T27 and T28 (shared/text/RULES.md). */
import { diffArrays } from "diff";

export type WordRun = { readonly kind: "same" | "removed" | "added"; readonly text: string };

/** Words that may differ before the middle is shown as one replacement: the cost grows with its square. */
export const MOST_WORD_CHANGES = 2_000;

/** The runs that lead from `before` to `after`: "same" and "removed" joined give `before`, "same" and "added" `after`.
 *  Words are compared as they stand, with no folding. Where very much differs, all between the common start and the
 *  common end is one removed and one added run, so that the time stays in proportion to the length. */
export function wordDiff(before: string, after: string): WordRun[] {
  const olds = before.match(TOKEN) ?? [];
  const news = after.match(TOKEN) ?? [];
  let head = 0;
  while (head < olds.length && head < news.length && olds[head] === news[head]) head += 1;
  let tail = 0;
  const most = Math.min(olds.length, news.length) - head;
  while (tail < most && olds[olds.length - 1 - tail] === news[news.length - 1 - tail]) tail += 1;

  const runs: WordRun[] = [];
  pushRun(runs, "same", olds.slice(0, head).join(""));
  const oldMiddle = olds.slice(head, olds.length - tail);
  const newMiddle = news.slice(head, news.length - tail);
  const changes = diffArrays(oldMiddle, newMiddle, { maxEditLength: MOST_WORD_CHANGES });
  if (changes === undefined) {
    pushRun(runs, "removed", oldMiddle.join(""));
    pushRun(runs, "added", newMiddle.join(""));
  } else {
    for (const { added, removed, value } of changes) {
      pushRun(runs, added ? "added" : removed ? "removed" : "same", value.join(""));
    }
  }
  pushRun(runs, "same", olds.slice(olds.length - tail).join(""));
  return runs;
}

/** White space, a word with its combining marks, apostrophes and transliterated hamza and ayn, or a single sign. */
const TOKEN = /\s+|[\p{L}\p{M}\p{N}\u02bb\u02bc\u02be\u02bf\u2019']+|[\s\S]/gu;

function pushRun(runs: WordRun[], kind: WordRun["kind"], text: string): void {
  if (text === "") return;
  const last = runs.at(-1);
  if (last?.kind === kind) runs[runs.length - 1] = { kind, text: last.text + text };
  else runs.push({ kind, text });
}
