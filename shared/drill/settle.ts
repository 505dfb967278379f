/** shared/drill/settle.ts - which reading is taken of each crux, and whether a guard holds under them.
 *  May import: schema types, siblings in shared/drill. A guard is judged three ways: nothing is guessed. */
import type { Crux, Reading } from "../../schema/crux.ts";
import type { Condition, Guard, ReadingCondition, Way } from "../../schema/guard.ts";
import type { ExerciseRows } from "./exercise-rows.ts";

/** Readings chosen for this drill, by crux. */
export type Choice = ReadonlyMap<string, string> | readonly { crux: string; reading: string }[];

export interface Taken {
  reading: Reading;
  because: "adopted" | "left free" | "chosen" | "exception";
  reason: string;
  condition: string;
}

export type Truth = "yes" | "no" | "open";

/** A condition that waits for a crux: it holds only when the crux is read as one of these. */
export interface OnlyUnder {
  crux: string;
  readings: string[];
}

export interface Verdict {
  truth: Truth;
  /** What an open guard waits for; empty for yes and no. */
  onlyUnder: OnlyUnder[];
}

export interface Settlement {
  way: Way;
  /** On foot there are reins only where the words of the day's version speak of them: a rope, a pair of reins by themselves. */
  reins: boolean;
  /** The reading taken at an element (null: anywhere); null when the crux is not settled. */
  taken: (crux: string, element: string | null) => Taken | null;
  arises: (crux: string, element: string | null) => Truth;
  judge: (guard: Guard, element: string | null) => Verdict;
  /** Cruxes that were asked for so far: what was made by this would be the same under any other that reads these alike. */
  asked: ReadonlySet<string>;
}

/** Throws RangeError when a chosen reading is not one of its crux. */
export function settle(rows: ExerciseRows, choice: Choice, way: Way, variant: string | null): Settlement {
  const chosen = choiceMap(rows, choice);
  const everywhere = new Map<string, Taken | null>();
  const takenEverywhere = (id: string): Taken | null => {
    const known = everywhere.get(id);
    if (known !== undefined) return known;
    const crux = rows.cruxes.get(id);
    const taken = crux === undefined ? null : takenOf(rows, crux, chosen);
    everywhere.set(id, taken);
    return taken;
  };
  return settleBy(rows, takenEverywhere, way, variant);
}

/** `everywhere` gives the reading taken of a crux where no exception is made; it is asked only for cruxes that bear. */
export function settleBy(
  rows: ExerciseRows,
  everywhere: (crux: string) => Taken | null,
  way: Way,
  variant: string | null,
): Settlement {
  const asked = new Set<string>();
  const taken = (cruxId: string, element: string | null): Taken | null => {
    asked.add(cruxId);
    const crux = rows.cruxes.get(cruxId);
    const exception = crux?.exceptions.find((entry) => entry.element === element);
    const reading = exception && readingOf(rows, cruxId, exception.reading);
    if (exception && reading) return { reading, because: "exception", reason: exception.reason, condition: "" };
    return everywhere(cruxId);
  };

  /** `above` holds the cruxes this question came through: the store keeps arising free of circles, and a circle that
   *  got in all the same must not hang the drill. */
  const arises = (cruxId: string, element: string | null, above: readonly string[]): Truth => {
    const crux = rows.cruxes.get(cruxId);
    if (!crux || above.includes(cruxId)) return "no";
    return allOf(crux.arisesWhen.map((condition) => readsAs(condition, element, [...above, cruxId])));
  };

  const readsAs = (condition: ReadingCondition, element: string | null, above: readonly string[]): Truth => {
    const arising = arises(condition.crux, element, above);
    if (arising === "no") return "no";
    const reading = taken(condition.crux, element);
    if (reading) return condition.readings.includes(reading.reading.id) ? arising : "no";
    return "open";
  };

  const holds = (condition: Condition, element: string | null): Truth => {
    switch (condition.is) {
      case "reading":
        return readsAs(condition, element, []);
      case "way":
        return condition.way === way ? "yes" : "no";
      case "variant":
        return variant !== null && condition.variants.includes(variant) ? "yes" : "no";
    }
  };

  return {
    way,
    reins: way === "mounted" || speaksOfReins(rows, variant),
    taken,
    asked,
    arises: (crux, element) => arises(crux, element, []),
    judge: (guard, element) => {
      const truth = allOf(guard.map((condition) => holds(condition, element)));
      const onlyUnder = guard
        .filter((condition) => condition.is === "reading")
        .filter((condition) => truth === "open" && holds(condition, element) === "open")
        .map((condition) => ({ crux: condition.crux, readings: inOrder(rows, condition) }))
        .sort((first, second) => (first.crux < second.crux ? -1 : 1));
      return { truth, onlyUnder };
    },
  };
}

function allOf(truths: readonly Truth[]): Truth {
  if (truths.includes("no")) return "no";
  return truths.includes("open") ? "open" : "yes";
}

/** The readings of a condition in the order of the crux, whatever order they were entered in. */
function inOrder(rows: ExerciseRows, condition: ReadingCondition): string[] {
  return rows
    .readingsOf(condition.crux)
    .map((reading) => reading.id)
    .filter((id) => condition.readings.includes(id));
}

function choiceMap(rows: ExerciseRows, choice: Choice): Map<string, string> {
  const pairs = Array.isArray(choice)
    ? (choice as readonly { crux: string; reading: string }[]).map(({ crux, reading }) => [crux, reading] as const)
    : [...(choice as ReadonlyMap<string, string>)];
  for (const [crux, reading] of pairs) {
    if (!readingOf(rows, crux, reading)) {
      throw new RangeError(`The chosen reading ${reading} is not among the readings of the crux ${crux}.`);
    }
  }
  return new Map(pairs);
}

function readingOf(rows: ExerciseRows, crux: string, reading: string): Reading | undefined {
  return rows.readingsOf(crux).find((candidate) => candidate.id === reading);
}

/** Chosen, else the one adopted without a condition, else the default of what is left free, else nothing. A reading
 *  adopted for a condition only ("against a rider on foot") is not taken for granted where nobody chose it. */
function takenOf(rows: ExerciseRows, crux: Crux, chosen: ReadonlyMap<string, string>): Taken | null {
  const readings = rows.readingsOf(crux.id);
  const picked = readings.find((reading) => reading.id === chosen.get(crux.id));
  if (picked) return { reading: picked, because: "chosen", ...decisionOn(picked) };
  const [adopted, another] = readings.filter(({ status }) => status.is === "adopted" && status.condition.trim() === "");
  if (adopted && !another) return { reading: adopted, because: "adopted", ...decisionOn(adopted) };
  const free = crux.leftFree && readings.find((reading) => reading.id === crux.leftFree?.default);
  return crux.leftFree && free
    ? { reading: free, because: "left free", reason: crux.leftFree.reason, condition: "" }
    : null;
}

/** The reason and condition a person gave with a status; both empty for a reading that merely stands. */
export function decisionOn({ status }: Reading): { reason: string; condition: string } {
  if (status.is === "standing") return { reason: "", condition: "" };
  return { reason: status.reason, condition: status.is === "adopted" ? status.condition : "" };
}

/** Whether the words of a version of the day speak of reins. */
export function speaksOfReins(rows: ExerciseRows, variant: string | null): boolean {
  const deltas = variant === null ? [] : (rows.find("variants", variant)?.deltas ?? []);
  return deltas.some((delta) => delta.is === "words" && /\breins?\b/iu.test(delta.words));
}
