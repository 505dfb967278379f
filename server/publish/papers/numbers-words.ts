/** server/publish/papers/numbers-words.ts - steps by their printed numbers, in words.
 *  May import: schema types. */
import type { DrillElement } from "../../../schema/drill.ts";

/** "step 3", "steps 1–3, 5 and 2 pieces of advice": elements without a number are counted by their kind. Empty for none. */
export function numbersWords(elements: readonly Pick<DrillElement, "number" | "is">[]): string {
  const numbers = [...new Set(elements.flatMap(({ number }) => number ?? []))].sort((a, b) => a - b);
  const bare = elements.flatMap(({ number, is }) => (number === null ? [is] : []));
  const kinds = [...new Set(bare)].map((kind) => {
    const count = bare.filter((is) => is === kind).length;
    return count === 1 ? KINDS[kind].one : `${count} ${KINDS[kind].several}`;
  });
  const ranges = numbers.reduce<[number, number][]>((found, number) => {
    const last = found.at(-1);
    if (last && last[1] + 1 === number) last[1] = number;
    else found.push([number, number]);
    return found;
  }, []);
  const told = ranges.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(", ");
  const steps = told === "" ? [] : [`${numbers.length === 1 ? "step" : "steps"} ${told}`];
  return listed([...steps, ...kinds]);
}

/** "spear, lance and shield". */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

const KINDS: { readonly [is in DrillElement["is"]]: { one: string; several: string } } = {
  step: { one: "a step", several: "steps" },
  again: { one: "a step", several: "steps" },
  advice: { one: "a piece of advice", several: "pieces of advice" },
  untreated: { one: "a part not yet treated", several: "parts not yet treated" },
};
