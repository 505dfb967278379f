/** tests/papers-written/in-order.ts - whether words stand in a text one after another. */

/** The first of `parts` that does not follow those before it; null when all do. */
export function firstMissing(whole: string, parts: readonly string[]): string | null {
  let at = 0;
  for (const part of parts) {
    const found = whole.indexOf(part, at);
    if (found === -1) return part;
    at = found + part.length;
  }
  return null;
}
