/** server/publish/papers/hands-called.ts - the hand that has each object, as far as a caller has called it.
 *  May import: schema types. */
import type { DrillAction, DrillElement } from "../../../schema/drill.ts";

/** Which hand has which object, as far as it was called: a hand is named where it is another one. */
export class HandsCalled {
  readonly #hands = new Map<string, string>();

  /** Where the hands begin stands in the instructions and is not called. */
  constructor(elements: readonly DrillElement[]) {
    const kept = elements.map(({ actions }) =>
      actions.filter((one) => one.verb === "keep" && one.onlyUnder.length === 0),
    );
    for (const { part, values } of kept.find((acts) => acts.length > 0) ?? []) {
      const object = values.find(({ slot }) => slot === "object")?.value;
      if (typeof object === "string") this.#hands.set(object, part.split(" ")[0] ?? "");
    }
  }

  names({ values, onlyUnder, verb, part }: DrillAction): boolean {
    const object = values.find(({ slot }) => slot === "object")?.value;
    const key = typeof object === "string" ? object : "";
    const taking = verb === "pass" ? "to" : "hand";
    const told = values.find(({ slot }) => slot === taking)?.value;
    const hand = typeof told === "string" ? told : part.endsWith(" hand") ? (part.split(" ")[0] ?? "") : "";
    if (hand === "") return false;
    const known = key === "" ? new Set(this.#hands.values()) : new Set([this.#hands.get(key)]);
    if (onlyUnder.length === 0 && key !== "") this.#hands.set(key, hand);
    else if (key !== "") this.#hands.delete(key);
    return !known.has(hand);
  }
}
