/** client/print/edition-words.ts - what is said of editions, in the words of a sentence.
 *  May import: types of schema. */
import type { EditionLine } from "../../schema/issue.ts";

/** Most steps that are named one by one. */
const MOST = 6;

/** "17 October 2026", of a day as it is stored (2026-10-17). */
export function dayWords(day: string): string {
  const noon = new Date(`${day}T12:00:00`);
  return noon.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

/** "Ada", "Ada and the Tuesday class", "Ada, the Tuesday class and Bram". */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join("");
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** "Since then steps 3 and 5 and 2 other places changed."; of an edition that says what holds now, or cannot be made, "". */
export function changedWords({ changed }: EditionLine): string {
  if (changed.length === 0) return "";
  const steps = changed.flatMap((place) => /^(?:New )?step (.+)$/i.exec(place)?.[1] ?? []);
  const others = changed.length - steps.length;
  const named = steps.length > MOST ? [...steps.slice(0, MOST - 1), `${steps.length - MOST + 1} more`] : steps;
  const parts = [
    ...(steps.length === 0 ? [] : [`${steps.length === 1 ? "step" : "steps"} ${listed(named)}`]),
    ...(others === 0 ? [] : [`${others} ${steps.length === 0 ? "" : "other "}${others === 1 ? "place" : "places"}`]),
  ];
  return `Since then ${listed(parts)} changed.`;
}

/** With a capital, as at the head of a sentence. */
export function opened(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
