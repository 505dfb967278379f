/** server/publish/papers/numbers-words.ts - steps by their printed numbers, in words.
 *  May import: schema types. */
import type { DrillElement } from "../../../schema/drill.ts";

/** "step 3", "steps 1–3, 5"; elements without a number by their kind, each once. Empty for none. */
export function numbersWords(elements: readonly Pick<DrillElement, "number" | "is">[]): string {
  const numbers = [...new Set(elements.flatMap(({ number }) => number ?? []))].sort((a, b) => a - b);
  const kinds = [...new Set(elements.flatMap(({ number, is }) => (number === null ? KINDS[is] : [])))];
  const ranges = numbers.reduce<[number, number][]>((found, number) => {
    const last = found.at(-1);
    if (last && last[1] + 1 === number) last[1] = number;
    else found.push([number, number]);
    return found;
  }, []);
  const told = ranges.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(", ");
  const steps = told === "" ? [] : [`${numbers.length === 1 ? "step" : "steps"} ${told}`];
  return [...steps, ...kinds].join(" and ");
}

const KINDS: { readonly [is in DrillElement["is"]]: string } = {
  step: "a step",
  again: "a step",
  advice: "an advice",
  untreated: "a part not yet treated",
};
