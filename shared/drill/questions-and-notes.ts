/** shared/drill/questions-and-notes.ts - open questions and remarks that belong to an exercise.
 *  May import: schema types, siblings in shared/drill. */
import type { Citation, Drill } from "../../schema/drill.ts";
import { citationsOf } from "./citations.ts";
import type { ExerciseRows } from "./exercise-rows.ts";
import type { PlacedCruxes } from "./place-cruxes.ts";

/** Open questions of the exercise, or of a crux that is printed in it; in the order of their words. */
export function questionsOf(rows: ExerciseRows, { elements, cruxes }: PlacedCruxes): Drill["questions"] {
  const printed = new Set([...elements.flatMap(({ drill }) => drill.cruxes), ...cruxes].map(({ crux }) => crux));
  return rows
    .all("questions")
    .filter(({ exercise, crux }) => exercise === rows.exercise.id || (crux !== null && printed.has(crux)))
    .filter(({ state }) => state.is === "open")
    .map(({ id, text, to, asked, crux }) => ({
      id,
      text,
      to,
      asked,
      crux,
      citations: citationsOf(rows, "questions", id),
    }))
    .sort(byWords(rows));
}

/** Remarks on words of the exercise's own passages. */
export function notesOf(rows: ExerciseRows): Drill["notes"] {
  return remarksOf(rows).map(({ text, citations }) => ({ text, citations }));
}

/** The same with the rows they are from. */
export function remarksOf(rows: ExerciseRows): { id: string; text: string; citations: Citation[] }[] {
  const ours = new Set(rows.passages.map(({ id }) => id));
  return rows
    .all("notes")
    .filter(({ id }) =>
      rows
        .marksOf("notes", id)
        .some((mark) => rows.anchorsOf(mark.id).some((anchor) => anchor.is === "text" && ours.has(anchor.passage))),
    )
    .map(({ id, text }) => ({ id, text, citations: citationsOf(rows, "notes", id) }))
    .sort(byWords(rows));
}

type Cited = { id: string; citations: Citation[] };

function byWords(rows: ExerciseRows): (first: Cited, second: Cited) => number {
  const places = new Map(rows.passages.map((passage, index) => [JSON.stringify(passage.references.map(keyed)), index]));
  const place = ({ citations: [first] }: Cited): [number, number] => [
    first ? (places.get(JSON.stringify(first.references.map(keyed))) ?? places.size) : places.size + 1,
    first?.from ?? 0,
  ];
  return (first, second) => {
    const [a, b] = [place(first), place(second)];
    return a[0] - b[0] || a[1] - b[1] || (first.id < second.id ? -1 : 1);
  };
}

function keyed(reference: Citation["references"][number]): unknown {
  return Object.entries(reference).sort(([first], [second]) => (first < second ? -1 : 1));
}
