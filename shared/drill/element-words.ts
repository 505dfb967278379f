/** shared/drill/element-words.ts - what an again, an advice and an untreated part say, in words.
 *  May import: schema types, shared/cite, siblings in shared/drill. */
import type { Element } from "../../schema/exercise.ts";
import { formatReference } from "../cite/format-reference.ts";
import type { ExerciseRows } from "./exercise-rows.ts";
import type { Names } from "./words.ts";

type Again = Extract<Element, { is: "again" }>;
type Advice = Extract<Element, { is: "advice" }>;
type Untreated = Extract<Element, { is: "untreated" }>;

export interface ElementWording {
  rows: ExerciseRows;
  names: Names;
  /** Printed numbers, by element; an element that is not printed has none. */
  numbers: ReadonlyMap<string, number>;
}

/** Empty for a step: its actions say it. */
export function elementWords(wording: ElementWording, element: Element): string {
  switch (element.is) {
    case "step":
      return "";
    case "again":
      return againWords(wording, element);
    case "advice":
      return adviceWords(wording, element);
    case "untreated":
      return untreatedWords(wording, element);
  }
}

/** "as steps 1 to 3, mirrored, save that “…”". */
function againWords({ rows, names, numbers }: ElementWording, { of, manner, except }: Again): string {
  const what = (): string => {
    switch (of.is) {
      case "exercise":
        return `as the whole of “${exerciseName(rows, of.exercise)}”`;
      case "elements":
        return `as ${elementRange(rows, numbers, of.from, of.to)}`;
      case "movement":
        return `the movement “${names("movements", of.movement) ?? "no longer there"}”`;
    }
  };
  const exceptions = except.map((exception) => exceptionWords(exception, names));
  const how = manner === "as it is" ? "" : `, ${manner}`;
  return `${what()}${how}${exceptions.length === 0 ? "" : `, save: ${exceptions.join("; ")}`}`;
}

function exceptionWords(exception: Again["except"][number], names: Names): string {
  const action = (id: string): string => names("actions", id) ?? "an action that is no longer there";
  switch (exception.is) {
    case "without":
      return `without “${action(exception.action)}”`;
    case "instead":
      return `“${action(exception.by)}” in place of “${action(exception.action)}”`;
    case "words":
      return withinSentence(exception.words);
  }
}

/** Words somebody typed as a sentence, as one of several: without its stop, and with a small letter where it begins with a word
 *  that bears one. */
function withinSentence(typed: string): string {
  const bare = typed.trim().replace(/(?<![.!?])\.$/u, "");
  return /^(?:the|an?|he|she|it|his|her|its|they|in|on|at|with|without|no|only|this|that)\b/iu.test(bare)
    ? bare.charAt(0).toLowerCase() + bare.slice(1)
    : bare;
}

function exerciseName(rows: ExerciseRows, id: string): string {
  return rows.find("exercises", id)?.title ?? "an exercise that is no longer there";
}

/** "step 2", "steps 2 to 4"; by their titles where they have no number in this drill. */
function elementRange(rows: ExerciseRows, numbers: ReadonlyMap<string, number>, from: string, to: string): string {
  const [first, last] = [numbers.get(from), numbers.get(to)];
  if (first !== undefined && last !== undefined) return first === last ? `step ${first}` : `steps ${first} to ${last}`;
  const title = (id: string): string => {
    const row = rows.find("elements", id);
    const number = numbers.get(id);
    if (number !== undefined) return `step ${number}`;
    return row && "title" in row && row.title !== "" ? `“${row.title}”` : "a step that is not in this drill";
  };
  return from === to ? title(from) : `${title(from)} to ${title(to)}`;
}

function adviceWords({ rows, numbers }: ElementWording, { demand, from, to }: Advice): string {
  if (from === null && to === null) return demand;
  const first = from ?? to ?? "";
  const range = elementRange(rows, numbers, first, to ?? first);
  if (to === null) return `${demand} (from ${range} on)`;
  return from === null ? `${demand} (up to ${range})` : `${demand} (at ${range})`;
}

function untreatedWords({ rows }: ElementWording, { fromPassage, toPassage, estimate }: Untreated): string {
  const reference = (id: string): string => {
    const [first] = rows.find("passages", id)?.references ?? [];
    return first ? formatReference(first) : "a passage that is no longer there";
  };
  const place =
    fromPassage === toPassage ? reference(fromPassage) : `${reference(fromPassage)} to ${reference(toPassage)}`;
  const { from, to } = estimate ?? { from: 0, to: 0 };
  const guess = estimate === null ? "" : from === to ? `, perhaps ${steps(to)}` : `, perhaps ${from} to ${steps(to)}`;
  return `not yet treated: ${place}${guess}`;
}

function steps(count: number): string {
  return count === 1 ? "1 step" : `${count} steps`;
}
