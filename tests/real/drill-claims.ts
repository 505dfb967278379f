/** tests/real/drill-claims.ts - what every drill of a real passage must keep: it fits the schema, every citation is in
 *  the source where it says, and whatever is said to be stated has words. */
import { expect } from "vitest";
import { type Citation, Drill } from "../../schema/drill.ts";

/** `source` gives the words of a reference in a layer, as they were imported, not as the model stored them. */
export function expectTrueToSource(
  drill: Drill,
  source: (layer: string, reference: string) => string | undefined,
): void {
  expect(Drill.parse(drill)).toEqual(drill);
  const citations = citationsIn(drill);
  expect(citations.length).toBeGreaterThan(0);
  for (const { layer, reference, quote, from, to, state } of citations) {
    const words = source(layer, reference);
    expect(words?.slice(from, to), `${layer}, ${reference}`).toBe(quote);
    expect(quote).not.toBe("");
    expect(state).toBe("same");
  }
  for (const element of drill.elements) {
    expect(element.citations.length, `an element without words: ${element.title}`).toBeGreaterThan(0);
    for (const action of element.actions) {
      if (action.standing === "stated") expect(action.citations.length, action.text).toBeGreaterThan(0);
      for (const value of action.values) {
        if (value.standing === "stated")
          expect(value.citations.length, `${action.text}: ${value.text}`).toBeGreaterThan(0);
      }
    }
  }
}

/** Every citation anywhere in the drill. */
export function citationsIn(part: unknown): Citation[] {
  if (Array.isArray(part)) return part.flatMap(citationsIn);
  if (typeof part !== "object" || part === null) return [];
  if ("quote" in part && "from" in part && "reference" in part) return [part as Citation];
  return Object.values(part).flatMap(citationsIn);
}
