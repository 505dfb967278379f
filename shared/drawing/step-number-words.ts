/** shared/drawing/step-number-words.ts - numbers of steps as they stand at one place of a plan.
 *  May import: nothing. Keeps rule W11 (shared/drawing/RULES.md). */

/** "1", "1, 2", "1–3", "1–3, 5": rising whole numbers, three or more in a row told by their ends. */
export function stepNumberWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) => (to - from >= 2 ? `${from}–${to}` : from === to ? `${from}` : `${from}, ${to}`))
    .join(", ");
}
